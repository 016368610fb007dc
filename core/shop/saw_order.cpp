// The order of saw settings with few changes: a shortest path through all of them, where a step costs the number of
// scales that are moved.

#include "shop/saw_order.h"

#include <algorithm>
#include <numeric>

#include "numeric/sorting.h"

namespace bentbook {
namespace {

using Order = std::vector<int>;

int cost(std::span<const SawSetup> setups, int a, int b) {
  return changes_between(setups[static_cast<std::size_t>(a)], setups[static_cast<std::size_t>(b)]);
}

/// best[set][last]: fewest changes to go through `set`, ending at `last`.
Order exact(std::span<const SawSetup> setups) {
  const int n = static_cast<int>(setups.size());
  const auto at = [n](unsigned set, int last) { return set * static_cast<unsigned>(n) + static_cast<unsigned>(last); };
  constexpr int kFar = 1 << 20;
  std::vector<int> best((std::size_t{1} << n) * setups.size(), kFar), before(best.size(), -1);
  for (int i = 0; i < n; ++i) best[at(1u << i, i)] = 0;
  const unsigned all = (1u << n) - 1;
  for (unsigned set = 1; set <= all; ++set)
    for (int last = 0; last < n; ++last) {
      const int so_far = best[at(set, last)];
      if (so_far >= kFar) continue;
      for (int next = 0; next < n; ++next) {
        if ((set >> next & 1) != 0) continue;
        const unsigned with = set | 1u << next;
        const int total = so_far + cost(setups, last, next);
        if (total >= best[at(with, next)]) continue;
        best[at(with, next)] = total;
        before[at(with, next)] = last;
      }
    }
  int last = 0;
  for (int i = 1; i < n; ++i)
    if (best[at(all, i)] < best[at(all, last)]) last = i;
  Order order;
  for (unsigned set = all; last >= 0;) {
    order.push_back(last);
    const int earlier = before[at(set, last)];
    set &= ~(1u << last);
    last = earlier;
  }
  std::reverse(order.begin(), order.end());
  return order;
}

int edge(std::span<const SawSetup> setups, const Order& order, std::size_t i) {
  return i == 0 || i >= order.size() ? 0 : cost(setups, order[i - 1], order[i]);
}

/// Turns the stretch [i, k) round where that saves changes.
bool turn(std::span<const SawSetup> setups, Order& order, std::size_t i, std::size_t k) {
  const int before = edge(setups, order, i) + edge(setups, order, k);
  const int after = (i == 0 ? 0 : cost(setups, order[i - 1], order[k - 1])) +
                    (k == order.size() ? 0 : cost(setups, order[i], order[k]));
  if (after >= before) return false;
  std::reverse(order.begin() + static_cast<std::ptrdiff_t>(i), order.begin() + static_cast<std::ptrdiff_t>(k));
  return true;
}

/// Takes one setting out and puts it in before place k of the rest, where that saves changes.
bool carry(std::span<const SawSetup> setups, Order& order, std::size_t i, std::size_t k) {
  Order rest = order;
  rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
  const int joined = i == 0 || i == rest.size() ? 0 : cost(setups, rest[i - 1], rest[i]);
  const int saved = edge(setups, order, i) + edge(setups, order, i + 1) - joined;
  const int opened = edge(setups, rest, k);
  const int spent = (k == 0 ? 0 : cost(setups, rest[k - 1], order[i])) +
                    (k == rest.size() ? 0 : cost(setups, order[i], rest[k])) - opened;
  if (spent >= saved) return false;
  rest.insert(rest.begin() + static_cast<std::ptrdiff_t>(k), order[i]);
  order = std::move(rest);
  return true;
}

/// A round over many settings costs time: with more than a few hundred the sorted order stands.
constexpr std::size_t kMended = 200;

void mend(std::span<const SawSetup> setups, Order& order) {
  if (order.size() > kMended) return;
  for (bool better = true; better;) {
    better = false;
    for (std::size_t i = 0; i < order.size(); ++i)
      for (std::size_t k = i + 2; k <= order.size(); ++k) better = turn(setups, order, i, k) || better;
    for (std::size_t i = 0; i < order.size(); ++i)
      for (std::size_t k = 0; k < order.size(); ++k) better = (k != i && carry(setups, order, i, k)) || better;
  }
}

}  // namespace

int changes_between(const SawSetup& a, const SawSetup& b) {
  return (a.table != b.table ? 1 : 0) + (a.tilt != b.tilt ? 1 : 0) + (a.stop != b.stop ? 1 : 0);
}

std::vector<int> order_of_setups(std::span<const SawSetup> setups) {
  if (setups.size() > 1 && setups.size() <= kExactSetups) return exact(setups);
  Order order(setups.size());
  std::iota(order.begin(), order.end(), 0);
  sort_by(order,
          [&](int a, int b) { return setups[static_cast<std::size_t>(a)] < setups[static_cast<std::size_t>(b)]; });
  mend(setups, order);
  return order;
}

}  // namespace bentbook
