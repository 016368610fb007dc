#pragma once
/// Local search: a piece, or a few in a row, is moved to another place in the order while that makes it cheaper.

#include <cstdint>

#include "raising/search/search_space.h"

namespace bentbook {

/// Tries at most `most` pieces. Random moves by `seed`.
void improve_sequence(SearchSpace& space, SearchClock& clock, std::uint64_t seed, int most, Sequence& best);

}  // namespace bentbook
