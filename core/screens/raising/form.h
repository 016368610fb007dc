#pragma once
/// What the Raising place's pages share: checks that are worked out off the frame, rows for what the lead says.

#include <string>
#include <string_view>
#include <vector>

#include "raising/plan_edits.h"
#include "screens/app/context.h"
#include "screens/form/task_button.h"
#include "screens/frame/form.h"
#include "words/raising_words.h"

namespace bentbook::screens {

/// The check of the open book's order, asked for where it is not there; nullptr while it is being worked out, which is
/// said, as is a failure.
[[nodiscard]] const OrderCheck* order_check(Context&);
/// One step of it, looked at closely; likewise.
[[nodiscard]] const StepExplained* explained_step(Context&, int step);

/// How that step is picked.
[[nodiscard]] const RaisingMemory::Picked& step_pick(Context&, const ShownFrame&, int step);
[[nodiscard]] const RaisingMemory::Lists& raising_lists(Context&, const ShownFrame&);

/// A page of the Raising place in a scroll area, under its standing caution.
template <class Content>
void raising_page(Context& context, ItemKey key, Content&& content) {
  begin_scroll(context.ui, key, context.page);
  if (book_is_open(context)) {
    const ShownFrame shown = frame_now(context);
    if (shown.frame())
      content(shown);
    else
      body(context.ui, "raising.no_frame", context.say(Msg::kShopNoFrame));
  }
  space(context.ui, 24);
  end_scroll(context.ui);
}

/// A row with what the lead says, by its path in the raising: "crane.x".
void raising_field(Context&, std::string_view path, Msg name, std::string_view unit = {});
template <class Edit>
void edit_raising(Context& context, Edit&& edit) {
  edit_book(context, [&](Book& book) { edit(book.raising); });
}

/// Whether the raising goes over several days: on one, no day is said.
[[nodiscard]] bool has_days(const RaisingPlan&);

/// Whether pegs and screws go in with the step: much fewer temporary braces are wanted then.
void fasteners_toggle(Context&);

}  // namespace bentbook::screens
