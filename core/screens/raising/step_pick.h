#pragma once
/// Parts of a step's page: what comes in with it, and how that is picked or raised by hand.

#include "screens/raising/form.h"

namespace bentbook::screens {

/// What comes in: each timber with its weight, and what the shop says of it.
void step_timbers(Context&, const ShownFrame&, const RaisingMemory::Picked&);
/// Slings and crane; how a bent lies and is raised by hand.
void step_lifting(Context&, const ShownFrame&, const RaisingMemory::Picked&);

}  // namespace bentbook::screens
