#pragma once
/// Printing: rounding happens here, once, half up, at the edge.

#include <string>

#include "measure/slope.h"

namespace bentbook {

enum class LengthForm : std::uint8_t { kFeetInches, kInchFraction, kDecimalInch, kMm, kMetre };

struct LengthStyle {
  LengthForm form = LengthForm::kFeetInches;
  /// Smallest division of an inch for the fraction forms: 8, 16, 32 or 64. kDecimalInch prints 1/denominator steps as
  /// decimals count: `decimals`.
  int denominator = 16;
  int decimals = 3;  ///< kDecimalInch, kMetre; kMm prints `decimals` capped at 1 unless 0
};

/// Glyph set of the marks: screen uses primes and U+2044 (12′ 7 3⁄8″), ascii what a keyboard has (12' 7-3/8").
enum class Marks : std::uint8_t { kScreen, kAscii };

struct Printed {
  std::string text;
  /// What the text says, exactly; parse_length(text) gives this value.
  Length shown{};
  /// The value differs from `shown` by more than a quarter of the smallest division; screens and answers then put
  /// the about sign before the text (it is not in `text`).
  bool rounded = false;
};

[[nodiscard]] Printed print_length(Length value, LengthStyle style, Marks marks);

/// Degrees with so many decimals and a degree sign (ascii: "deg" is not written, the caller's key says so).
[[nodiscard]] std::string print_degrees(Angle value, int decimals, Marks marks);
/// The slope as it was entered: "10:12", "39.8°", "83 %", "833 mm/m".
[[nodiscard]] std::string print_slope(const Slope& slope, Marks marks);
/// Plain decimal with a fixed count of digits after the point, '.' always, "-0" never. The number format of JSON.
[[nodiscard]] std::string print_fixed(double value, int decimals);

}  // namespace bentbook
