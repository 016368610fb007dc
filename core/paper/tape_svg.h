#pragma once
/// Pages of draw/tape_page.h side by side on one sheet, as an SVG file. A page's px is a quarter of a millimetre:
/// figures stand 6, 4.25 and 3.75 mm high, lines are as wide as ISO 128 has them.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "draw/tape_page.h"

namespace bentbook {

struct TapeColumn {
  std::string head, note;  ///< over it: which face is up; from where to gauge
  draw::TapePage page;
};

/// For lay_out_tape(): a little wider than the letters of any plain face are.
[[nodiscard]] draw::Size tape_size_on_paper(std::string_view text, draw::TapeText size);

/// `width`: of a column, px.
[[nodiscard]] std::string write_tape_svg(std::span<const TapeColumn> columns, double width, std::string_view title,
                                         std::string_view language);

}  // namespace bentbook
