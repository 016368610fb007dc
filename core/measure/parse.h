#pragma once
/// Reading what people type. Forgiving in form, exact in value: no entry goes through a double.
///
/// Grammar: sums and products with + - * / ( ) over quantities. A quantity is feet, inches and a fraction in any of the
/// trade's spellings (12' 7-3/8", 12-7-3/8, 12 7 3/8, 7 3/8, 151.375), or a metric value (3m, 3.2 m, 320 cm, 3200mm).
/// Marks ' " ′ ″ ’ ” and ft, in, and stray blanks are read. A bare number takes the field's unit (`bare`).
/// Every byte sequence ends in a value or an Error whose `at` names the byte.

#include <string_view>

#include "measure/slope.h"

namespace bentbook {

/// What a number without a mark means in a field.
enum class BareUnit : std::uint8_t { kInch, kFoot, kMm, kMetre };

[[nodiscard]] Result<Length> parse_length(std::string_view text, BareUnit bare);

/// What a number without a mark means in a slope field.
enum class BareSlope : std::uint8_t { kIn12, kDegrees, kPercent, kMmPerM };

/// 10/12, 10:12, 10 in 12, 39.8°, 39.8 deg, 39° 48′, 83%, 833 mm/m, or a bare number as `bare` says.
/// Zero slope is accepted; 90° and more is kSteep; negative is kNegative.
[[nodiscard]] Result<Slope> parse_slope(std::string_view text, BareSlope bare);

/// 39.8, 39.8°, 39° 48′ 30″; negative allowed.
[[nodiscard]] Result<Angle> parse_angle(std::string_view text);

/// A count without a unit: 0 to 1 000 000.
[[nodiscard]] Result<std::int64_t> parse_count(std::string_view text);

}  // namespace bentbook
