/// Seconds for an order of raising: a default frame of 20 ft by LENGTH ft (at first 12: 41 timbers) that is fastened
/// with each step and never hangs on one temporary, as in a new book, with a crane (`plain`: fastened later; it falls
/// when whole, which is told; `bents`: king posts go up with their bents, which wants the most temporary braces).
/// Prints timbers, then `first N` (a first good order, judged once more from nothing), `check N` (that order, step by
/// step), `moved N` (one step dragged three places on, checked again), `explain N` (the step in the middle, with its
/// margin and all that is said of it).
///   bench_raising [LENGTH [plain|bents]]

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "frame/placing/solve_frame.h"
#include "raising/check.h"
#include "raising/search/search.h"

using namespace bentbook;

namespace {

template <class Work>
double seconds(Work work) {
  using Clock = std::chrono::steady_clock;
  const auto began = Clock::now();
  work();
  return std::chrono::duration<double>(Clock::now() - began).count();
}

RaisingPlan pegged_plan() {
  RaisingPlan plan;
  plan.fasten = FastenWhen::kWithStep;
  plan.spare = true;
  plan.crane.present = true;
  plan.crane.chart.push_back({Length::feet(200), Weight::pounds(20'000)});
  return plan;
}

}  // namespace

/// Joints hold what standing.h says before anybody changes it.
RaisingPlan plain_plan() {
  RaisingPlan plan = pegged_plan();
  plan.fasten = FastenWhen::kLater;
  plan.spare = false;
  return plan;
}

int main(int argc, char** argv) {
  const int feet = argc > 1 ? std::atoi(argv[1]) : 12;
  const Frame frame =
      solve_frame(default_plan(Length::feet(20), Length::feet(feet), Length::feet(10), Slope::in_12(Length::inches(8))))
          .value();
  const std::string_view how = argc > 2 ? argv[2] : "";
  RaisingPlan plan = how == "plain" ? plain_plan() : pegged_plan();
  if (how == "bents") plan.kings = KingPosts::kWithBents;
  SearchOptions options;
  options.improve = false;
  FoundOrder found;
  const double first = seconds([&] { found = search_order(frame, plan, options); });
  std::printf("timbers %d\nfirst %.2f%s\n", static_cast<int>(frame.timbers.size()), first,
              found.found ? "" : " (none)");
  if (!found.found) return 0;
  const std::unique_ptr<Judge> judge = make_judge(frame, found.plan);
  Blocking blocking(frame);
  OrderCheck check;
  std::printf("check %.2f\n", seconds([&] { check = check_order(frame, found.plan, *judge, blocking); }));
  RaisingPlan moved = found.plan;
  const std::size_t from = moved.steps.size() / 2;
  for (std::size_t i = from; i < from + 3 && i + 1 < moved.steps.size(); ++i)
    std::swap(moved.steps[i], moved.steps[i + 1]);
  OrderCheck again;
  std::printf("moved %.3f\n",
              seconds([&] { again = check_order_again(frame, moved, *judge, blocking, check, found.plan); }));
  const StepCheck& middle = check.steps[from];
  std::vector<int> now = middle.stood;
  now.insert(now.end(), middle.timbers.begin(), middle.timbers.end());
  std::sort(now.begin(), now.end());
  bool stands = false;
  std::printf("explain %.3f\n", seconds([&] {
                stands = judge->check(now, middle.temporaries, middle.timbers, StandingDepth::kExplain).stands();
              }));
  return stands && again.steps.size() == moved.steps.size() ? 0 : 1;
}
