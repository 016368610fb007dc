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

/// A dormer over some eave, of any size that is built.
inline Dormer random_dormer(Random& random, const RoofPlan& plan, int side) {
  const PlanSide &from = plan.sides[static_cast<std::size_t>(side)],
                 &to = plan.sides[(static_cast<std::size_t>(side) + 1) % plan.sides.size()];
  const double length = std::hypot(to.x.in() - from.x.in(), to.y.in() - from.y.in());
  Dormer d;
  d.kind = random.whole(0, 1) ? DormerKind::kShed : DormerKind::kGable;
  d.side = side;
  d.centre = Length::inches(random.whole(0, static_cast<int>(length) * 16), 16);
  d.width = sixteenths(random, 40 * 16, 120 * 16);
  if (random.whole(0, 2) != 0) d.face = sixteenths(random, 20 * 16, 50 * 16);
  d.plate_height = d.face + sixteenths(random, 24 * 16, 50 * 16);
  d.pitch = random_pitch(random);
  if (d.kind == DormerKind::kShed)
    d.pitch = Slope::in_12(Length::from_inches(12 * from.pitch.tan() * random.real(0.2, 0.7)));
  d.overhang = sixteenths(random, 0, 18 * 16);
  d.doubled = random.whole(0, 1) != 0;
  return d;
}

/// A roof of one pitch or unlike ones with up to three dormers, of rafters that are built so.
inline RoofPlan dormered_roof(Random& random, bool one_pitch) {
  RoofPlan plan = random_roof(random, {one_pitch, true, false});
  for (int i = 0; i < 3; ++i) {
    const int side = static_cast<int>(random.whole(0, static_cast<int>(plan.sides.size()) - 1));
    if (plan.sides[static_cast<std::size_t>(side)].kind == SideKind::kEave && (i == 0 || random.whole(0, 1)))
      plan.dormers.push_back(random_dormer(random, plan, side));
  }
  plan.header = {Length::inches(random.whole(3, 12), 2), Length::inches(random.whole(16, 24), 2)};
  plan.dormer_post = {Length::inches(random.whole(3, 6)), Length::inches(random.whole(3, 6))};
  return plan;
}

}  // namespace bentbook
