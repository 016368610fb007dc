#pragma once
/// Inside picks: which of the user's slings, shackles and spreaders hang it from a hook.

#include "raising/lifting/pick.h"
#include "raising/lifting/pick_points.h"

namespace bentbook {

/// Legs, gear and what is to be said of them, for a pick whose weight is there.
void sling_up(const RaisingPlan& plan, const PickPoints& points, Pick& pick);

}  // namespace bentbook
