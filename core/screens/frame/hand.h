#pragma once
/// A timber entered by hand: made, changed, taken out.

#include <string>
#include <string_view>

#include "book/book.h"
#include "screens/app/pages.h"
#include "words/figures.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_hand_page(std::string mark);  ///< a timber entered by hand
/// Figures of frame/drawings/hand_drawing.h; `root`: path of the timber, or of what is cut into it, with its point.
[[nodiscard]] bentbook::FigureText hand_figure(std::string_view key, const Book& book, const std::string& root,
                                               const Voice& voice);

}  // namespace bentbook::screens
