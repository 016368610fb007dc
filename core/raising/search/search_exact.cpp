#include "raising/search/search_exact.h"

#include <queue>
#include <tuple>

namespace bentbook {
namespace {

struct Node {
  SearchState state;
  SearchStep step;
  int before = -1;
};

/// What the future of a state hangs on.
using Future = std::tuple<std::vector<char>, int, std::vector<int>>;

struct Open {
  OrderCost cost;
  int node = 0;  ///< of equal cost the one found first comes first
  friend bool operator<(const Open& a, const Open& b) { return a.cost == b.cost ? a.node > b.node : a.cost > b.cost; }
};

}  // namespace

Sequence search_exact(SearchSpace& space, SearchClock& clock, int most, OrderCost& bound) {
  most += clock.tried();
  Sequence found;
  std::vector<Node> nodes{{space.start(), {}, -1}};
  std::map<Future, bool> closed;
  std::priority_queue<Open> open;
  open.push({space.start().cost, 0});
  while (!open.empty()) {
    const Open top = open.top();
    open.pop();
    const SearchState state = nodes[static_cast<std::size_t>(top.node)].state;
    if (!closed.try_emplace(Future{state.in, state.last, state.up}, true).second) continue;
    bound = top.cost;
    if (state.placed == space.count()) {
      found.found = true;
      found.cost = state.cost;
      for (int n = top.node; n > 0; n = nodes[static_cast<std::size_t>(n)].before)
        found.steps.insert(found.steps.begin(), nodes[static_cast<std::size_t>(n)].step);
      return found;
    }
    for (int p = 0; p < space.count(); ++p) {
      if (clock.tried() >= most || !clock.tick(state.placed)) return found;
      Node next{state, {}, top.node};
      if (!space.extend(next.state, p, next.step)) continue;
      open.push({next.state.cost, static_cast<int>(nodes.size())});
      nodes.push_back(std::move(next));
    }
  }
  return found;
}

}  // namespace bentbook
