#pragma once
/// How long temporaries stay over a whole order, and its faults: what stays up at the end, and what stands idle.

#include <span>

#include "raising/check.h"

namespace bentbook {

/// Where the order brings all (`left_out` is empty): temporaries that are up at its end, and that the whole falls
/// without them.
void say_left_up(const RaisingPlan& plan, OrderCheck& check);
/// Temporaries that stay up although nothing needs any, from some step to the one that takes the last of them out. What
/// holds a post is no idle one while it waits for the plate.
void say_idle(const Frame& frame, const RaisingPlan& plan, std::span<const int> step_of, OrderCheck& check);

/// The step that a temporary stays for though what stands might do without: with which the first plate over a post that
/// it holds comes (common practice: each wall's braces stay until its plate is fastened). −1: none. `step_of`: by
/// timber, −1 where it comes in no step.
[[nodiscard]] int step_of_plate(const Frame& frame, const Temporary& temporary, std::span<const int> step_of);
/// What is taken out before that, in steps that are not done, is taken out then; it does not go up again in between.
void keep_until_plates(const Frame& frame, RaisingPlan& plan);

}  // namespace bentbook
