#pragma once
/// The order of saw settings with few changes.

#include <cstddef>
#include <span>
#include <vector>

#include "shop/steps.h"

namespace bentbook {

/// How many of table, tilt and stop are changed from one to the other.
[[nodiscard]] int changes_between(const SawSetup& a, const SawSetup& b);

/// Indices of `setups`, which are all different, in an order with few changes: the fewest there are with up to
/// kExactSetups (dynamic programming over subsets: Held and Karp, 1962); with more, settings sorted and then mended by
/// turning and moving stretches until neither helps.
[[nodiscard]] std::vector<int> order_of_setups(std::span<const SawSetup> setups);
inline constexpr std::size_t kExactSetups = 12;

}  // namespace bentbook
