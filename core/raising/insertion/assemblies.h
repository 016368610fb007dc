#pragma once
/// What could be put together lying down and raised as one.

#include <cstdint>
#include <vector>

#include "raising/insertion/blocking.h"
#include "raising/plan.h"

namespace bentbook {

enum class AssemblyStyle : std::uint8_t { kBents, kWalls };

/// kBents: what stands in a bent's plane from the posts to
/// the tie and what it carries there; kWalls: posts, plates, girts and braces of an eave wall. Both: pairs of rafters
/// that hold each other at the peak, with their collar. Only assemblies of two timbers or more that can be put
/// together (what keeps one from that is left out); a timber is in one of them at most.
[[nodiscard]] std::vector<Assembly> propose_assemblies(const Frame& frame, Blocking& blocking,
                                                       AssemblyStyle style = AssemblyStyle::kBents);

}  // namespace bentbook
