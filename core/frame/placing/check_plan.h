#pragma once
/// Inside the frame solver: whether the plan's numbers can be built from at all.

#include "frame/plan.h"

namespace bentbook {

/// Errors as solve_frame.
[[nodiscard]] Result<void> check_plan(const FramePlan& plan);

}  // namespace bentbook
