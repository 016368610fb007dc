// Loads and stacks: what must be true of any list, said by its own words; and a small load that is counted by hand.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <set>

#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "raising/lifting/pick.h"
#include "raising/lists.h"
#include "words/raising_words.h"

using namespace bentbook;

namespace {

Frame some_frame() {
  return solve_frame(
             default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))))
      .value();
}

/// One timber a step, in the frame's order, two days.
RaisingPlan in_turn(const Frame& frame) {
  RaisingPlan plan;
  for (const Timber& timber : frame.timbers) {
    RaisingStep step;
    step.marks = {timber.mark};
    step.day = plan.steps.size() < frame.timbers.size() / 2 ? 1 : 2;
    plan.steps.push_back(step);
  }
  return plan;
}

}  // namespace

TEST_CASE("of each load the first timber wanted is on top, and no load is more than the truck carries", "[lists]") {
  const Frame frame = some_frame();
  RaisingPlan plan = in_turn(frame);
  plan.truck.carries = Weight::pounds(2000);
  const auto loads = truck_loads(frame, plan);
  REQUIRE(loads.size() > 2);
  int next = 0;
  for (std::size_t l = 0; l < loads.size(); ++l) {
    double weight = 0;
    for (auto t = loads[l].timbers.rbegin(); t != loads[l].timbers.rend(); ++t) {
      CHECK(t->timber == next);
      CHECK(t->step == next++);
      weight += t->weight_lb;
    }
    CHECK(loads[l].weight_lb == Catch::Approx(weight));
    CHECK(weight <= 2000);
    // The next load's first timber would not have gone on this one.
    if (l + 1 < loads.size()) CHECK(weight + loads[l + 1].timbers.back().weight_lb > 2000);
  }
  CHECK(next == static_cast<int>(frame.timbers.size()));
}

TEST_CASE("weights of loads are densities by hand", "[lists]") {
  // Wood Handbook (FPL-GTR-282) ch. 4: 62.4 · G · (1 + M/100); the heavier of green and as it is, 15 % on top.
  const Frame frame = some_frame();
  const auto loads = truck_loads(frame, {});
  double all = 0, by_hand = 0;
  for (const TruckLoad& load : loads) all += load.weight_lb;
  for (const Timber& timber : frame.timbers) {
    const Species& s = timber.species;
    const double green = 62.4 * s.gravity_green * (1 + s.green_moisture / 100);
    by_hand += libm::ceil(facts_of(timber).volume / 1728 * green * 1.15);  // whole pounds, up
  }
  CHECK(all == Catch::Approx(by_hand));
}

TEST_CASE("one weight: what is printed of parts adds up to what is printed of the whole, and says that it is wet",
          "[lists]") {
  const Frame frame = some_frame();
  const auto printed = [](const std::string& said) { return std::stoi(said.substr(0, said.find(' '))); };
  for (const LengthForm form : {LengthForm::kFeetInches, LengthForm::kMm}) {
    Voice voice;
    voice.lengths.form = form;
    for (const TruckLoad& load : truck_loads(frame, in_turn(frame))) {
      int sum = 0;
      for (const LoadedTimber& t : load.timbers) {
        const std::string said = say_wet(t.weight_lb, voice);
        CHECK(said.ends_with(form == LengthForm::kMm ? " kg wet" : " lb wet"));
        sum += printed(said);
        // The pick of that timber says the same.
        CHECK(say_wet(solve_pick(frame, {}, std::vector{t.timber}).weight_lb, voice) == said);
      }
      CHECK(printed(say_wet(weights_of(load.timbers), voice)) == sum);
    }
  }
}

TEST_CASE("too long and too heavy are named; what is too heavy rides alone", "[lists]") {
  const Frame frame = some_frame();
  RaisingPlan plan = in_turn(frame);
  plan.truck.length = Length::feet(18);
  plan.truck.carries = Weight::pounds(300);
  int long_ones = 0, heavy_ones = 0;
  for (const TruckLoad& load : truck_loads(frame, plan))
    for (const LoadedTimber& t : load.timbers) {
      CHECK(t.too_long == (frame.timbers[static_cast<std::size_t>(t.timber)].length > 18 * 12));
      CHECK(t.too_heavy == (t.weight_lb > 300));
      long_ones += t.too_long ? 1 : 0;
      heavy_ones += t.too_heavy ? 1 : 0;
      if (t.too_heavy) CHECK(load.timbers.size() == 1);
    }
  CHECK(long_ones > 0);
  CHECK(heavy_ones > 0);
}

TEST_CASE("stacks go by days; what is done has gone, what is in no step lies lowest", "[lists]") {
  const Frame frame = some_frame();
  RaisingPlan plan = in_turn(frame);
  plan.steps[0].done = true;
  plan.steps[1].marks.emplace_back("P-Z9");
  plan.steps.pop_back();
  const auto stacks = lay_down(frame, plan);
  REQUIRE(stacks.size() == 3);
  CHECK(stacks[0].day == 1);
  CHECK(stacks[0].timbers.back().timber == 1);
  CHECK(stacks[1].day == 2);
  CHECK(stacks[2].day == 0);
  CHECK(stacks[2].timbers.size() == 1);
  std::set<int> all;
  for (const LayDownStack& stack : stacks)
    for (const LoadedTimber& t : stack.timbers) CHECK(all.insert(t.timber).second);
  CHECK(all.size() == frame.timbers.size() - 1);
  // One load: the timber that no step brings is at the bottom, the second step's on top.
  plan.truck.carries = Weight::pounds(1'000'000);
  const auto loads = truck_loads(frame, plan);
  REQUIRE(loads.size() == 1);
  CHECK(loads[0].timbers.front().step == -1);
  CHECK(loads[0].timbers.back().step == 1);
  CHECK(truck_loads(Frame{}, plan).empty());
}
