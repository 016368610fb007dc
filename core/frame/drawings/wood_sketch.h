#pragma once
/// Wooden joints at a member's end: butt, tenon, wedged half-dovetail.

#include "draw/drawing.h"
#include "frame/drawings/joint_wood.h"
#include "frame/joints/half_dovetail.h"
#include "frame/joints/housed_butt.h"
#include "frame/joints/mortise_tenon.h"

namespace bentbook {

/// Given: housing.
[[nodiscard]] draw::Drawing butt_from_side(const HousedButt& butt, const JointWood& wood);
/// Given: length, housing, depth_clearance, pegs, peg.*, drawbore.
[[nodiscard]] draw::Drawing tenon_from_side(const MortiseTenon& tenon, const JointWood& wood);
/// Given: thickness, shoulder_top, shoulder_bottom; told: fence.
[[nodiscard]] draw::Drawing tenon_from_end(const MortiseTenon& tenon, const JointWood& wood);
/// Inches of its tenon, in this wood.
[[nodiscard]] double dovetail_length(const HalfDovetail& joint, const JointWood& wood);
/// Given: length and depth_clearance of a stopped one, one_in, play, housing, pegs, peg.*.
[[nodiscard]] draw::Drawing dovetail_from_side(const HalfDovetail& joint, const JointWood& wood);
/// Given: thickness; told: fence.
[[nodiscard]] draw::Drawing dovetail_from_end(const HalfDovetail& joint, const JointWood& wood);

}  // namespace bentbook
