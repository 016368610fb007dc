#pragma once
/// What the Raising place's pages share: checks that are worked out off the frame, rows for what the lead says.

#include <algorithm>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "screens/app/context.h"
#include "screens/frame/form.h"
#include "words/raising_words.h"

namespace bentbook::screens {

/// The check of the open book's order, asked for where it is not there; nullptr while it is being worked out.
/// A failure is said.
[[nodiscard]] const OrderCheck* order_check(Context&, const ShownFrame&);
/// The same without a word of it: the page says itself how the check stands.
[[nodiscard]] const OrderCheck* quiet_order_check(Context&, const ShownFrame&);
/// One step of it, looked at closely.
[[nodiscard]] const StepExplained* explained_step(Context&, const ShownFrame&, int step);

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

/// Rows of what the lead says; `set` puts the new value into the book's raising.
void raising_length(Context&, const std::string& key, std::string_view name, Length now,
                    const std::function<void(RaisingPlan&, Length)>& set);
/// Whole pounds, or whole kilograms where lengths are metric.
void raising_weight(Context&, const std::string& key, std::string_view name, bentbook::Weight now,
                    const std::function<void(RaisingPlan&, bentbook::Weight)>& set);
void raising_count(Context&, const std::string& key, std::string_view name, std::string_view unit, int now, int least,
                   int most, const std::function<void(RaisingPlan&, int)>& set);
void raising_toggle(Context&, const std::string& key, std::string_view name, bool now,
                    const std::function<void(RaisingPlan&, bool)>& set);
template <class Edit>
void edit_raising(Context& context, Edit&& edit) {
  edit_book(context, [&](Book& book) { edit(book.raising); });
}

/// Takes a step out of its place and puts it in elsewhere, so that it comes to stand at `to`; likewise what belongs to
/// the steps.
template <class Step>
void move_step(std::vector<Step>& steps, int from, int to) {
  const auto at = [&](int i) { return steps.begin() + i; };
  if (from < to)
    std::rotate(at(from), at(from + 1), at(to + 1));
  else
    std::rotate(at(to), at(from), at(from + 1));
}

/// The lead's word that pegs are driven and screws in before the sling comes off, for all joints but knife plates
/// (whose pins are counted anyhow): much fewer temporary braces are wanted then.
void fasteners_toggle(Context&);

/// Marks that no step brings yet, of placed timbers.
[[nodiscard]] std::vector<std::string> marks_left(const Frame& frame, const RaisingPlan& plan);
/// A name that no temporary has yet: "T4".
[[nodiscard]] std::string free_temporary_name(const RaisingPlan& plan);
/// Adds proposed braces to the plan, put up in that step.
void take_braces(RaisingPlan& plan, int step, const std::vector<Temporary>& braces);

}  // namespace bentbook::screens
