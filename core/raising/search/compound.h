#pragma once
/// Greedy search over compound steps. A step has one main piece and light pieces set before it, each held until the
/// main piece closes on it; only what stands at the end of the step has to stand.
///
/// For each main piece the pieces that it would shut out are set first, again and again until it shuts out none; tried
/// too is all that is light and has one end in what stands and one in the main piece, the light pieces that carry it
/// with what braces them (king posts under a ridge beam; also a post under a plate that two others carry already), and
/// the opposite rafter. Nothing is nailed to hold up what
/// hands can hold. Two policies, the cheaper result counts: tier by tier through the building, and bay by bay (whatever
/// needs no new temporary first).

#include "raising/search/search_depth.h"

namespace bentbook {

[[nodiscard]] DepthFirst search_compound(const Frame& frame, const RaisingPlan& plan, SearchSpace& space,
                                         SearchClock& clock);

}  // namespace bentbook
