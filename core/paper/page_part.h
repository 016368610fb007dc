#pragma once
/// Pages put together from parts: a part is drawn from its own left and top edges, then set where it belongs.

#include <string>
#include <string_view>

#include "paper/page.h"

namespace bentbook::paper {

/// Sets `part` on the page, its left and top edges at `at` (mm). Which way the part lies says nothing.
void put(Page& page, const Page& part, draw::Point at);

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
