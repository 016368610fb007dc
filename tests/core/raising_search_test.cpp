// Searched orders against trying every sequence: the rule of search.h written down once more, and nothing shared with
// the search but the judge and the blocking graph.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <numeric>
#include <optional>

#include "every_order.h"
#include "frame/placing/solve_frame.h"
#include "raising/check.h"
#include "raising/search/search.h"
#include "raising_rules.h"

using namespace bentbook;

namespace {

std::vector<std::vector<int>> singles(const Frame& frame) {
  std::vector<std::vector<int>> pieces;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) pieces.push_back({static_cast<int>(t)});
  return pieces;
}

/// An order that is shown as good has no fault for a judge that knows nothing of the search.
void check_good(const Frame& frame, const FoundOrder& found) {
  RuleJudge judge(frame, found.plan);
  Blocking blocking(frame);
  const OrderCheck check = check_order(frame, found.plan, judge, blocking);
  CHECK(check.good());
  CHECK(check.left_out.empty());
}

Frame default_frame(int feet) {
  return solve_frame(
             default_plan(Length::feet(20), Length::feet(feet), Length::feet(10), Slope::in_12(Length::inches(8))))
      .value();
}

}  // namespace

TEST_CASE("up to seven pieces no sequence is cheaper than the order found") {
  Random random(11);
  SearchOptions options;
  options.propose = false;
  int found_some = 0, with_temporaries = 0;
  for (int i = 0; i < 1500 && found_some <= 30; ++i) {
    const Frame whole = solve_frame(random_plan(random)).value_or(Frame{});
    if (whole.timbers.empty()) continue;
    const Frame frame = random_part(random, whole, 7);
    RaisingPlan plan;
    if (chance(random, 40) && frame.timbers.size() > 2) {
      Wish wish;
      wish.marks = {frame.timbers[0].mark};
      wish.others = {frame.timbers.back().mark};
      if (chance(random, 50)) std::swap(wish.marks, wish.others);
      plan.wishes.push_back(wish);
    }
    RuleJudge judge(frame, plan);
    Blocking blocking(frame);
    const FoundOrder found = search_order(frame, plan, judge, blocking, options);
    RuleJudge other(frame, plan);
    const std::optional<Costs> cheapest = EveryOrder(frame, plan, singles(frame), other).by_sequences();
    CAPTURE(i, frame.timbers.size());
    std::vector<int> all(frame.timbers.size());
    std::iota(all.begin(), all.end(), 0);
    if (!judge.stands(all, {})) {  // no order of it can end
      CHECK_FALSE(found.found);
      CHECK(found.stuck.at(0).reason == StuckReason::kWholeFalls);
      continue;
    }
    REQUIRE(found.found == cheapest.has_value());
    if (!cheapest) continue;
    ++found_some;
    const OrderCost single{static_cast<int>(cheapest->temporaries), static_cast<int>(cheapest->moves), cheapest->carry};
    if (found.proven_optimal)
      CHECK(found.cost == single);
    else
      CHECK(found.cost < single);  // compound steps need less
    with_temporaries += cheapest->temporaries > 0 ? 1 : 0;
    check_good(frame, found);
  }
  CHECK(found_some > 30);
  CHECK(with_temporaries > 10);
}

TEST_CASE("a whole frame is ordered, bent by bent, the same each time") {
  const Frame frame = default_frame(36);
  const RaisingPlan plan;
  SearchOptions options;
  options.steps = 600;
  const auto search = [&] {
    RuleJudge judge(frame, plan);
    Blocking blocking(frame);
    return search_order(frame, plan, judge, blocking, options);
  };
  const FoundOrder found = search();
  REQUIRE(found.found);
  check_good(frame, found);
  CHECK(found.plan.assemblies.size() == 4);
  CHECK(found.bound <= found.cost);
  CHECK(search().plan == found.plan);
}

TEST_CASE("the first order is kept when the search is stopped") {
  const Frame frame = default_frame(36);
  const RaisingPlan plan;
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  bool was_found = false;
  const FoundOrder found = search_order(frame, plan, judge, blocking, {}, [&](const SearchProgress& progress) {
    was_found = progress.found;
    return !progress.found;
  });
  CHECK(found.stopped);
  REQUIRE(found.found);
  check_good(frame, found);
  const FoundOrder none = search_order(frame, plan, judge, blocking, {}, [](const SearchProgress&) { return false; });
  CHECK(none.stopped);
  CHECK_FALSE(none.found);
}

TEST_CASE("wishes that contradict each other are named as a cycle") {
  const Frame frame = default_frame(24);
  RaisingPlan plan;
  Wish a, b;
  a.marks = {"P-A1"};
  a.others = {"P-A2"};
  b.marks = {"L-A1"};
  b.others = {"P-A1"};
  plan.wishes = {a, b};
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  SearchOptions options;
  options.propose = false;
  const FoundOrder found = search_order(frame, plan, judge, blocking, options);
  CHECK_FALSE(found.found);
  CHECK(found.cycle == std::vector<std::string>{"P-A1", "L-A1"});
}

TEST_CASE("what can't stand as a whole or be picked is said") {
  const Frame frame = default_frame(24);
  const RaisingPlan plan;
  Blocking blocking(frame);
  RuleJudge judge(frame, plan);
  judge.cant_be_held = TimberKind::kBrace;
  SearchOptions options;
  options.propose = false;
  options.steps = 400;
  const FoundOrder found = search_order(frame, plan, judge, blocking, options);
  CHECK_FALSE(found.found);
  CHECK_FALSE(found.stuck.empty());
  RuleJudge weak(frame, plan, 300);
  const FoundOrder heavy = search_order(frame, plan, weak, blocking, options);
  CHECK_FALSE(heavy.found);
  CHECK(std::any_of(heavy.stuck.begin(), heavy.stuck.end(),
                    [](const Stuck& s) { return s.reason == StuckReason::kCantPick; }));
}

TEST_CASE("what is done stays, days and the end to start from are kept") {
  const Frame frame = default_frame(36);
  RaisingPlan plan;
  Wish start, day;
  start.kind = WishKind::kStartFrom;
  start.number = 4;
  day.kind = WishKind::kDay;
  day.marks = {"C-A1"};
  day.number = 2;
  plan.wishes = {start, day};
  RuleJudge judge(frame, plan);
  Blocking blocking(frame);
  SearchOptions options;
  options.steps = 400;
  const FoundOrder found = search_order(frame, plan, judge, blocking, options);
  REQUIRE(found.found);
  check_good(frame, found);
  CHECK(std::count(found.plan.steps[0].marks.begin(), found.plan.steps[0].marks.end(), "P-A4") == 1);
  RaisingPlan going = found.plan;
  going.wishes.clear();
  for (std::size_t i = 0; i < 5; ++i) going.steps[i].done = true;
  RuleJudge later(frame, going);
  const FoundOrder rest = search_order(frame, going, later, blocking, options);
  REQUIRE(rest.found);
  for (std::size_t i = 0; i < 5; ++i) CHECK(rest.plan.steps[i] == going.steps[i]);
  check_good(frame, rest);
}

TEST_CASE("a bent is raised with braces and judged again; too heavy for the crane it is refused with its weight") {
  const Frame whole = default_frame(24);
  std::vector<int> keep;
  for (const char* mark : {"P-A1", "P-E1", "T-1", "B-A1.1", "B-E1.1"}) keep.push_back(timber_by_mark(whole, mark));
  std::sort(keep.begin(), keep.end());
  const Frame frame = part_of(whole, keep);
  RaisingPlan plan;
  plan.crane.present = true;
  plan.crane.chart.push_back({Length::feet(200), Weight::pounds(20'000)});
  SearchOptions options;
  options.improve = false;
  const FoundOrder alone = search_order(frame, plan, options);
  CHECK_FALSE(alone.found);
  CHECK(alone.stuck.at(0).reason == StuckReason::kWholeFalls);
  plan.fasten = FastenWhen::kWithStep;
  const FoundOrder found = search_order(whole, plan, options);
  REQUIRE(found.found);
  CHECK_FALSE(found.plan.steps[0].put_up.empty());
  CHECK(std::any_of(found.plan.steps.begin(), found.plan.steps.end(),
                    [](const RaisingStep& step) { return !step.set_first.empty(); }));
  CHECK(check_order(whole, found.plan).good());
  // A crew that is too small for it and no crane: the order is proposed all the same, and says who is wanting.
  RaisingPlan few;
  few.fasten = FastenWhen::kWithStep;
  few.crew.entered = true;
  const FoundOrder by_hand = search_order(whole, few, options);
  REQUIRE(by_hand.found);
  const std::vector<OrderFault> wanting = check_order(whole, by_hand.plan).faults;
  CHECK_FALSE(wanting.empty());
  CHECK(std::all_of(wanting.begin(), wanting.end(),
                    [](const OrderFault& fault) { return fault.id == OrderFaultId::kCantPick; }));
  // Without any one temporary it is no good order any more.
  for (const Temporary& t : found.plan.temporaries) {
    RaisingPlan less = found.plan;
    for (RaisingStep& step : less.steps) {
      std::erase(step.put_up, t.name);
      std::erase(step.take_out, t.name);
    }
    CAPTURE(t.name);
    CHECK_FALSE(check_order(whole, less).good());
  }
  RaisingPlan bare = found.plan;
  bare.steps[0].put_up.clear();
  CHECK(check_order(whole, bare).first_unstable == 0);
  RaisingPlan weak = found.plan;
  weak.crane.chart[0].capacity = Weight::pounds(500);
  const OrderCheck refused = check_order(whole, weak);
  REQUIRE_FALSE(refused.faults.empty());
  CHECK(refused.faults[0].id == OrderFaultId::kCantPick);
  CHECK(refused.faults[0].value > 500);
}
