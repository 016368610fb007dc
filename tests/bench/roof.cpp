/// Milliseconds for one solve_roof() call of a house of twelve sides: the least of nine runs. Prints `sides N timbers N
/// ms N`; the budget is 3 ms for 150 rafters.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <utility>

#include "roof/plan/solve_roof.h"

using namespace bentbook;

namespace {

/// Two wings to the back and one to the front, 64 ft long.
RoofPlan twelve_sides() {
  RoofPlan plan;
  for (const auto& [x, y] : {std::pair{0, 0},
                             {24, 0},
                             {24, -8},
                             {40, -8},
                             {40, 0},
                             {64, 0},
                             {64, 38},
                             {44, 38},
                             {44, 22},
                             {20, 22},
                             {20, 38},
                             {0, 38}}) {
    PlanSide side;
    side.x = Length::feet(x);
    side.y = Length::feet(y);
    plan.sides.push_back(side);
  }
  return plan;
}

}  // namespace

int main() {
  using Clock = std::chrono::steady_clock;
  const RoofPlan plan = twelve_sides();
  double least = 1e9;
  std::size_t timbers = 0;
  for (int run = 0; run < 9; ++run) {
    constexpr int kRounds = 50;
    const auto began = Clock::now();
    for (int round = 0; round < kRounds; ++round)
      if (const auto roof = solve_roof(plan)) timbers = roof->timbers.size();
    const std::chrono::duration<double, std::milli> took = Clock::now() - began;
    least = std::min(least, took.count() / kRounds);
  }
  std::printf("sides %zu timbers %zu ms %.3f\n", plan.sides.size(), timbers, least);
  return timbers > 0 ? 0 : 1;
}
