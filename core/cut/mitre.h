#pragma once
/// The mitre: one angle split between two members that meet in a plane, corner to corner.

#include "measure/slope.h"
#include "numeric/result.h"

namespace bentbook {

struct Mitre {
  /// Off square, for each member: positive where the outer edge is the longer one. Equal depths: 90° − angle/2 each.
  Angle off_square_a, off_square_b;
  /// The same, measured from the member's length: their sum is the angle between the members.
  Angle from_length_a, from_length_b;
  Length line;  ///< inner corner to outer corner
};

/// `between`: the angle between the two members, from 1° to 179°. Depths: their widths in the plane of the joint.
/// tan(from_length_a) = a sin φ / (b + a cos φ): the line from the inner to the outer corner of two strips.
/// Source: SOURCES.md, "plane geometry". Errors: kNotPositive ("depth_a", "depth_b"), kTooSmall,
/// kTooLarge ("between").
[[nodiscard]] Result<Mitre> solve_mitre(Angle between, Length depth_a, Length depth_b);

}  // namespace bentbook
