#pragma once
/// What the user tells of a corner where two roofs meet over a hip or a valley, in any angle and at any two pitches.
/// `first`: the roof that run, heel and overhang are told of; `other`: the one round the corner, whose eave stands as
/// high, so that its run, seat and overhang follow.

#include <cstdint>

#include "measure/fields.h"
#include "roof/rafter.h"

namespace bentbook {

enum class CornerKind : std::uint8_t { kHip, kValley };

/// What the hip or valley is cut against at its peak.
enum class CornerPeak : std::uint8_t {
  kRidge,    ///< one cheek, against the side of the first roof's ridge
  kBetween,  ///< two cheeks: a hip between the last commons of both roofs, a valley between their ridges
};

struct CornerInput {
  CornerKind kind = CornerKind::kHip;
  /// Between the eaves, in plan: of a hip inside the building, of a valley across the corner that goes in.
  Angle eave_angle = Angle::degrees(90);
  Slope pitch = Slope::in_12(Length::inches(8));
  Slope pitch_other = Slope::in_12(Length::inches(8));
  Length run = Length::feet(12);  ///< level, of the first roof's commons, wall line to ridge line
  Length hip_breadth = Length::inches(11, 2), hip_depth = Length::inches(19, 2);    ///< the hip or valley itself
  Length jack_breadth = Length::inches(11, 2), jack_depth = Length::inches(15, 2);  ///< jacks, commons, purlins
  bool backed = false;  ///< a hip planed to both roofs; else its top is square and it is dropped. Valleys: not used
  CornerPeak peak = CornerPeak::kRidge;
  Length ridge = Length::inches(3, 2);  ///< thickness of a ridge; 0: none
  HeelBy heel_by = HeelBy::kSeat;       ///< of the first roof's commons; the hip follows
  Length seat = Length::inches(5, 2), heel = Length::inches(6);
  Length overhang = Length::feet(1);  ///< level, of the first roof's tails
  Length spacing = Length::feet(2);   ///< of jacks, level along either eave from the corner
  friend bool operator==(const CornerInput&, const CornerInput&) = default;
};

/// As files have it; the members' names are the figures' keys too.
void describe(Fields&, CornerInput&);

/// Every length and both pitches on their own, and that the eaves are not parallel. Errors, where = the member:
/// kNotPositive, kNegative, kSteep; kTooSmall and kTooLarge with the limit.
[[nodiscard]] Result<void> check_corner(const CornerInput& input);

}  // namespace bentbook
