#pragma once
/// Length: an exact count of eighths of a nanometre in 64 bits (about ±1.15e6 km).
/// 1 in = 203 200 000, 1/64 in = 3 175 000, 1/128 in = 1 587 500, 1 mm = 8 000 000, all exact
/// (1 in = 25.4 mm exactly). Source: SOURCES.md, "inch and pound".
/// "Half up" here and in print.h is said of the magnitude, so that mirrored measures round alike.

#include <compare>
#include <cstdint>

#include "numeric/int128.h"

namespace bentbook {

struct Length {
  static constexpr std::int64_t kPerInch = 203'200'000;
  static constexpr std::int64_t kPerFoot = 12 * kPerInch;
  static constexpr std::int64_t kPerMm = 8'000'000;
  /// Largest magnitude that entry and files accept: 10 km. Sums of a few such lengths cannot overflow.
  static constexpr std::int64_t kLimit = 10'000'000 * kPerMm;

  std::int64_t count = 0;

  /// n/d inch; where that is not exact, the nearest count, half up. 0 < d, |n| within kLimit.
  static constexpr Length inches(std::int64_t n, std::int64_t d = 1) {
    return {static_cast<std::int64_t>(divide_half_up(static_cast<Int128>(n) * kPerInch, d))};
  }
  static constexpr Length feet(std::int64_t n) { return {n * kPerFoot}; }
  static constexpr Length mm(std::int64_t n) { return {n * kPerMm}; }
  /// From a computed value in inches; nearest count, half up; values past kLimit saturate at it, NaN gives 0.
  static Length from_inches(double inches);

  /// For geometry only; nothing that the user entered goes through a double before it must.
  [[nodiscard]] constexpr double in() const { return static_cast<double>(count) / static_cast<double>(kPerInch); }
  [[nodiscard]] constexpr double to_mm() const { return static_cast<double>(count) / static_cast<double>(kPerMm); }

  friend constexpr auto operator<=>(Length, Length) = default;  // NOLINT(modernize-use-nullptr): the compiler's own 0
  friend constexpr Length operator+(Length a, Length b) { return {a.count + b.count}; }
  friend constexpr Length operator-(Length a, Length b) { return {a.count - b.count}; }
  friend constexpr Length operator-(Length a) { return {-a.count}; }
  friend constexpr Length operator*(Length a, std::int64_t k) { return {a.count * k}; }
};

}  // namespace bentbook
