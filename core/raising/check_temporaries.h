#pragma once
/// Faults of temporaries over a whole order, told from its judged steps: what stays up, and what stands idle.

#include "raising/check.h"

namespace bentbook {

/// Where the order brings all (`left_out` is empty): temporaries that are up at its end, and that the whole falls
/// without them.
void say_left_up(const RaisingPlan& plan, OrderCheck& check);
/// Temporaries that stay up although nothing needs any, from some step to the one that takes the last of them out.
void say_idle(const RaisingPlan& plan, OrderCheck& check);

}  // namespace bentbook
