#pragma once
/// Sorting, stable, by merging: equal items keep their order, so that no target's library decides it. One body for all
/// types: it sorts indices, then the items are moved once. (Each std::sort of a type of its own is 1 to 4 KB to
/// download; sixty of them were 94 KB.) For long lists of plain numbers std::sort is quicker.

#include <cstddef>
#include <utility>
#include <vector>

#include "numeric/function_ref.h"

namespace bentbook {

/// 0 … count − 1 in the order of `before`, equal ones upward.
[[nodiscard]] std::vector<int> sorted_order(std::size_t count, FunctionRef<bool(int, int)> before);

/// Puts a vector's (or span's) items in the order of `before`.
template <class Items, class Before>
void sort_by(Items& items, Before before) {
  const auto at = [&items](int i) -> auto& { return items[static_cast<std::size_t>(i)]; };
  std::vector<int> order = sorted_order(static_cast<std::size_t>(items.size()), [&](int a, int b) {
    return before(std::as_const(at(a)), std::as_const(at(b)));
  });
  for (int i = 0; i < static_cast<int>(order.size()); ++i) {  // each cycle of the permutation is turned once
    if (order[static_cast<std::size_t>(i)] == i) continue;
    auto lifted = std::move(at(i));
    int hole = i;
    for (int next = order[static_cast<std::size_t>(hole)]; next != i; next = order[static_cast<std::size_t>(hole)]) {
      at(hole) = std::move(at(next));
      order[static_cast<std::size_t>(hole)] = hole;
      hole = next;
    }
    at(hole) = std::move(lifted);
    order[static_cast<std::size_t>(hole)] = hole;
  }
}

template <class Items>
void sort_up(Items& items) {
  sort_by(items, [](const auto& a, const auto& b) { return a < b; });
}

}  // namespace bentbook
