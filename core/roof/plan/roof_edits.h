#pragma once
/// Changes of a roof's plan that keep the directions of its walls. The plan must be one that check_roof_plan() takes;
/// what comes out may not be: check it again. Dormers stay over the wall that they stood over, as long as there is one.

#include "roof/plan/roof_plan.h"

namespace bentbook {

/// Of the wall of a side, corner to corner.
[[nodiscard]] Length length_of_side(const RoofPlan& plan, int side);

/// That side made so long: the next side is moved along it, and the one after becomes longer or shorter by as much as
/// it must. Exact where the two are square to each other.
[[nodiscard]] RoofPlan with_side_length(const RoofPlan& plan, int side, Length length);

/// The middle third of a side moved out by a sixth of it, in whole steps, its new sides as the old one is: a wing's
/// beginning.
[[nodiscard]] RoofPlan with_part_out(const RoofPlan& plan, int side, Length step);

/// A side taken out: the walls beside it are prolonged until they meet, or, where they run along each other, the
/// shorter one goes with it.
[[nodiscard]] RoofPlan without_side(const RoofPlan& plan, int side);

/// A dormer more, over the middle of an eave or as near to it as there is room: 6 ft wide, 2 ft in from the wall, its
/// plates 5 ft up, in feet so long; a gable's pitch is the roof's, a shed's half of it. Where it has no room what would
/// be accepted (dormer_shape.h) is taken; where nothing would, it is left as it is, for the roof's error to say why.
[[nodiscard]] RoofPlan with_dormer(const RoofPlan& plan, int side, DormerKind kind, Length foot);
/// A dormer's figure made what an error says would be accepted. False: it says nothing of the kind.
bool take_cure(RoofPlan& plan, const Error& error);

}  // namespace bentbook
