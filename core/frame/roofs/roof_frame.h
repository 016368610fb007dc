#pragma once
/// A roof of any plan as a frame: its timbers and its wall plates, with joints and contacts, so that sheets, marks,
/// weights, steps, pictures and lists know them as any other timber.
/// A plate lies along each eave, its outer face in the wall line, mitred at the corners and run out under a gable's
/// overhang. Nothing stands below the plates. Backed hips are cut dropped here, and it is said.

#include "frame/plan.h"
#include "roof/plan/roof_plan.h"

namespace bentbook {

/// Of `plan` only wood, the plate's section, what is set apart by mark and the timbers entered by hand are looked at.
/// Errors as solve_roof.
[[nodiscard]] Result<Frame> frame_of_roof(const RoofPlan& roof, const FramePlan& plan);

}  // namespace bentbook
