#pragma once
/// The shop as every page of its place shares it: the open book's frame, its log, every timber's steps; ticks, and what
/// is said while the log is read.

#include <string>
#include <string_view>
#include <vector>

#include "screens/app/context.h"
#include "screens/frame/form.h"
#include "words/shop_words.h"

namespace bentbook::screens {

/// True: the log is there. Else it is said why not.
[[nodiscard]] bool log_is_open(Context&);

/// Steps and progress of every timber of the frame that is shown, worked out again only when something changed.
[[nodiscard]] const ShopMemory::Work& shop_work_of(Context&, const ShownFrame&);
/// The timber of that mark in it; nullptr: the frame has none.
[[nodiscard]] const TimberWork* find_work(const ShopMemory::Work&, const Frame&, std::string_view mark);

/// An event of this phone's user into the log; a refusal becomes a toast.
bool tell(Context&, Event event);
/// A moment by the clock on the user's wall.
[[nodiscard]] std::string clock_text(const Context&, std::int64_t wall_ms);
/// "done by Ana, 11-25 14:05".
[[nodiscard]] std::string claim_text(const Context&, const Claim& claim);
inline constexpr double kHoldMs = 450;  ///< long enough that a wet sleeve makes no tick
/// What is mended by holding a finger: `hold_button` over the column's width.
[[nodiscard]] bool hold_row(Context&, ItemKey key, std::string_view label);

/// Takes up what the camera read: pieces of a log, or a timber's label.
void take_scans(Context&);

/// What the Shop place shows of the open book: waits, says why there is nothing, or draws `content(shown)`.
template <class Content>
void shop_content(Context& context, Content&& content) {
  if (!book_is_open(context) || !log_is_open(context)) return;
  take_scans(context);
  const ShownFrame shown = frame_now(context);
  if (shown.frame())
    content(shown);
  else
    body(context.ui, "shop.no_frame", context.say(Msg::kShopNoFrame));
}

/// A page of the Shop place: the same in a scroll area.
template <class Content>
void shop_page(Context& context, ItemKey key, Content&& content) {
  begin_scroll(context.ui, key, context.page);
  shop_content(context, content);
  space(context.ui, 24);
  end_scroll(context.ui);
}

/// What a file opened from outside is.
[[nodiscard]] bool is_log_file(std::string_view bytes);
[[nodiscard]] bool is_seen_file(std::string_view bytes);

}  // namespace bentbook::screens
