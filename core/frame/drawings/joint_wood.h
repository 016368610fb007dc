#pragma once
/// What of two timbers a drawing of their joint shows: sizes as the plan has them, how they lie to each other.

#include <optional>

#include "frame/plan.h"

namespace bentbook {

/// Where the member comes from as one stands before the joint, the receiver's face being where it meets it.
enum class MemberFrom : std::uint8_t { kRight, kAbove, kLeft, kBelow };

/// Lengths in inches.
struct JointWood {
  double high = 8;      ///< of the member in the view's plane, square to its axis
  double wide = 8;      ///< of the member across the view
  double receiver = 8;  ///< of the receiver, from its face to its back
  double across = 8;    ///< of the receiver, its other side; where a rafter lies over it, the level one
  double lean = 0;      ///< tangent of the member's angle off square to the face; of a rafter, its slope
  MemberFrom from = MemberFrom::kRight;
  /// From the member's reference face to the near side of slot or tenon, as it is cut there: in the middle of the wood
  /// that both timbers have. Nothing: in the member's own middle.
  std::optional<double> fence{};
  bool top_is_low = false;  ///< of a leaning member: its top edge is the one drawn low
};

/// Inches from the member's reference face to the near side of what is this wide.
[[nodiscard]] double near_side(const JointWood& wood, Length width);

/// As these two meet.
[[nodiscard]] JointWood joint_wood(const Frame& frame, const Joint& joint);
/// The one of a meeting's joints that shows best what all have; nullptr: there is none.
[[nodiscard]] const Joint* joint_to_show(const Frame& frame, Meeting meeting);

}  // namespace bentbook
