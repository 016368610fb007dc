#pragma once
/// Straight ways in, of one stage or two. Exhaustive search over the graph's directions, in the order of entry.h.

#include <vector>

#include "raising/insertion/blocking_graph.h"

namespace bentbook {

/// From far away along the way `far`, then over kSlides[reach] along `slide`; `slide` < 0: one stage.
struct StraightPath {
  int far = 0;
  int slide = -1;
  int reach = 0;  ///< index in kSlides
};
struct PathFound {
  bool free = false;
  StraightPath path;
  StraightPath best;  ///< not free: with the fewest blockers
  TimberBits best_blockers;
};
[[nodiscard]] PathFound find_straight(Blocking::Graph& in, const EntryCase& entry);
[[nodiscard]] std::vector<Move> moves_of(const Blocking::Graph& in, const StraightPath& path);

}  // namespace bentbook
