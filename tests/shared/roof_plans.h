#pragma once
/// Roof plans drawn at random, by seed alone.

#include <algorithm>
#include <cmath>
#include <vector>

#include "random.h"
#include "roof/plan/flat.h"
#include "roof/plan/roof_plan.h"

namespace bentbook {

struct RandomRoof {
  bool one_pitch = false;  ///< and one plate height, one overhang
  bool gables = true;      ///< some sides may be gables
  bool ragged = false;     ///< any angles, else the shapes that are built
};

inline Length sixteenths(Random& random, int lo, int hi) { return Length::inches(random.whole(lo, hi), 16); }

/// A star-shaped plan with corners at any angle.
inline std::vector<Vec2> ragged_outline(Random& random) {
  const int n = static_cast<int>(random.whole(3, 12));
  std::vector<Vec2> corners;
  for (int i = 0; i < n; ++i) {
    const double angle = 2 * 3.14159265358979 * (i + random.real(0.1, 0.9)) / n;
    const double far = random.real(120, 420);
    corners.push_back({far * std::cos(angle), far * std::sin(angle)});
  }
  return corners;
}

inline Slope random_pitch(Random& random) { return Slope::in_12(Length::inches(random.whole(4, 28), 2)); }

/// A rectangle, L, T, U or bay, its sizes often alike, so that events fall together; turned by quarter turns.
inline RoofPlan built_outline(Random& random) {
  const Slope pitch = random_pitch(random);
  const Length across = Length::inches(12 * random.whole(12, 26)),
               wing = random.whole(0, 1) ? across : Length::inches(12 * random.whole(10, 24));
  const Length out = Length::inches(12 * random.whole(5, 24));
  switch (random.whole(0, 4)) {
    case 0:
      return rectangle_roof(random.whole(0, 3) ? Length::inches(12 * random.whole(12, 48)) : across, across, pitch);
    case 1:
      return l_roof(wing + Length::inches(12 * random.whole(4, 24)), across, wing, out, pitch);
    case 2:
      return t_roof(wing + Length::inches(12 * random.whole(6, 24)), across, wing, out, pitch);
    case 3:
      return u_roof(wing * 2 + Length::inches(12 * random.whole(5, 24)), across, wing, out, pitch);
    default:
      return bay_roof(Length::inches(12 * random.whole(18, 40)), across, Length::inches(12 * random.whole(9, 14)),
                      Length::inches(12 * random.whole(2, 4)), pitch);
  }
}

/// It may be one that cannot be solved: sides too short for their planes, gables that close nothing.
inline RoofPlan random_roof(Random& random, RandomRoof wanted) {
  RoofPlan plan;
  if (wanted.ragged) {
    const Slope pitch = random_pitch(random);
    for (const Vec2& corner : ragged_outline(random)) {
      PlanSide side;
      side.x = Length::from_inches(std::round(corner.x * 16) / 16);
      side.y = Length::from_inches(std::round(corner.y * 16) / 16);
      side.pitch = pitch;
      plan.sides.push_back(side);
    }
  } else {
    plan = built_outline(random);
  }
  const Length overhang = sixteenths(random, 0, 16 * 18);
  for (PlanSide& side : plan.sides) side.overhang = overhang;
  plan.spacing = Length::inches(random.whole(16, 32));
  plan.common = {Length::inches(random.whole(3, 8), 2), Length::inches(random.whole(11, 16), 2)};
  plan.hip = {Length::inches(random.whole(3, 12), 2), Length::inches(random.whole(18, 28), 2)};
  plan.valley = {Length::inches(random.whole(3, 12), 2), Length::inches(random.whole(18, 28), 2)};
  plan.ridge = {Length::inches(random.whole(2, 12), 2), Length::inches(random.whole(20, 28), 2)};
  plan.heel = Length::inches(random.whole(8, 10), 2);
  plan.hip_top = random.whole(0, 1) ? HipTop::kBacked : HipTop::kDropped;
  plan.tail = random.whole(0, 1) ? TailEnd::kSquare : TailEnd::kPlumb;
  if (!wanted.one_pitch)
    for (PlanSide& side : plan.sides) {
      if (random.whole(0, 1)) side.pitch = random_pitch(random);
      if (random.whole(0, 3) == 0) side.plate_height = Length::inches(random.whole(-24, 24));
      if (random.whole(0, 3) == 0) side.overhang = sixteenths(random, 0, 16 * 18);
    }
  if (wanted.gables)
    for (PlanSide& side : plan.sides)
      if (random.whole(0, 4) == 0) side.kind = SideKind::kGable;
  return plan;
}

}  // namespace bentbook
