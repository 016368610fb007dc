#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"
#include "model/book_model.h"
#include "plans.h"

using namespace bentbook;

namespace {

std::string a_mark(Random& random, const Frame& frame) {
  return frame.timbers[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(frame.timbers.size()) - 1))]
      .mark;
}

HandTimber a_hand_timber(Random& random) {
  HandTimber hand;
  hand.mark = "X-" + std::to_string(random.whole(1, 4));
  hand.length = random_inches(random, 20, 140, 8);
  hand.placed = chance(random, 60);
  hand.origin[0] = random_inches(random, -100, 100, 1);
  hand.origin[1] = random_inches(random, 0, 200, 1);
  hand.origin[2] = random_inches(random, 0, 120, 1);
  hand.turn = Angle::degrees(random.whole(0, 90));
  return hand;
}

/// One edit of the kinds that a user makes, to one timber or to the whole.
void edit(Random& random, FramePlan& plan, const Frame& frame) {
  Override* own = nullptr;
  const std::string mark = a_mark(random, frame);
  for (Override& o : plan.overrides)
    if (o.mark == mark) own = &o;
  if (own == nullptr) {
    plan.overrides.push_back({});
    own = &plan.overrides.back();
    own->mark = mark;
  }
  switch (random.whole(0, 11)) {
    case 0:
      own->removed = !own->removed;
      break;
    case 1:
      own->has_section = true;
      own->section = {random_inches(random, 4, 10, 1), random_inches(random, 4, 12, 1)};
      break;
    case 2:
      own->has_species = true;
      break;
    case 3:
      own->has_joint_a = true;
      own->joint_a = random_end_joint(random, default_joint(Meeting::kBraceEnd));
      break;
    case 4:
      own->defects.push_back({DefectKind::kKnot, Face::kTop, Length::inches(10), random_inches(random, 20, 60, 1)});
      break;
    case 5:
      own->pier_level = random_inches(random, -6, 2, 8);
      break;
    case 6:
      plan.added.push_back(a_hand_timber(random));
      break;
    case 7:
      if (!plan.added.empty()) plan.added.erase(plan.added.begin());
      break;
    case 8:
      plan.overrides.clear();
      break;
    case 9:
      plan.span = random_inches(random, 12 * 12, 30 * 12, 4);
      break;
    case 10:
      insert_bay(plan, static_cast<int>(random.whole(-1, static_cast<std::int64_t>(plan.bays.size()) - 1)),
                 random_inches(random, 84, 160, 4));
      break;
    default:
      own->has_wood = true;
      own->wood.actual = {random_inches(random, 6, 9, 8), random_inches(random, 6, 11, 8)};
      own->wood.top_is_reference = chance(random, 50);
  }
}

/// Walks of edits; how many.
int edits_agree(Random& random, FramePlan (*draw)(Random&), int walks) {
  int edits = 0;
  for (int i = 0; i < walks; ++i) {
    FramePlan plan = draw(random);
    auto frame = solve_frame(plan);
    for (int step = 0; step < 8 && frame && !frame->timbers.empty(); ++step) {
      edit(random, plan, *frame);
      auto anew = solve_frame(plan), again = solve_frame_again(plan, *frame);
      REQUIRE(anew.has_value() == again.has_value());
      if (anew && !(*anew == *again)) {
        INFO("plan " << i << " step " << step);
        REQUIRE(anew->findings == again->findings);
        REQUIRE(anew->joints == again->joints);
        for (std::size_t t = 0; t < anew->timbers.size(); ++t)
          if (!(anew->timbers[t] == again->timbers[t])) FAIL(anew->timbers[t].mark);
        FAIL("contacts");
      }
      frame = std::move(again);
      ++edits;
    }
  }
  return edits;
}

}  // namespace

TEST_CASE("after any edit what is solved again is what is solved anew", "[frame][property]") {
  Random random(1964);
  CHECK(edits_agree(random, random_plan, property_cases() / 2000) > property_cases() / 500);
}

TEST_CASE("after any edit of a hip-ended frame too", "[frame][property][hipframe]") {
  Random random(2026);
  CHECK(edits_agree(random, random_hip_plan, property_cases() / 5000) > property_cases() / 5000);
}
