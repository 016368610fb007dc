#pragma once
/// Weight: an exact count of hundredths of a milligram in 64 bits.
/// 1 lb = 45 359 237, 1 kg = 100 000 000, both exact (1 lb = 0.45359237 kg: international yard and pound agreement,
/// 1959).

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "measure/print.h"
#include "numeric/result.h"

namespace bentbook {

struct Weight {
  static constexpr std::int64_t kPerPound = 45'359'237;
  static constexpr std::int64_t kPerKg = 100'000'000;
  /// Largest magnitude that entry and files accept: 10 000 t.
  static constexpr std::int64_t kLimit = 10'000'000 * kPerKg;

  std::int64_t count = 0;

  static constexpr Weight pounds(std::int64_t n) { return {n * kPerPound}; }
  static constexpr Weight kilograms(std::int64_t n) { return {n * kPerKg}; }
  /// From a computed value in pounds; nearest count, half up; values past kLimit saturate at it, NaN gives 0.
  static Weight from_lb(double lb);
  /// For sums of computed weights only.
  [[nodiscard]] constexpr double lb() const { return static_cast<double>(count) / static_cast<double>(kPerPound); }

  friend constexpr auto operator<=>(Weight, Weight) = default;  // NOLINT(modernize-use-nullptr): the compiler's own 0
};

/// What a number without a unit means in a field.
enum class BareWeight : std::uint8_t { kPound, kKilogram };
/// Feet and inches go with pounds, millimetres and metres with kilograms.
[[nodiscard]] BareWeight bare_weight(LengthForm form);

/// 150, 150 lb, 150 1/2 lbs, 68 kg, 68.5 kilos, (2 * 75) lb: a number as parse_bare_number reads it, then a unit or
/// none. Exact where a count can hold it, else the nearest count. Errors as parse_length's, with `at`: kEmpty,
/// kUnexpected, kUnknownUnit, kNegative, kOverflow (past Weight::kLimit, or an entry above 256 bytes). A ton is refused
/// (kUnknownUnit): there are three of them.
[[nodiscard]] Result<Weight> parse_weight(std::string_view text, BareWeight bare);

/// 151 lb or 68 kg, as bare_weight says; half up at `decimals` (0 to 3).
[[nodiscard]] std::string print_weight(Weight value, LengthForm form, int decimals = 0);
/// For an entry field: a whole number of pounds or kilograms in its own unit, else with three decimals in the form's.
[[nodiscard]] std::string print_weight_entry(Weight value, LengthForm form);

}  // namespace bentbook
