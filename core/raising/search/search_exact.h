#pragma once
/// Uniform-cost search: states leave the queue in order of cost, so the first whole order is the cheapest. Two states
/// with the same pieces, temporaries and last piece have the same future: the dearer one is dropped.

#include "raising/search/search_space.h"

namespace bentbook {

/// Not found: there is none, or it was stopped, or more than `most` pieces would be tried. `bound`: no sequence costs
/// less.
[[nodiscard]] Sequence search_exact(SearchSpace& space, SearchClock& clock, int most, OrderCost& bound);
}  // namespace bentbook
