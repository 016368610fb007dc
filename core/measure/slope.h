#pragma once
/// Angle and Slope as entered. An Angle is an integer count of nano-degrees. A Slope is a ratio (rise over run) or an
/// angle, kept as it was said and never forced into the other.

#include <compare>
#include <cstdint>

#include "measure/length.h"

namespace bentbook {

struct Angle {
  static constexpr std::int64_t kPerDegree = 1'000'000'000;
  std::int64_t nano_degrees = 0;

  static constexpr Angle degrees(std::int64_t whole) { return {whole * kPerDegree}; }
  /// From a computed value; nearest nano-degree, half up of the magnitude; saturates, NaN gives 0.
  static Angle from_degrees(double deg);
  static Angle from_radians(double rad);
  [[nodiscard]] double deg() const { return static_cast<double>(nano_degrees) / 1e9; }
  [[nodiscard]] double rad() const;

  friend constexpr auto operator<=>(Angle, Angle) = default;  // NOLINT(modernize-use-nullptr): the compiler's own 0
  friend constexpr Angle operator+(Angle a, Angle b) { return {a.nano_degrees + b.nano_degrees}; }
  friend constexpr Angle operator-(Angle a, Angle b) { return {a.nano_degrees - b.nano_degrees}; }
};

/// How a slope was said; what it was said with is what is printed back.
enum class SlopeForm : std::uint8_t { kRatio, kAngle, kPercent, kMmPerM };

struct Slope {
  SlopeForm form = SlopeForm::kRatio;
  /// kRatio: rise and run as entered (units cancel; a bare number counts as inches). kPercent: run = 100 in.
  /// kMmPerM: run = 1000 mm.
  Length rise{};
  Length run{Length::inches(12)};
  /// kAngle only.
  Angle angle{};

  static constexpr Slope in_12(Length rise) { return {SlopeForm::kRatio, rise, Length::inches(12), {}}; }
  static constexpr Slope ratio(Length rise, Length run) { return {SlopeForm::kRatio, rise, run, {}}; }
  static constexpr Slope of_angle(Angle a) { return {SlopeForm::kAngle, {}, Length::inches(12), a}; }

  [[nodiscard]] double tan() const;  ///< rise over run
  [[nodiscard]] double cos() const;  ///< run over slope length
  [[nodiscard]] double sin() const;  ///< rise over slope length
  [[nodiscard]] double rad() const;
  [[nodiscard]] double deg() const;

  friend constexpr bool operator==(const Slope&, const Slope&) = default;
};

}  // namespace bentbook
