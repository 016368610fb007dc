// Edits of what the lead says of the raising.

#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"
#include "raising/plan_edits.h"

using namespace bentbook;

TEST_CASE("what no step brings is left, in the frame's order", "[raising]") {
  Frame frame;
  for (const char* mark : {"P-A1", "P-E1", "T-1", "X-1"}) frame.timbers.emplace_back().mark = mark;
  frame.timbers[3].placed = false;
  RaisingPlan plan;
  CHECK(marks_left(frame, plan) == std::vector<std::string>{"P-A1", "P-E1", "T-1"});
  add_step(plan, {"T-1", "gone"});
  CHECK(marks_left(frame, plan) == std::vector<std::string>{"P-A1", "P-E1"});
}

TEST_CASE("a step comes on the day of the last one and moves to where it is put", "[raising]") {
  RaisingPlan plan;
  add_step(plan, {"a"});
  CHECK(plan.steps[0].day == 1);
  plan.steps[0].day = 3;
  add_step(plan, {"b"});
  CHECK(plan.steps[1].day == 3);
  add_step(plan, {"c"});
  move_step(plan.steps, 0, 2);
  CHECK(plan.steps[2].marks[0] == "a");
  move_step(plan.steps, 2, 0);
  CHECK(plan.steps[0].marks[0] == "a");
  CHECK(plan.steps[1].marks[0] == "b");
}

TEST_CASE("from a step on nothing is done on an earlier day", "[raising]") {
  RaisingPlan plan;
  for (const char* mark : {"a", "b", "c", "d"}) add_step(plan, {mark});
  plan.steps[3].day = 4;
  CHECK_FALSE(goes_back(plan, 1));
  plan.steps[1].day = 2;
  CHECK(goes_back(plan, 1));
  day_from(plan, 1);
  CHECK_FALSE(goes_back(plan, 1));
  CHECK((plan.steps[0].day == 1 && plan.steps[1].day == 2 && plan.steps[2].day == 2 && plan.steps[3].day == 4));
}

TEST_CASE("proposed braces get names of their own; one that is dropped leaves the steps", "[raising]") {
  RaisingPlan plan;
  add_step(plan, {"a"});
  Temporary there;
  there.name = "T2";
  plan.temporaries.push_back(there);
  take_braces(plan, 0, {Temporary{}, Temporary{}});
  REQUIRE(plan.temporaries.size() == 3);
  CHECK(plan.temporaries[1].name == "T1");
  CHECK(plan.temporaries[2].name == "T3");
  CHECK(plan.steps[0].put_up == std::vector<std::string>{"T1", "T3"});
  plan.steps[0].take_out = {"T1"};
  drop_temporary(plan, "T1");
  CHECK(plan.steps[0].put_up == std::vector<std::string>{"T3"});
  CHECK(plan.steps[0].take_out.empty());
  CHECK(find_temporary(plan, "T1") == nullptr);
}

TEST_CASE("what is raised with a bent stands in its plane and is not laid over it", "[raising]") {
  const Frame frame =
      solve_frame(default_plan(Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8))))
          .value();
  int posts = 0, rafters = 0;
  for (const Timber& timber : frame.timbers) {
    const bool here = raised_with_bent(timber, 2);
    CHECK((!here || stands_in_bent(timber, 2)));
    posts += here && timber.kind == TimberKind::kPost ? 1 : 0;
    rafters += here && timber.kind == TimberKind::kCommonRafter ? 1 : 0;
    CHECK_FALSE(stands_in_bent(timber, -1));
  }
  CHECK(posts == 2);
  CHECK(rafters == 0);
}
