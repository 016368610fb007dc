/// Local improvement: a piece, or a few in a row, is moved to another place in the order.

#include <algorithm>

#include "raising/search_space.h"

namespace bentbook {
namespace {

/// SplitMix64 (Steele, Lea, Flood: Fast splittable pseudorandom number generators, 2014).
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::size_t below(std::size_t n) {
    state_ += 0x9e3779b97f4a7c15;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111eb;
    return static_cast<std::size_t>((z ^ (z >> 31U)) % n);
  }

 private:
  std::uint64_t state_;
};

OrderCost legs_of(const SearchSpace& space, const std::vector<int>& order) {
  OrderCost sum;
  int last = space.start().last;
  for (const int p : order) {
    const OrderCost leg = space.leg(last, p);
    sum.moves += leg.moves;
    sum.carry += leg.carry;
    last = p;
  }
  return sum;
}

}  // namespace

void improve_sequence(SearchSpace& space, SearchClock& clock, std::uint64_t seed, int most, Sequence& best) {
  std::vector<int> order;
  for (const SearchStep& step : best.steps) order.push_back(step.piece);
  if (order.size() < 2) return;
  Dice dice(seed);
  const OrderCost bound = space.bound();
  for (int i = 0; i < most && best.cost > bound; ++i) {
    if (!clock.tick(space.count())) return;
    std::vector<int> moved = order;
    const std::size_t from = dice.below(moved.size());
    const std::size_t many = std::min<std::size_t>(1 + dice.below(4), moved.size() - from);
    const std::vector<int> taken(moved.begin() + static_cast<std::ptrdiff_t>(from),
                                 moved.begin() + static_cast<std::ptrdiff_t>(from + many));
    moved.erase(moved.begin() + static_cast<std::ptrdiff_t>(from),
                moved.begin() + static_cast<std::ptrdiff_t>(from + many));
    const auto to = static_cast<std::ptrdiff_t>(dice.below(moved.size() + 1));
    moved.insert(moved.begin() + to, taken.begin(), taken.end());
    // Temporaries can only be told by following the whole order: that is done where the rest is no dearer, and now and
    // then all the same while there are any.
    const OrderCost legs = legs_of(space, moved), now = {0, best.cost.moves, best.cost.carry};
    if (moved == order || (legs >= now && (best.cost.temporaries == 0 || i % 4 != 0))) continue;
    SearchState state;
    std::vector<SearchStep> steps;
    if (!space.follow(moved, state, steps) || !(state.cost < best.cost)) continue;
    best = {true, std::move(steps), state.cost};
    order = std::move(moved);
    clock.found(best.cost);
  }
}

}  // namespace bentbook
