#pragma once
/// QR codes: a text in, a square of dark and light modules out. Source: SOURCES.md, "QR codes".

#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"

namespace bentbook {

struct Code {
  int size = 0;            ///< modules along a side, the quiet zone not counted
  std::vector<bool> dark;  ///< row by row from the top
  [[nodiscard]] bool at(int x, int y) const {
    return dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(size) + static_cast<std::size_t>(x)];
  }
};
/// Modules of light ground that a reader wants around the code.
inline constexpr int kQuietModules = 4;

/// How much of a code may be spoiled: about 7 %, 15 %, 25 % (L, M, Q). Codes on wood want the most.
enum class CodeLevel : std::uint8_t { kLow, kMedium, kHigh };

/// UTF-8; capitals, digits and $%*+-./: alone make the smallest code. Errors: kEmpty, kTooLarge ("code").
[[nodiscard]] Result<Code> make_code(std::string_view text, CodeLevel level);

/// An SVG file, its quiet zone around it, one module `module_mm` wide.
[[nodiscard]] std::string code_svg(const Code& code, double module_mm, std::string_view title);

}  // namespace bentbook
