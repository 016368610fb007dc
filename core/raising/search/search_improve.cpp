#include "raising/search/search_improve.h"

#include <algorithm>

namespace bentbook {
namespace {

/// SplitMix64. Source: SOURCES.md, "random moves".
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

/// A sequence and what stands before each of its pieces, and at its end.
struct Course {
  std::vector<int> order;
  std::vector<SearchStep> steps;
  std::vector<SearchState> states;
};

/// Goes through the pieces from `first` on; false: some step is not good, or that is enough.
bool follow(SearchSpace& space, SearchClock& clock, int until, std::size_t first, Course& course) {
  course.steps.resize(first);
  course.states.resize(first + 1);
  for (std::size_t i = first; i < course.order.size(); ++i) {
    if (clock.tried() >= until || !clock.tick(space.count())) return false;
    SearchState state = course.states.back();
    SearchStep step;
    if (!space.extend(state, course.order[i], step)) return false;
    course.steps.push_back(std::move(step));
    course.states.push_back(std::move(state));
  }
  return true;
}

}  // namespace

void improve_sequence(SearchSpace& space, SearchClock& clock, std::uint64_t seed, int most, Sequence& best) {
  Course course;
  for (const SearchStep& step : best.steps) course.order.push_back(step.piece);
  if (course.order.size() < 2) return;
  course.states.push_back(space.start());
  const int until = clock.tried() + most;
  if (!follow(space, clock, until, 0, course)) return;
  Dice dice(seed);
  const OrderCost bound = space.bound();
  for (int i = 0; clock.tried() < until && best.cost > bound; ++i) {
    if (!clock.tick(space.count())) return;
    Course moved;
    moved.order = course.order;
    const std::size_t from = dice.below(moved.order.size());
    const std::size_t many = std::min<std::size_t>(1 + dice.below(4), moved.order.size() - from);
    const auto begin = moved.order.begin() + static_cast<std::ptrdiff_t>(from);
    const std::vector<int> taken(begin, begin + static_cast<std::ptrdiff_t>(many));
    moved.order.erase(begin, begin + static_cast<std::ptrdiff_t>(many));
    const std::size_t to = dice.below(moved.order.size() + 1);
    moved.order.insert(moved.order.begin() + static_cast<std::ptrdiff_t>(to), taken.begin(), taken.end());
    // Temporaries can only be told by following the order: that is done where the rest is no dearer, and now and then
    // all the same while there are any.
    const OrderCost legs = legs_of(space, moved.order), now = {0, best.cost.moves, best.cost.carry};
    if (from == to || (legs >= now && (best.cost.temporaries == 0 || i % 4 != 0))) continue;
    const std::size_t first = std::min(from, to);
    moved.steps.assign(course.steps.begin(), course.steps.begin() + static_cast<std::ptrdiff_t>(first));
    moved.states.assign(course.states.begin(), course.states.begin() + static_cast<std::ptrdiff_t>(first) + 1);
    if (!follow(space, clock, until, first, moved) || !(moved.states.back().cost < best.cost)) continue;
    best = {true, moved.steps, moved.states.back().cost};
    course = std::move(moved);
    clock.found(best.cost);
  }
}

}  // namespace bentbook
