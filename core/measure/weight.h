#pragma once
/// Weight: an exact count of hundredths of a milligram in 64 bits.
/// 1 lb = 45 359 237, 1 kg = 100 000 000, both exact (1 lb = 0.45359237 kg).
/// Source: SOURCES.md, "inch and pound".

#include <compare>
#include <cstdint>
#include <string>

#include "measure/print.h"

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

/// What weights are entered and printed in.
enum class WeightUnit : std::uint8_t { kPound, kKilogram };
/// Feet and inches go with pounds, millimetres and metres with kilograms.
[[nodiscard]] WeightUnit weight_unit(LengthForm form);
[[nodiscard]] constexpr std::int64_t per_unit(WeightUnit unit) {
  return unit == WeightUnit::kPound ? Weight::kPerPound : Weight::kPerKg;
}
/// Half up.
[[nodiscard]] std::int64_t whole_units(Weight value, WeightUnit unit);
/// "151 lb" or "68 kg", as weight_unit says.
[[nodiscard]] std::string print_weight(Weight value, LengthForm form);

}  // namespace bentbook
