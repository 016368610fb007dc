#pragma once
/// Short moves that are not straight: standing timbers spread apart, a timber swung about its end.

#include <vector>

#include "raising/insertion/blocking_graph.h"

namespace bentbook {

/// Empty: it will not do.
[[nodiscard]] std::vector<Move> find_spread(Blocking::Graph& in, const EntryCase& entry, const EntryLimits& limits);
[[nodiscard]] std::vector<Move> find_swing(Blocking::Graph& in, const EntryCase& entry);

}  // namespace bentbook
