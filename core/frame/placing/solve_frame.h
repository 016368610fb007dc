#pragma once
/// From the plan to the whole frame: timbers placed, joints cut, bearings and ways known, warnings said.

#include "frame/plan.h"

namespace bentbook {

/// Errors name the field: kNotPositive / kNegative / kTooLarge / kTooSmall, kSteep ("pitch_left"), kImpossible
/// ("plate_right": no peak between the walls), kMissing ("bays").
[[nodiscard]] Result<Frame> solve_frame(const FramePlan& plan);
/// The same errors, found before a timber is placed.
[[nodiscard]] Result<void> check_frame(const FramePlan& plan);
/// The very same frame, sooner: what `before` (the frame of another plan) says of timbers that stand and are cut as
/// they were is taken from there.
[[nodiscard]] Result<Frame> solve_frame_again(const FramePlan& plan, const Frame& before);

}  // namespace bentbook
