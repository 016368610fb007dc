#pragma once
/// The right triangle of a slope: any two of rise, run, slope length and angle give the rest.

#include <cstdint>

#include "measure/slope.h"
#include "numeric/result.h"

namespace bentbook {

enum class TrianglePart : std::uint8_t { kRise, kRun, kSlopeLength, kSlope };

/// Two parts are given, `older` and `newer` (in the order they were told); the other values are not looked at.
struct TriangleInput {
  Length rise = Length::inches(10);
  Length run = Length::inches(12);
  Length slope_length = Length::inches(16);
  Slope slope = Slope::in_12(Length::inches(10));
  TrianglePart older = TrianglePart::kRun;
  TrianglePart newer = TrianglePart::kSlope;

  [[nodiscard]] constexpr bool given(TrianglePart part) const { return part == older || part == newer; }
  /// The user tells a part (its value is set by the caller): it becomes the newer; of the two that were given, the one
  /// told earlier is dropped, unless `part` was itself given.
  constexpr void tell(TrianglePart part) {
    if (part == newer) return;
    older = newer;
    newer = part;
  }
  friend bool operator==(const TriangleInput&, const TriangleInput&) = default;
};

struct Triangle {
  Length rise, run, slope_length;
  Angle angle;     ///< from level
  double tan = 0;  ///< rise over run; not meaningful when vertical
  bool level = false, vertical = false;
};

/// Lengths ≥ 0, the slope length and at least one leg > 0.
/// Errors: kMissing (older == newer), kNegative, kNotPositive ("slope_length", "rise", "run"),
/// kImpossible where the two contradict: where = "slope_length" and limit = the leg it must exceed, or
/// where = "rise" for a rise with a level slope.
[[nodiscard]] Result<Triangle> solve_triangle(const TriangleInput& input);

/// One slope in the trade's ways of saying it.
struct SlopeFacts {
  Angle angle, complement;
  double in_12 = 0;     ///< rise in 12 of run
  double percent = 0;   ///< rise in 100 of run
  double mm_per_m = 0;  ///< rise in mm a metre of run
};
[[nodiscard]] SlopeFacts slope_facts(const Slope& slope);

}  // namespace bentbook
