#pragma once
/// What a joint holds, as unit forces on its member. The table stands in standing.h.

#include <vector>

#include "raising/stability/standing.h"

namespace bentbook {

/// Adds the rows of a joint, an index in Frame::joints; its fasteners count for what the plan rates them.
void add_joint_rows(const Frame& frame, const RaisingPlan& plan, int joint, std::vector<HoldRow>& rows);

}  // namespace bentbook
