#pragma once
/// A page of draw/tape_page.h as a part of a printed page. Its px is a quarter of a millimetre, as in tape_svg.h; the
/// ems of its letters are 6, 4.25 and 3.75 mm, their capitals and figures kCapital of that (letters.h).

#include <string_view>

#include "draw/tape_page.h"
#include "paper/page.h"

namespace bentbook::paper {

inline constexpr double kTapePx = 0.25;  ///< mm

/// For lay_out_tape(): what the app's own letters take.
[[nodiscard]] draw::Size tape_text_size(std::string_view text, draw::TapeText size);
/// Its left and top edges at 0, 0.
[[nodiscard]] Page tape_part(const draw::TapePage& tape);

}  // namespace bentbook::paper
