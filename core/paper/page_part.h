#pragma once
/// Pages put together from parts: a part is drawn from its own left and top edges, then set where it belongs, turned
/// where it lies better so. What of it reaches where.

#include <string>
#include <string_view>

#include "paper/page.h"

namespace bentbook::paper {

/// Sets `part` on the page, its left and top edges at `at` (mm). Which way the part lies says nothing.
void put(Page& page, const Page& part, draw::Point at);

/// All that the drawing reaches to; of nothing: an empty one at 0, 0.
[[nodiscard]] Window bounds_of(const Page& drawing);
/// The text's upright bounds.
[[nodiscard]] Window bounds_of(const PageText& text);
/// mm along its line from where a text stands to where it begins, of one that is `width` wide.
[[nodiscard]] constexpr double start_of(Align align, double width) {
  return align == Align::kLeft ? 0 : align == Align::kRight ? -width : -width / 2;
}
/// The arc's point in that direction.
[[nodiscard]] draw::Point on_arc(const PageArc& arc, double deg);

/// The same drawing elsewhere.
void move_by(Page& drawing, double dx, double dy);
/// The same drawing a quarter turn anticlockwise, of one that is `width` wide: what was at its right is on top.
[[nodiscard]] Page quarter_turned(Page drawing, double width);

/// How words are set.
struct Letters {
  double size = 4;  ///< mm of an em
  bool bold = false;
};
/// From the upper edge of a line of words to the line that the letters stand on, and from one line to the next; mm, of
/// an em.
inline constexpr double kOverLine = 0.8, kLineStep = 1.25;

/// One line of words, the upper edge of its capitals' line at `at`. Gives its width.
double put_words(Page& page, draw::Point at, std::string_view words, Letters letters, Align align = Align::kLeft);
/// Words in lines of at most `width`. Gives the height that they take, 0 for none.
double put_lines(Page& page, draw::Point at, std::string_view words, Letters letters, double width);

}  // namespace bentbook::paper
