// By what a pick goes up: hands, tipping up, what stands in the yard. Wanted and there stand in the fault.

#include <catch_amalgamated.hpp>

#include "book/book.h"
#include "book/field.h"
#include "frame/facts.h"
#include "frame/placing/solve_frame.h"
#include "raising/check.h"
#include "raising/holding.h"
#include "raising/lifting/hand_raise.h"
#include "raising/lifting/pick.h"
#include "words/raising_words.h"
#include "words/step_words.h"

using namespace bentbook;
using Catch::Approx;

namespace {

/// 24 × 36 ft, plate 10 ft, 9 in 12.
Frame barn() {
  return solve_frame(
             default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9))))
      .value();
}

std::vector<int> these(const Frame& frame, std::initializer_list<std::string_view> marks) {
  std::vector<int> found;
  for (const std::string_view mark : marks) {
    found.push_back(timber_by_mark(frame, std::string(mark)));
    REQUIRE(found.back() >= 0);
  }
  return found;
}

/// Posts, tie and king post of the second bent, with its braces.
std::vector<int> second_bent(const Frame& frame) {
  std::vector<int> found;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t)
    if (raised_with_bent(frame.timbers[t], 2)) found.push_back(static_cast<int>(t));
  return found;
}

bool has(const Pick& pick, PickNoteId id) {
  return std::any_of(pick.notes.begin(), pick.notes.end(), [&](const PickNote& n) { return n.id == id; });
}

RaisingPlan crew_of(int people) {
  RaisingPlan plan;
  plan.crew.people = people;
  return plan;
}

Crane crane(int feet, int pounds) {
  Crane c;
  c.present = true;
  c.chart = {{Length::feet(feet), Weight::pounds(pounds)}};
  return c;
}

}  // namespace

TEST_CASE("a light piece goes by hand whatever stands in the yard, without slings", "[pick]") {
  const Frame frame = barn();
  const std::vector<int> brace = these(frame, {"B-A1.1"});
  RaisingPlan plan = crew_of(2);
  for (const bool yard : {false, true}) {
    if (yard) plan.crane = crane(5, 100);  // too far, too weak, and no slings
    const Pick pick = solve_pick(frame, plan, brace);
    CHECK(pick.by == LiftBy::kHands);
    CHECK_FALSE(pick.refused());
    CHECK_FALSE(pick.rated);
    CHECK(pick.legs.empty());
    CHECK(pick.people == 1);
  }
}

TEST_CASE("a plate up high wants more than hands: poles and ropes, a gin pole, a telehandler or a crane", "[pick]") {
  const Frame frame = barn();
  const std::vector<int> plate = these(frame, {"L-A1"});
  RaisingPlan plan = crew_of(20);
  Pick pick = solve_pick(frame, plan, plate);
  const double weight = pick.weight_lb;
  REQUIRE(weight > 200);
  CHECK(pick.by == LiftBy::kHands);
  CHECK(pick.people == static_cast<int>(libm::ceil(weight / 50)));
  CHECK(has(pick, PickNoteId::kNoRoom));
  CHECK(pick.carries_lb == Approx(200));
  CHECK(pick.refused());
  plan.poles = true;
  pick = solve_pick(frame, plan, plate);
  CHECK(pick.by == LiftBy::kPoles);
  CHECK_FALSE(pick.refused());
  CHECK_FALSE(pick.rated);
  CHECK(pick.lines == 2);
  CHECK(pick.carries_lb == Approx(18 * 50));
  plan.gin_pole = {true, Weight::pounds(2000), ""};
  pick = solve_pick(frame, plan, plate);
  CHECK(pick.by == LiftBy::kPoles);  // nobody says who rated it
  plan.gin_pole.rated_by = "the lead";
  pick = solve_pick(frame, plan, plate);
  CHECK(pick.by == LiftBy::kGinPole);
  CHECK(pick.rated);
  CHECK(pick.margin_lb() == Approx(2000 - weight));
  plan.crane_two = crane(100, 1500);
  CHECK(solve_pick(frame, plan, plate).by == LiftBy::kCraneTwo);
  plan.crane = crane(100, 1500);
  CHECK(solve_pick(frame, plan, plate).by == LiftBy::kCrane);
  plan.telehandler = crane(100, 1200);
  pick = solve_pick(frame, plan, plate);
  CHECK(pick.by == LiftBy::kTelehandler);
  CHECK(pick.margin_lb() == Approx(1200 - weight));
  plan.telehandler.chart[0].capacity = Weight::pounds(100);
  CHECK(solve_pick(frame, plan, plate).by == LiftBy::kCrane);
}

TEST_CASE("of machines that do not carry it the one that comes nearest is told", "[pick]") {
  const Frame frame = barn();
  RaisingPlan plan = crew_of(6);
  plan.crane = crane(100, 50);
  plan.crane_two = crane(100, 90);
  plan.telehandler = crane(5, 5000);
  const Pick pick = solve_pick(frame, plan, these(frame, {"L-A1"}));
  CHECK(pick.by == LiftBy::kCraneTwo);
  CHECK(has(pick, PickNoteId::kOverCapacity));
  CHECK(pick.carries_lb == Approx(90));
}

TEST_CASE("a bent is tipped up where nothing in the yard picks it, with pikes and the people for it", "[pick]") {
  const Frame frame = barn();
  const std::vector<int> bent = second_bent(frame);
  REQUIRE(bent.size() >= 4);
  RaisingPlan plan = crew_of(20);
  Pick pick = solve_pick(frame, plan, bent);
  CHECK(pick.by == LiftBy::kTipUp);
  CHECK(has(pick, PickNoteId::kNoPikes));
  plan.poles = true;
  const HandRaise raise = raise_by_hand(frame, plan, pick_bodies(frame, plan), bent);
  pick = solve_pick(frame, plan, bent);
  CHECK(pick.people == raise.people);
  CHECK(pick.lines == 2);
  CHECK(pick.refused() == (raise.people > 18));
  plan.crew.people = raise.people + 2;
  CHECK_FALSE(solve_pick(frame, plan, bent).refused());
  plan.crew.people = raise.people + 1;
  pick = solve_pick(frame, plan, bent);
  CHECK(pick.refused());
  CHECK(has(pick, PickNoteId::kMorePeople));
  CHECK(pick.needed() == raise.people + 2);
  // With a crane it is picked, unless the lead says otherwise; and picked alone it is refused where nothing picks.
  plan.crane = crane(200, 20'000);
  plan.crew.people = 6;
  CHECK(solve_pick(frame, plan, bent).by == LiftBy::kCrane);
  plan.bents = BentsGoUp::kTipUp;
  pick = solve_pick(frame, plan, bent);
  CHECK(pick.by == LiftBy::kTipUp);
  CHECK(pick.legs.empty());
  CHECK(pick.refused());
  plan.bents = BentsGoUp::kPick;
  plan.crane.present = false;
  CHECK(has(solve_pick(frame, plan, bent), PickNoteId::kNoMachine));
}

TEST_CASE("what is put together lying down lies in the bent's plane: no plates, no ridge", "[pick]") {
  const Frame frame = barn();
  const std::vector<int> bent = second_bent(frame);
  std::vector<int> more = bent;
  for (const char* mark : {"L-A1", "L-E1"}) more.push_back(timber_by_mark(frame, mark));
  const auto ground = lay_on_ground(frame, more);
  REQUIRE(ground);
  CHECK(ground->timbers == bent);
  CHECK(libm::fabs(ground->down.y) == Approx(1));
  CHECK_FALSE(lay_on_ground(frame, these(frame, {"L-A1", "L-E1"})));
  CHECK_FALSE(lay_on_ground(frame, these(frame, {"P-A1", "L-A1", "L-E1"})));
  RaisingPlan plan = crew_of(40);
  plan.poles = true;
  CHECK(solve_pick(frame, plan, bent).by == LiftBy::kTipUp);
  CHECK(solve_pick(frame, plan, more).by != LiftBy::kTipUp);
}

TEST_CASE("a heavy post is walked up by fewer than carry it", "[pick]") {
  const Frame frame = barn();
  const std::vector<int> post = these(frame, {"P-A1"});
  RaisingPlan plan = crew_of(6);
  plan.crew.each = Weight::pounds(40);
  const Pick pick = solve_pick(frame, plan, post);
  REQUIRE(pick.weight_lb > 80);
  CHECK(pick.by == LiftBy::kTipUp);
  CHECK(pick.people < pick.weight_lb / 40);
  CHECK_FALSE(pick.refused());
}

TEST_CASE("the lead says by what a step goes up, whatever the yard has", "[pick]") {
  const Frame frame = barn();
  const std::vector<int> plate = these(frame, {"L-A1"}), brace = these(frame, {"B-A1.1"});
  RaisingPlan plan = crew_of(8);
  plan.crane = crane(100, 2000);
  plan.poles = true;
  const std::vector<PickBody> bodies = pick_bodies(frame, plan);
  CHECK(solve_pick(frame, plan, bodies, plate).by == LiftBy::kCrane);
  CHECK(solve_pick(frame, plan, bodies, plate, LiftBy::kPoles).by == LiftBy::kPoles);
  CHECK_FALSE(solve_pick(frame, plan, bodies, plate, LiftBy::kPoles).refused());
  CHECK(has(solve_pick(frame, plan, bodies, plate, LiftBy::kPoles, 2), PickNoteId::kMorePeople));
  CHECK(solve_pick(frame, plan, bodies, brace, LiftBy::kCrane).by == LiftBy::kCrane);
  CHECK(has(solve_pick(frame, plan, bodies, plate, LiftBy::kHands), PickNoteId::kNoRoom));
  CHECK(has(solve_pick(frame, plan, bodies, plate, LiftBy::kTipUp), PickNoteId::kNotTipped));
  CHECK(has(solve_pick(frame, plan, bodies, plate, LiftBy::kTelehandler), PickNoteId::kNoMachine));
}

namespace {

/// The second bent, then a plate, as a plan.
RaisingPlan bent_and_plate(const Frame& frame) {
  RaisingPlan plan;
  RaisingStep bent, plate;
  for (const int t : second_bent(frame)) bent.marks.push_back(frame.timbers[static_cast<std::size_t>(t)].mark);
  plate.marks = {"L-A1"};
  plan.steps = {bent, plate};
  return plan;
}

std::vector<OrderFault> pick_faults(const Frame& frame, const RaisingPlan& plan) {
  Blocking blocking(frame);
  std::vector<OrderFault> found;
  for (const OrderFault& fault : check_order(frame, plan, *make_judge(frame, plan), blocking).faults)
    if (fault.id == OrderFaultId::kCantPick) found.push_back(fault);
  return found;
}

}  // namespace

TEST_CASE("two people and no crane: a frame of 24 x 36 ft has faults, with the people wanted and there", "[pick]") {
  const Frame frame = barn();
  RaisingPlan plan = bent_and_plate(frame);
  plan.crew.people = 2;
  const std::vector<OrderFault> faults = pick_faults(frame, plan);
  REQUIRE(faults.size() == 3);
  CHECK(faults[0].note == PickNoteId::kMorePeople);
  CHECK(faults[0].value > 10);
  CHECK(faults[0].value2 == 2);
  CHECK(faults[1].note == PickNoteId::kNoPikes);
  CHECK(faults[2].note == PickNoteId::kNoRoom);
  CHECK(order_fault_text(faults[0], {}).find(" people needed, 2 on hand") != std::string::npos);
}

TEST_CASE("until crew or gear is entered no pick is judged; a crew that is what the app begins with is one", "[pick]") {
  const Frame frame = barn();
  RaisingPlan plan = bent_and_plate(frame);
  CHECK(pick_faults(frame, plan).empty());
  const Pick bent = pick_of_step(frame, plan, pick_bodies(frame, plan), plan.steps[0]);
  CHECK(bent.open);
  CHECK(bent.by == LiftBy::kTipUp);
  CHECK_FALSE(solve_pick(frame, plan, these(frame, {"B-A1.1"})).open);
  Book book = new_book("Barn", Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  CHECK_FALSE(lifting_entered(book.raising));
  book = with_field(std::move(book), "raising.crew.people", std::int64_t{6}).value();
  CHECK(lifting_entered(book.raising));
  plan.crew = book.raising.crew;
  CHECK_FALSE(pick_faults(frame, plan).empty());
  plan.crew = {};
  plan.poles = true;
  CHECK(pick_faults(frame, plan).size() == 2);  // six are too few, of whom two stay on the ropes
}

TEST_CASE("what hands set up high is said to want a deck or staging, and what they cannot is not given to them",
          "[pick]") {
  const Frame frame = barn();
  RaisingPlan plan;  // neither crew nor gear entered
  Pick pick = solve_pick(frame, plan, these(frame, {"L-A1"}));
  CHECK(pick.open);
  CHECK(pick.people == 0);
  CHECK(pick.notes.empty());
  CHECK(goes_up_text(pick, Voice{}) == "A machine, or poles and ropes");
  const std::vector<int> rafter = these(frame, {"C-A2"});
  pick = solve_pick(frame, plan, rafter);
  CHECK(pick.by == LiftBy::kHands);
  REQUIRE(has(pick, PickNoteId::kUpHigh));
  CHECK(pick.notes[0].value ==
        Approx(facts_of(frame.timbers[static_cast<std::size_t>(rafter[0])]).cg_world.z).margin(1));
  CHECK_FALSE(pick.refused());
  // A girt is set from the ground.
  CHECK_FALSE(has(solve_pick(frame, plan, these(frame, {"G-A1.1"})), PickNoteId::kUpHigh));
}
