#pragma once
/// Reading what people type. Forgiving in form, exact in value: no entry goes through a double.
///
/// Sums and products with + - * / ( ) over quantities. A quantity is feet, inches and a fraction in any of the trade's
/// spellings (12' 7-3/8", 12-7-3/8, 12 7 3/8, 7 3/8, 7" 3/8, 151.375, 151 3/8"), or metric (3m, 3.2 m, 320 cm, 3200mm).
/// Marks: ' ′ ’ ft feet foot pie(s); " ″ ” '' in inch inches pulgada(s); × x ÷ ⁄ − too; one-character fractions
/// such as ½; blanks anywhere between numbers and marks. Nothing is guessed from a number's size.
///
/// What is joined and what is reckoned:
/// - A hyphen with digits or a mark touching it on both sides joins: 7-3/8 is 7 3/8, 12-7 is 12' 7", 12'-7" is 12' 7".
///   With a blank beside it, or where it cannot join (12'-3', 3.5-1, 10-12/3; 12-7 in a metric field), it takes away.
///   24-16 is refused: as feet and inches the inches are 12 or more, as a difference it should stand with blanks.
/// - A slash with whole numbers touching it makes a fraction: 3/8" is three eighths of an inch. With a blank beside it,
///   or after a mark or a parenthesis, it divides: 24' / 3, (25' - 8)/2. 24/3/8 divides twice.
/// - The minus sign − always takes away.
/// - A bare number is a factor in a product and a length, in the field's unit (`bare`), everywhere else: 3 * 16",
///   25' - 8, 7 3/8. Length times length, number over length, or a length over a length left as the result:
///   kUnitMismatch.
/// - A comma is a decimal mark, except where it could part thousands (1,200): refused.
///
/// Every byte sequence ends in a value or an Error whose `at` is the byte offset of the trouble (the text's size where
/// something is missing at the end). Entries above 256 bytes, magnitudes above Length::kLimit: kOverflow. Parentheses
/// deeper than 16: kTooDeep.

#include <string_view>

#include "measure/slope.h"
#include "numeric/result.h"

namespace bentbook {

/// What a number without a mark means in a field.
enum class BareUnit : std::uint8_t { kInch, kFoot, kMm, kMetre };

/// The entry as a length; it may be negative. An exact value is kept exact where an eighth of a nanometre can hold it,
/// else rounded once, to the nearest count.
[[nodiscard]] Result<Length> parse_length(std::string_view text, BareUnit bare);

/// What a number without a mark means in a slope field.
enum class BareSlope : std::uint8_t { kIn12, kDegrees, kPercent, kMmPerM };

/// 10/12, 10:12, 10 in 12, 7 1/2 in 12, 3m / 4m, 39.8°, 39.8 deg, 39° 48′, 83%, 833 mm/m, or a bare number as `bare`
/// says. Each side of a ratio is read like a length, bare numbers as inches; 7 1/2 alone is one number, 1/2 a ratio.
/// Zero slope is accepted; 90° and more is kSteep, negative is kNegative, a run of zero kDivisionByZero.
[[nodiscard]] Result<Slope> parse_slope(std::string_view text, BareSlope bare);

/// 39.8, 39.8°, 22 1/2°, 39° 48′ 30″, 90 - 39.8; negative allowed. Past a full turn, or minutes or seconds of 60 and
/// more: kTooLarge.
[[nodiscard]] Result<Angle> parse_angle(std::string_view text);

/// A count without a unit: 0 to 1 000 000. Errors: kNegative, kTooLarge, kUnexpected (a decimal part, a sum).
[[nodiscard]] Result<std::int64_t> parse_count(std::string_view text);
/// As parse_count, counted in tenths (`decimals` 1), hundredths (2) and so on, to 1 000 000 of them; more decimals than
/// these are kUnexpected.
[[nodiscard]] Result<std::int64_t> parse_decimal(std::string_view text, int decimals);

}  // namespace bentbook
