#pragma once
/// A page with a strip of its own at its foot, where the thumb is.

#include "screens/app/context.h"

namespace bentbook::screens {

/// Draws `content` on the page less a strip `height` px high, over which no short word will lie; returns the strip.
template <class Content>
[[nodiscard]] Rect above_foot(Context& context, float height, Content&& content) {
  const Rect page = context.page;
  context.page.h -= height;
  context.foot = height;
  content();
  context.page = page;
  return {page.x, page.y + page.h - height, page.w, height};
}

/// Height of a strip of one row of keys.
[[nodiscard]] inline float keys_height(const Ui& ui) { return ui.theme.target + 2 * kGap; }

}  // namespace bentbook::screens
