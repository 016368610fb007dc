#pragma once
/// Depth-first search with backtracking: of the preferred pieces the nearest that stands without new temporaries, else
/// the nearest with.

#include <vector>

#include "raising/search/search_space.h"

namespace bentbook {

struct DepthFirst {
  Sequence sequence;             ///< the first whole order, if one was found
  SearchState farthest;          ///< what stood when most did
  std::vector<SearchStep> part;  ///< the steps to there
};
[[nodiscard]] DepthFirst search_depth(SearchSpace& space, SearchClock& clock, Preference preference, int most);

}  // namespace bentbook
