#pragma once
/// Printing: rounding happens here, once, at the edge, half up (of the magnitude: a measure and its mirror print
/// alike).

#include <string>

#include "measure/slope.h"
#include "text/print_fixed.h"

namespace bentbook {

enum class LengthForm : std::uint8_t { kFeetInches, kInchFraction, kDecimalInch, kMm, kMetre };

/// Feet, inches and pounds go together, and metres, kilograms and their like.
[[nodiscard]] constexpr bool is_metric(LengthForm form) {
  return form == LengthForm::kMm || form == LengthForm::kMetre;
}

struct LengthStyle {
  LengthForm form = LengthForm::kFeetInches;
  /// Smallest division of an inch for the two fraction forms: 8, 16, 32 or 64 (any power of two to 128; else 16).
  int denominator = 16;
  /// Places after the point: kDecimalInch 0 to 5, kMetre 0 to 9, kMm 0 or 1; nearest of these otherwise.
  int decimals = 3;
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

/// kFeetInches: 12′ 7 3⁄8″, 12′ 0″, 12′ 0 3⁄8″, 7 3⁄8″ (no feet when there are none), fractions reduced, 12 inches
/// carried. kInchFraction: 151 3⁄8″. kDecimalInch: 151.375″. kMm: 3200 mm, a tenth only where it is not whole. kMetre:
/// 3.200 m. The unit always stands in the text; negative values have a minus sign in front (ascii: a hyphen), a value
/// that rounds to zero has none.
[[nodiscard]] Printed print_length(Length value, LengthStyle style, Marks marks);

/// Degrees with 0 to 9 decimals and a degree sign; ascii has the bare number: the caller's key says degrees.
[[nodiscard]] std::string print_degrees(Angle value, int decimals, Marks marks);
/// The slope as it was entered: 10:12, 7 1⁄2:12, 39.8°, 83 %, 833 mm/m (ascii: 39.8 deg, 83%); parse_slope reads it
/// back. A ratio that was not said in inches keeps its units, 3000 mm:4000 mm.
[[nodiscard]] std::string print_slope(const Slope& slope, Marks marks);

}  // namespace bentbook
