// Steps of work from the timber, the lead's changes, what the plan changes under finished work, the shop as a whole.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <numeric>
#include <set>

#include "book/book.h"
#include "frame/facts.h"
#include "frame/joinery.h"
#include "frame/placing/solve_frame.h"
#include "frame/sheet/face_marks.h"
#include "histories.h"
#include "plans.h"
#include "shop/saw_order.h"
#include "shop/step_rules.h"
#include "shop/workplace.h"
#include "words/face_words.h"
#include "words/frame_words.h"
#include "words/shop_words.h"
#include "words/steps/step_lines.h"

using namespace bentbook;

namespace {

Saw swinging_saw() {
  Saw saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  return saw;
}

Frame demo_frame() {
  auto frame = solve_frame(demo_book().frame);
  REQUIRE(frame);
  return *std::move(frame);
}

std::vector<WorkStep> steps_of(const Frame& frame, std::string_view mark) {
  const int timber = timber_by_mark(frame, mark);
  REQUIRE(timber >= 0);
  return work_steps(frame, solve_sheet(frame, timber, swinging_saw()));
}

std::vector<std::string> ids(const std::vector<WorkStep>& steps) {
  std::vector<std::string> out;
  out.reserve(steps.size());
  for (const WorkStep& step : steps) out.push_back(step.id);
  return out;
}

const WorkStep& step_of(const std::vector<WorkStep>& steps, std::string_view id) {
  const auto it = std::find_if(steps.begin(), steps.end(), [&](const WorkStep& s) { return s.id == id; });
  REQUIRE(it != steps.end());
  return *it;
}

double number_of(const WorkStep& step, StepNumberName name) {
  for (const StepNumber& n : step.numbers)
    if (n.name == name) return n.value;
  FAIL(step.id << " has no such number");
  return 0;
}

Event rule(EventAction action, std::string step, std::string value = {}, std::string note = {}) {
  Event e;
  e.action = action;
  e.timber = "girt";
  e.step = std::move(step);
  e.value = std::move(value);
  e.note = std::move(note);
  return e;
}

std::vector<WorkStep> girt_with(const Frame& frame, std::initializer_list<Event> events) {
  std::vector<Rule> rules;
  for (const Event& e : events) {
    REQUIRE(check_rule(e));
    take_rule(rules, e);
  }
  return with_rules(steps_of(frame, "G-A1.1"), TimberKind::kGirt, rules);
}

Log finished(const std::vector<WorkStep>& steps, std::string_view mark, Tick tick) {
  Log log{"b1", {}};
  for (Event e : tick_events(mark, steps, progress_of(steps, nullptr), tick)) {
    const auto next = next_event(log, 1, std::move(e));
    REQUIRE(next);
    add_event(log, *next);
  }
  return log;
}

}  // namespace

TEST_CASE("a knife-plate end is worked in the trade's order", "[shop]") {
  // Common practice: the order written down in the trade notes.
  const std::vector<WorkStep> steps = steps_of(demo_frame(), "G-A1.1");
  std::vector<std::string> at_a;
  for (const WorkStep& step : steps)
    if (step.end == End::kA) at_a.push_back(step.id);
  CHECK(at_a == std::vector<std::string>{"end_cut/a", "slot/a", "relief/a", "seat_plate/a", "witness/a", "jig/a",
                                         "spot_plate/a", "drill_plate/a", "return_plate/a", "drill_through/a"});
  CHECK(steps.front().id == "layout");
  CHECK(steps[steps.size() - 2].id == "label");
  CHECK(steps.back().id == "finish");
  CHECK(step_of(steps, "slot/a").place == Workplace::kSlotter);
  CHECK(step_of(steps, "drill_plate/a").place == Workplace::kDrillPress);
  // Holes 1/16 over in steel, tight in wood: common practice.
  CHECK(number_of(step_of(steps, "drill_plate/a"), StepNumberName::kDiameter) -
            number_of(step_of(steps, "drill_through/a"), StepNumberName::kDiameter) ==
        1.0 / 16);
}

TEST_CASE("a rafter: tail, peak, pattern check, bird's mouth", "[shop]") {
  const std::vector<WorkStep> steps = steps_of(demo_frame(), "C-A1");
  CHECK(ids(steps) == std::vector<std::string>{"layout", "tail/a", "peak/b", "pattern_check",
                                               "birds_mouth/rafter_plate.1", "birds_mouth/rafter_plate.2", "label",
                                               "finish"});
  // 9 in 12: the plumb cut is atan(9/12) off square, the seat its complement (Griffith, Carpentry, 1916).
  CHECK(std::abs(number_of(step_of(steps, "peak/b"), StepNumberName::kTable)) == Catch::Approx(36.8699).margin(1e-4));
  const WorkStep &seat = step_of(steps, "birds_mouth/rafter_plate.1"),
                 &plumb = step_of(steps, "birds_mouth/rafter_plate.2");
  CHECK(seat.part == StepPart::kSeat);
  CHECK(plumb.part == StepPart::kPlumb);
  REQUIRE((seat.setup && plumb.setup));
  CHECK(std::abs(seat.setup->table) == 5313);
  CHECK(std::abs(plumb.setup->table) == 3687);
}

TEST_CASE("every step has its place, its tick and, at a blade, its cautions; ids are unlike", "[shop]") {
  const Frame frame = demo_frame();
  for (const TimberWork& work : shop_work(frame, {}, swinging_saw())) {
    std::set<std::string> seen;
    for (const WorkStep& step : work.steps) {
      INFO(frame.timbers[static_cast<std::size_t>(work.timber)].mark << " " << step.id);
      CHECK(seen.insert(step.id).second);
      CHECK(step.id.size() <= kLongestStep);
      CHECK(numbers_text(step.numbers).size() <= kLongestValue);
      if (step.place == Workplace::kSaw) {
        CHECK(step.cautions == (kKickback | kEyesEars | kCords | kWorkHeld));
        const bool gauged =
            step.part == StepPart::kCheeks || step.part == StepPart::kEdges || step.part == StepPart::kFloor;
        CHECK(step.setup.has_value() != gauged);
      }
      if (step.work == StepWork::kHole || step.work == StepWork::kPegHole) CHECK(step.cautions == kAtEveryTool);
      if (step.work == StepWork::kRelief) CHECK((step.cautions & kKickback) == 0);
      if (step.place == Workplace::kDrillPress) CHECK((step.cautions & kWorkHeld) != 0);
      const auto again = read_numbers(numbers_text(step.numbers));
      CHECK(numbers_text(again) == numbers_text(step.numbers));
    }
    for (const TickCount& tick : work.progress.ticks) CHECK(tick.done == 0);
    CHECK(work.progress.next == 0);
  }
}

TEST_CASE("every cut and feature of every timber belongs to a step", "[shop]") {
  const Frame frame = demo_frame();
  for (const TimberWork& work : shop_work(frame, {}, swinging_saw())) {
    const Timber& timber = frame.timbers[static_cast<std::size_t>(work.timber)];
    std::set<int> cuts, features, joints;
    for (const WorkStep& step : work.steps) {
      if (step.index < 0) continue;
      (step.on == WorkOn::kEndCut ? cuts : features).insert(step.index);
      if (step.on == WorkOn::kFeature) joints.insert(timber.features[static_cast<std::size_t>(step.index)].joint);
    }
    CHECK(cuts.size() == timber.cuts.size());
    for (int i = 0; i < static_cast<int>(timber.features.size()); ++i) {
      const Feature& f = timber.features[static_cast<std::size_t>(i)];
      INFO(timber.mark << " feature " << i);
      CHECK((features.count(i) == 1 || (f.kind == FeatureKind::kHole && joints.count(f.joint) == 1)));
    }
  }
}

TEST_CASE("the lead adds, drops, moves, renames and asks", "[shop]") {
  const Frame frame = demo_frame();
  const auto has = [](const std::vector<WorkStep>& steps, std::string_view id) {
    return std::any_of(steps.begin(), steps.end(), [&](const WorkStep& s) { return s.id == id; });
  };
  auto steps = girt_with(frame, {rule(EventAction::kStepDropped, "finish")});
  CHECK(!has(steps, "finish"));
  steps = girt_with(frame, {rule(EventAction::kStepDropped, "finish"), rule(EventAction::kStepRestored, "finish")});
  CHECK(has(steps, "finish"));

  steps = girt_with(frame, {rule(EventAction::kStepAdded, "own.1", "fitted bench slot", "Blow the slot out")});
  CHECK(step_of(steps, "own.1").name == "Blow the slot out");
  CHECK(step_of(steps, "own.1").tick == Tick::kFitted);
  const auto at = [&](std::string_view id) {
    return std::find_if(steps.begin(), steps.end(), [&](const WorkStep& s) { return s.id == id; }) - steps.begin();
  };
  CHECK(at("own.1") == at("slot/b") + 1);

  steps = girt_with(frame, {rule(EventAction::kStepMoved, "label", "layout")});
  CHECK(at("label") == at("layout") + 1);
  steps = girt_with(frame, {rule(EventAction::kStepMoved, "label", "mortise")});  // a girt has none
  CHECK(ids(steps) == ids(steps_of(frame, "G-A1.1")));

  steps = girt_with(frame, {rule(EventAction::kStepRenamed, "slot", "", "Plunge it")});
  CHECK(step_of(steps, "slot/a").name == "Plunge it");
  CHECK(step_of(steps, "slot/b").name == "Plunge it");

  steps = girt_with(frame, {rule(EventAction::kStepAsks, "slot", std::to_string(Length::inches(1, 16).count))});
  CHECK(step_of(steps, "slot/a").tolerance == Length::inches(1, 16));
  CHECK(step_of(steps, "slot/a").wanted.in() == number_of(step_of(steps, "slot/a"), StepNumberName::kDepth));
  steps = girt_with(frame, {rule(EventAction::kStepAsks, "slot", "12700000"), rule(EventAction::kStepAsks, "slot")});
  CHECK(!step_of(steps, "slot/a").tolerance);

  // Other kinds keep theirs.
  std::vector<Rule> rules;
  take_rule(rules, rule(EventAction::kStepDropped, "finish"));
  CHECK(has(with_rules(steps_of(frame, "T-1"), TimberKind::kTie, rules), "finish"));
  CHECK(!check_rule(rule(EventAction::kStepAdded, "slot", "fitted bench -", "x")));
  CHECK(!check_rule(rule(EventAction::kStepAdded, "own.1", "fitted bench", "x")));
  CHECK(!check_rule(rule(EventAction::kStepAsks, "slot", "a lot")));
}

TEST_CASE("a plan that changes under finished work is told with the old and the new number", "[shop]") {
  Book book = demo_book();
  const auto before = solve_frame(book.frame);
  REQUIRE(before);
  const auto steps = steps_of(*before, "G-A1.1");
  const ShopState state = fold(finished(steps, "G-A1.1", Tick::kCut));
  const TimberState* timber = state.find("G-A1.1");
  REQUIRE(timber != nullptr);
  TimberProgress progress = progress_of(steps, timber);
  CHECK(progress.has(Tick::kCut));
  CHECK(!progress.has(Tick::kJoined));
  CHECK(progress.flags.empty());

  book.frame.bays[0].width = book.frame.bays[0].width + Length::inches(3);
  const auto after = solve_frame(book.frame);
  REQUIRE(after);
  const auto changed = steps_of(*after, "G-A1.1");
  CHECK(ids(changed) == ids(steps));  // the ids stay
  progress = progress_of(changed, timber);
  CHECK(progress.has(Tick::kCut));  // nothing is reset
  REQUIRE(progress.flags.size() == 2);
  CHECK(progress.flags[0].step == "layout");
  CHECK(progress.flags[1].step == "end_cut/b");
  CHECK(progress.flags[1].number == StepNumberName::kStop);
  CHECK(*progress.flags[1].now - *progress.flags[1].was == Catch::Approx(3).margin(1e-3));

  // A finished step that the plan no longer has.
  const auto gone = progress_of(steps_of(*after, "T-1"), timber).flags;
  CHECK(std::any_of(gone.begin(), gone.end(), [](const StepFlag& f) { return f.gone; }) == false);
  std::vector<WorkStep> fewer = changed;
  fewer.erase(fewer.begin() + 1);
  const auto flags = flags_of(fewer, timber);
  CHECK(std::count_if(flags.begin(), flags.end(), [](const StepFlag& f) { return f.gone; }) == 1);
}

TEST_CASE("settings of the saw in the order with the fewest changes", "[shop]") {
  // Against every order there is.
  Random random(420);
  for (int n = 0; n < 300; ++n) {
    std::set<SawSetup> some;
    const auto size = static_cast<std::size_t>(random.whole(1, 7));
    while (some.size() < size) some.insert({random.whole(0, 2), random.whole(0, 1), random.whole(0, 2)});
    const std::vector<SawSetup> setups(some.begin(), some.end());
    const auto changes = [&](const std::vector<int>& order) {
      int sum = 0;
      for (std::size_t i = 1; i < order.size(); ++i)
        sum +=
            changes_between(setups[static_cast<std::size_t>(order[i - 1])], setups[static_cast<std::size_t>(order[i])]);
      return sum;
    };
    std::vector<int> all(setups.size());
    std::iota(all.begin(), all.end(), 0);
    int fewest = changes(all);
    while (std::next_permutation(all.begin(), all.end())) fewest = std::min(fewest, changes(all));
    std::vector<int> order = order_of_setups(setups);
    CHECK(changes(order) == fewest);
    std::sort(order.begin(), order.end());
    CHECK(order == all);  // next_permutation ends where it began
  }
}

TEST_CASE("many settings: each once, and never more changes than in sorted order", "[shop]") {
  Random random(421);
  for (const std::size_t size : {13u, 40u, 120u, 300u}) {
    std::set<SawSetup> some;
    while (some.size() < size) some.insert({random.whole(0, 9), random.whole(0, 5), random.whole(0, 20)});
    const std::vector<SawSetup> setups(some.begin(), some.end());
    std::vector<int> order = order_of_setups(setups);
    int sum = 0, sorted = 0;
    for (std::size_t i = 1; i < setups.size(); ++i) {
      sum +=
          changes_between(setups[static_cast<std::size_t>(order[i - 1])], setups[static_cast<std::size_t>(order[i])]);
      sorted += changes_between(setups[i - 1], setups[i]);
    }
    CHECK(sum <= sorted);
    std::sort(order.begin(), order.end());
    for (std::size_t i = 0; i < order.size(); ++i) CHECK(order[i] == static_cast<int>(i));
  }
}

TEST_CASE("the shop: what is left by bent and by workplace, what waits for the saw", "[shop]") {
  const Frame frame = demo_frame();
  const auto steps = steps_of(frame, "G-A1.1");
  Log log = finished(steps, "G-A1.1", Tick::kCut);
  Event hold;
  hold.action = EventAction::kHeld;
  hold.timber = "T-1";
  hold.note = "split";
  add_event(log, *next_event(log, 1, hold));
  const auto work = shop_work(frame, fold(log), swinging_saw());
  const ShopCount all = count_all(work);
  CHECK(all.timbers == static_cast<int>(frame.timbers.size()));
  CHECK(all.ticked[0] == 1);
  CHECK(all.held == 1);
  int timbers = 0, left = 0;
  for (const BentCount& bent : count_by_bent(frame, work)) timbers += bent.count.timbers;
  CHECK(timbers == all.timbers);
  int next = 0;
  for (const PlaceCount& place : count_by_workplace(work)) {
    next += place.next;
    left += place.steps;
  }
  CHECK(next == all.timbers);
  CHECK(left == all.steps - all.steps_done);

  std::size_t waiting = 0, expected = 0;
  for (const SawGroup& group : waiting_for_saw(work)) {
    for (const WaitingCut& cut : group.cuts) {
      const TimberWork& one = work[static_cast<std::size_t>(cut.work)];
      const auto& setup = one.steps[static_cast<std::size_t>(cut.step)].setup;
      CHECK(setup.has_value() != group.along);
      if (setup) CHECK(*setup == group.setup);
      CHECK(!one.progress.done[static_cast<std::size_t>(cut.step)]);
    }
    waiting += group.cuts.size();
  }
  for (const TimberWork& one : work)
    for (std::size_t i = 0; i < one.steps.size(); ++i)
      if (!one.progress.held && !one.progress.done[i] && one.steps[i].place == Workplace::kSaw) ++expected;
  CHECK(waiting == expected);
}

// ── One setting, one tick ─────────────────────────────────────────────────────────────────────────────────────────

namespace {

ShopState told(std::initializer_list<std::pair<const char*, const char*>> steps, const char* mark) {
  Log log{"b1", {}};
  for (const auto& [step, value] : steps) {
    Event e;
    e.timber = mark;
    e.step = step;
    e.value = value;
    const auto next = next_event(log, 1, std::move(e));
    REQUIRE(next);
    add_event(log, *next);
  }
  return fold(log);
}

bool is_done(const std::vector<WorkStep>& steps, const ShopState& state, const char* mark, std::string_view id) {
  const TimberProgress progress = progress_of(steps, state.find(mark));
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (steps[i].id == id) return progress.done[i];
  FAIL("no step " << id);
  return false;
}

}  // namespace

TEST_CASE("a brace's tenon: each shoulder, its nose and its cheeks are steps of their own", "[shop]") {
  const auto steps = steps_of(demo_frame(), "B-A1.1");
  std::vector<StepPart> parts;
  std::set<std::pair<int, SawSetup>> settings;
  for (const WorkStep& step : steps) {
    if (step.of != "tenon/a") continue;
    parts.push_back(step.part);
    CHECK(step.was == std::vector<std::string>{"tenon/a"});
    REQUIRE(step.face_up());
    if (step.setup) CHECK(settings.insert({static_cast<int>(*step.face_up()), *step.setup}).second);
  }
  CHECK(parts == std::vector<StepPart>{StepPart::kShoulder, StepPart::kShoulder, StepPart::kNose, StepPart::kCheeks});
  // A tick clears one cut.
  const ShopState state = told({{"tenon/a.1", "face=2.0000"}}, "B-A1.1");
  CHECK(is_done(steps, state, "B-A1.1", "tenon/a.1"));
  CHECK(!is_done(steps, state, "B-A1.1", "tenon/a.2"));
  CHECK(!is_done(steps, state, "B-A1.1", "tenon/a.3"));
  const WorkStep& cheeks = step_of(steps, "tenon/a.4");
  CHECK(number_of(cheeks, StepNumberName::kFar) - number_of(cheeks, StepNumberName::kFence) ==
        Catch::Approx(number_of(cheeks, StepNumberName::kAcross)));
}

TEST_CASE("a saw that runs along the timber is told what stops it and how deep it goes", "[shop]") {
  const auto steps = steps_of(demo_frame(), "B-A1.1");
  std::vector<StepNumber> ends;
  for (const StepNumber& n : step_of(steps, "tenon/a.4").numbers)
    if (n.name == StepNumberName::kShoulder) ends.push_back(n);
  // The shoulder of a brace at 45° in 6 in of wood: as far along as the wood is deep, from one edge to the other.
  const StepNumber stop =
      *std::find_if(step_of(steps, "tenon/a.1").numbers.begin(), step_of(steps, "tenon/a.1").numbers.end(),
                    [](const StepNumber& n) { return n.name == StepNumberName::kStop; });
  REQUIRE(ends.size() == 2);
  CHECK((ends[0].from == Face::kTop && ends[1].from == Face::kBottom));
  CHECK(std::abs(ends[0].value - ends[1].value) == Catch::Approx(6));
  CHECK(std::count_if(ends.begin(), ends.end(), [&](const StepNumber& n) {
          return n.from == stop.from && std::abs(n.value - stop.value) < 1e-9;
        }) == 1);
  CHECK(number_of(step_of(steps, "tenon/a.4"), StepNumberName::kReach) == Catch::Approx(6));
  // A scarf's floor ends where its shoulder is cut.
  const auto plate = steps_of(demo_frame(), "L-A1");
  CHECK(number_of(step_of(plate, "scarf/b.2"), StepNumberName::kShoulder) ==
        Catch::Approx(number_of(step_of(plate, "scarf/b.1"), StepNumberName::kStop)));

  Random random(416);
  int along = 0;
  for (int n = 0; n < 12; ++n) {
    const auto frame = solve_frame(random_plan(random));
    if (!frame) continue;
    for (const TimberWork& work : shop_work(*frame, {}, swinging_saw()))
      for (const WorkStep& step : work.steps) {
        if (step.part != StepPart::kCheeks && step.part != StepPart::kEdges && step.part != StepPart::kFloor) continue;
        ++along;
        INFO(frame->timbers[static_cast<std::size_t>(work.timber)].mark << " " << step.id);
        int stops = 0;
        for (const StepNumber& number : step.numbers)
          stops += number.name == StepNumberName::kShoulder || number.name == StepNumberName::kFrom ? 1 : 0;
        CHECK(stops > 0);
        CHECK(number_of(step, StepNumberName::kReach) > 0);
      }
  }
  CHECK(along > 100);
}

TEST_CASE("bores of one bit from one face to one depth are one step, with every station", "[shop]") {
  const Frame frame = demo_frame();
  for (const TimberWork& work : shop_work(frame, {}, swinging_saw())) {
    const Timber& timber = frame.timbers[static_cast<std::size_t>(work.timber)];
    int holes = 0, stations = 0;
    for (const Feature& f : timber.features) holes += f.kind == FeatureKind::kHole && f.use == HoleUse::kPeg ? 1 : 0;
    std::set<std::string> settings;
    for (const WorkStep& step : work.steps) {
      if (step.work != StepWork::kPegHole) continue;
      std::string setting;
      for (const StepNumber& n : step.numbers) {
        stations += n.name == StepNumberName::kAt ? 1 : 0;
        if (n.name != StepNumberName::kAt && n.name != StepNumberName::kOff)
          setting += numbers_text(std::vector<StepNumber>{n}) + " ";
        if (n.name == StepNumberName::kOff) CHECK(is_reference(timber.wood, n.from.value_or(Face::kBottom)));
      }
      CHECK(settings.insert(setting).second);
    }
    CHECK(stations == holes);
  }
}

// As a log said it before every setting was a step.
TEST_CASE("a log from before reads as it did: one event counts for all settings of its step", "[shop]") {
  const Frame frame = demo_frame();
  const auto steps = steps_of(frame, "B-A1.1");
  const ShopState state = told({{"layout", "overall_in=46.6690"},
                                {"tenon/a",
                                 "table_deg=45.0000 tilt_deg=0.0000 stop_in=2.1213 depth_in=1.2500 "
                                 "across_in=1.5000 fence_in=1.2500"},
                                {"peg_hole/a", "diameter_in=0.7500 from_in=3.6213 depth_in=4.0000 drawbore_in=0.1250"}},
                               "B-A1.1");
  for (const WorkStep& step : steps)
    if (step.of == "tenon/a") CHECK(is_done(steps, state, "B-A1.1", step.id));
  CHECK(!is_done(steps, state, "B-A1.1", "tenon/b.1"));
  // The bores of both ends are one step now: it is done when both were.
  CHECK(!is_done(steps, state, "B-A1.1", "peg_hole/from_face2"));
  const ShopState both = told({{"peg_hole/a", "diameter_in=0.7500"}, {"peg_hole/b", ""}}, "B-A1.1");
  CHECK(is_done(steps, both, "B-A1.1", "peg_hole/from_face2"));
  for (const StepFlag& flag : flags_of(steps, state.find("B-A1.1"))) CHECK(flag.step == "layout");

  // A number that none of its steps has is told; one that was right of any is not.
  const ShopState other = told({{"tenon/a", "table_deg=40.0000 tilt_deg=-45.0000 fence_in=1.2500"}}, "B-A1.1");
  const auto flags = flags_of(steps, other.find("B-A1.1"));
  REQUIRE(flags.size() == 1);
  CHECK(flags[0].number == StepNumberName::kTable);

  // What finished it can be taken back by its own id.
  const auto finishes = finishes_of(step_of(steps, "tenon/a.2"), state.find("B-A1.1"));
  REQUIRE(finishes.size() == 1);
  CHECK(finishes[0].step == "tenon/a");
}

TEST_CASE("a gauge that changes its face under finished work is told", "[shop]") {
  const auto steps = steps_of(demo_frame(), "G-A1.1");
  std::string value = numbers_text(step_of(steps, "slot/a").numbers);
  const std::size_t at = value.find("@2");
  REQUIRE(at != std::string::npos);
  value[at + 1] = '4';
  const ShopState state = told({{"slot/a", value.c_str()}}, "G-A1.1");
  const auto flags = flags_of(steps, state.find("G-A1.1"));
  REQUIRE(flags.size() == 1);
  CHECK(flags[0].number == StepNumberName::kFence);
}

TEST_CASE("what is kept of many bores fits an event, stations before offsets", "[shop]") {
  std::vector<StepNumber> numbers{{StepNumberName::kDiameter, 1}};
  for (int i = 0; i < 30; ++i) {
    numbers.push_back({StepNumberName::kAt, 100.0 + i});
    numbers.push_back({StepNumberName::kOff, 3.75, Face::kNear});
  }
  numbers.push_back({StepNumberName::kFaceUp, 2});
  const std::string text = numbers_text(numbers);
  CHECK(text.size() <= kLongestValue);
  CHECK(text.starts_with("face=2.0000 diameter_in=1.0000 at_in=100.0000"));
  CHECK(text.find("off_in") == std::string::npos);
}

TEST_CASE("every stop of an end cut is a station on the timber, at the edge where there is wood", "[shop]") {
  // A brace's shoulder cut runs from its tip to the far edge: the near edge has no wood to stop at.
  const auto frame =
      solve_frame(default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9))));
  REQUIRE(frame);
  Saw saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  int stops = 0;
  for (int i = 0; i < static_cast<int>(frame->timbers.size()); ++i) {
    const Timber& timber = frame->timbers[static_cast<std::size_t>(i)];
    for (const WorkStep& step : work_steps(*frame, solve_sheet(*frame, i, saw))) {
      if (step.on != WorkOn::kEndCut) continue;
      for (const StepNumber& n : step.numbers) {
        if (n.name != StepNumberName::kStop) continue;
        CAPTURE(timber.mark, step.id, n.value);
        CHECK(n.value >= -1e-6);
        CHECK(n.value <= timber.length + 1e-6);
        ++stops;
      }
    }
  }
  CHECK(stops > 100);
}

TEST_CASE("what a step is set to has each of its numbers, and none twice", "[shop][words]") {
  const Frame frame = demo_frame();
  const Saw saw = swinging_saw();
  const Voice voice;
  std::set<StepLineKind> kinds;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) {
    const Sheet sheet = solve_sheet(frame, static_cast<int>(t), saw);
    for (const WorkStep& step : work_steps(frame, sheet)) {
      std::string all;
      std::set<std::pair<StepNumberName, int>> numbers;
      const std::vector<StepLine> lines = step_lines(step, sheet, saw, voice);
      for (const StepLine& line : lines) {
        kinds.insert(line.kind);
        all += line.name + " " + line.value + " " + line.note + "|";
        if (line.kind == StepLineKind::kLarge || line.kind == StepLineKind::kNumber)
          CHECK(numbers.insert({line.number, line.time}).second);
      }
      INFO(frame.timbers[t].mark << " " << step.id << ": " << all);
      CHECK(std::count_if(lines.begin(), lines.end(), [](const StepLine& line) {
              return line.kind == StepLineKind::kLarge && !is_degrees(line.number);
            }) <= 1);
      const bool from_more = std::any_of(step.saw_cuts.begin(), step.saw_cuts.end(), [&](int cut) {
        return sheet.saw_cuts[static_cast<std::size_t>(cut)].pass.faces != Faces::kOne;
      });
      for (const StepNumber& n : step.numbers) {
        if (n.name == StepNumberName::kFaceUp || n.name == StepNumberName::kTable || n.name == StepNumberName::kTilt)
          continue;
        const std::string name(step_number_text(n.name, voice.language));
        // How far the blade must reach stands in the sentence about the faces that it goes in from.
        if (n.name == StepNumberName::kReach)
          CHECK((all.find(name) == std::string::npos) == from_more);
        else if (!is_degrees(n.name))
          CHECK(all.find(step_value_text(n, voice)) != std::string::npos);
        else
          CHECK((all.find(name) != std::string::npos) == (std::abs(n.value) >= kSquareWithin));
      }
    }
  }
  CHECK(kinds.size() >= 4);
}

TEST_CASE("a hand saw neither kicks nor has a cord: no step of its says so", "[shop][steps]") {
  const auto frame = solve_frame(demo_book().frame);
  REQUIRE(frame);
  Saw hand = swinging_saw();
  hand.kind = SawKind::kHand;
  int sawn = 0;
  for (const WorkStep& step : work_steps(*frame, solve_sheet(*frame, 0, hand))) {
    if (step.place != Workplace::kSaw) continue;
    ++sawn;
    CHECK(step.cautions == (kEyesEars | kWorkHeld));
  }
  CHECK(sawn > 1);
  for (const WorkStep& step : work_steps(*frame, solve_sheet(*frame, 0, swinging_saw())))
    if (step.place == Workplace::kSaw) CHECK((step.cautions & kKickback) != 0);
}

TEST_CASE("what goes right through the wood has no depth to be set: it is said so, and only of that", "[shop][words]") {
  const Frame frame = demo_frame();
  int through = 0, stopped = 0;
  for (const TimberWork& work : shop_work(frame, {}, swinging_saw())) {
    const Timber& timber = frame.timbers[static_cast<std::size_t>(work.timber)];
    for (const WorkStep& step : work.steps) {
      if (step.work != StepWork::kPegHole && step.work != StepWork::kMortise) continue;
      const StepNumber depth = *std::find_if(step.numbers.begin(), step.numbers.end(),
                                             [](const StepNumber& n) { return n.name == StepNumberName::kDepth; });
      REQUIRE(depth.from);
      const bool level = *depth.from == Face::kTop || *depth.from == Face::kBottom;
      const Sides& s = timber.sides;
      const double wood = level ? s.z_hi - s.z_lo : s.y_hi - s.y_lo;
      INFO(timber.mark << " " << step.id);
      CHECK(depth.through == (depth.value > wood - 1e-6));
      CHECK((step_value_text(depth, Voice{}) == "Through") == depth.through);
      (depth.through ? through : stopped)++;
    }
  }
  CHECK(through > 0);
  CHECK(stopped > 0);
}

// A brace under 45°: its slot's bottom runs as its end does. The plate's slot is open at one edge of the end.
TEST_CASE("a slot in a brace's end says where its bottom comes to each edge, and how deep it goes from the open face",
          "[shop]") {
  const auto frame = solve_frame(with_joinery(demo_book().frame, Joinery::kPlates));
  REQUIRE(frame);
  int slots = 0, slanted = 0, one_sided = 0;
  for (const TimberWork& work : shop_work(*frame, {}, swinging_saw())) {
    const Timber& timber = frame->timbers[static_cast<std::size_t>(work.timber)];
    for (const WorkStep& step : work.steps) {
      if (step.work != StepWork::kSlot) continue;
      ++slots;
      INFO(timber.mark << " " << step.id << " " << numbers_text(step.numbers));
      const Feature& f = timber.features[static_cast<std::size_t>(step.index)];
      const bool level = f.face == Face::kTop || f.face == Face::kBottom;
      const double n = level ? f.shoulder.normal.z : f.shoulder.normal.y;
      const double tall = level ? timber.sides.z_hi - timber.sides.z_lo : timber.sides.y_hi - timber.sides.y_lo;
      std::vector<StepNumber> bottoms, depths;
      for (const StepNumber& number : step.numbers) {
        if (number.name == StepNumberName::kBottom) bottoms.push_back(number);
        if (number.name == StepNumberName::kDepth && number.from) depths.push_back(number);
      }
      if (std::abs(n) < 1e-9) {
        CHECK(bottoms.empty());
      } else {
        ++slanted;
        REQUIRE(bottoms.size() == 2);
        // Between the edges it runs as the end's cut: tangent times the depth.
        CHECK(std::abs(bottoms[0].value - bottoms[1].value) ==
              Catch::Approx(tall * std::abs(n / f.shoulder.normal.x)).epsilon(1e-9));
        CHECK(step.numbers.front().name == StepNumberName::kDepth);
      }
      if (f.open == SlotOpen::kTop || f.open == SlotOpen::kBottom) {
        ++one_sided;
        REQUIRE(depths.size() == 1);
        CHECK(depths[0].value > 0);
        CHECK(depths[0].value < tall);
      }
      CHECK(read_numbers(numbers_text(step.numbers)).size() + bottoms.size() + depths.size() == step.numbers.size());
    }
  }
  CHECK(slots > 0);
  CHECK(slanted > 0);
  CHECK(one_sided > 0);
}

TEST_CASE("what waits at a workplace: now or after work elsewhere, each once; the same work on alike timbers together",
          "[shop]") {
  const Frame frame = demo_frame();
  const auto steps = steps_of(frame, "P-A1");
  Event laid;
  laid.timber = "P-A1";
  laid.step = steps.front().id;
  REQUIRE(steps.front().place == Workplace::kLayout);
  Log log{"b1", {}};
  add_event(log, *next_event(log, 1, laid));
  const auto work = shop_work(frame, fold(log), swinging_saw());
  for (std::size_t p = 0; p < kWorkplaceWords.size(); ++p) {
    const auto place = static_cast<Workplace>(p);
    const auto now = waiting_at(work, place, Waiting::kNow), later = waiting_at(work, place, Waiting::kLater);
    CHECK(now.size() + later.size() == waiting_at(work, place, Waiting::kAll).size());
    for (const WaitingCut& cut : now) {
      const TimberWork& on = work[static_cast<std::size_t>(cut.work)];
      for (int i = 0; i < cut.step; ++i)
        CHECK((on.progress.done[static_cast<std::size_t>(i)] || on.steps[static_cast<std::size_t>(i)].place == place));
    }
    for (const WaitingCut& cut : later) CHECK(waits_for(work[static_cast<std::size_t>(cut.work)], cut.step) >= 0);
    if (place == Workplace::kSaw) {
      CHECK_FALSE(now.empty());
      for (const WaitingCut& cut : now)
        CHECK(frame.timbers[static_cast<std::size_t>(work[static_cast<std::size_t>(cut.work)].timber)].mark == "P-A1");
    }
    std::size_t together = 0, most = 0;
    for (const std::vector<WaitingCut>& alike : alike_steps(frame, work, later)) {
      together += alike.size();
      most = std::max(most, alike.size());
      const WaitingCut& a = alike.front();
      const WorkStep& first = work[static_cast<std::size_t>(a.work)].steps[static_cast<std::size_t>(a.step)];
      for (const WaitingCut& cut : alike) {
        const WorkStep& step = work[static_cast<std::size_t>(cut.work)].steps[static_cast<std::size_t>(cut.step)];
        CHECK(step.work == first.work);
        CHECK(numbers_text(step.numbers) == numbers_text(first.numbers));
      }
    }
    CHECK(together == later.size());
    if (place == Workplace::kSaw) CHECK(most > 1);
  }
}

namespace {

/// All that stands beside one face, joined.
std::string said_on(const Frame& frame, std::string_view mark, Face face, const Voice& voice) {
  const int timber = timber_by_mark(frame, mark);
  const Timber& t = frame.timbers[static_cast<std::size_t>(timber)];
  std::string said;
  for (const draw::TapeBlock& block :
       face_strip(frame, t, face_marks(t, solve_sheet(frame, timber, swinging_saw()), face), voice).blocks)
    for (const draw::TapeLine& line : block.lines)
      for (const std::string& part : line.parts) said += part + " ";
  return said;
}

const StepNumber& depth_of(const WorkStep& step) {
  return *std::find_if(step.numbers.begin(), step.numbers.end(),
                       [](const StepNumber& n) { return n.name == StepNumberName::kDepth; });
}

}  // namespace

TEST_CASE("a face says a depth as its card does", "[shop][words]") {
  const Frame frame = demo_frame();
  const auto steps = steps_of(frame, "C-A1");
  const std::string deep = step_value_text(depth_of(step_of(steps, "birds_mouth/rafter_plate.1")), Voice{});
  const std::string said = said_on(frame, "C-A1", Face::kBottom, {});
  INFO(said);
  CHECK(said.find(deep + " deep") != std::string::npos);
}

TEST_CASE("a bit is said as it is sold: an inch bit by both, one of millimetres in whole or half ones",
          "[shop][words]") {
  Voice metric;
  metric.lengths = {LengthForm::kMm, 16, 1};
  const auto bit = [&](double inches) { return step_value_text(StepNumberName::kDiameter, inches, metric); };
  CHECK(bit(0.75) == "≈ 19.1 mm (3⁄4″)");
  CHECK(bit(20 / 25.4) == "20 mm");
  CHECK(bit(21.5 / 25.4) == "21.5 mm");
  CHECK(step_value_text(StepNumberName::kDiameter, 0.75, Voice{}) == "3⁄4″");
  const auto frame = solve_frame(with_joinery(default_plan(Length::mm(6000), Length::mm(9000), Length::mm(3000),
                                                           Slope::in_12(Length::inches(9)), SizedBy::kMillimetres),
                                              Joinery::kPlates));
  REQUIRE(frame);
  int bits = 0;
  for (const TimberWork& work : shop_work(*frame, {}, swinging_saw()))
    for (const WorkStep& step : work.steps)
      for (const StepNumber& n : step.numbers)
        if (n.name == StepNumberName::kDiameter) {
          ++bits;
          CHECK(is_metric_bit(n.value));
        }
  CHECK(bits > 20);
}

TEST_CASE("a joint says how its timbers are framed", "[frame][words]") {
  const Frame frame = demo_frame();
  std::set<std::string> said;
  for (const Joint& joint : frame.joints)
    for (const int timber : {joint.member, joint.receiver})
      said.insert(frame.timbers[static_cast<std::size_t>(timber)].mark + " " +
                  contact_text(frame, joint, timber, Language::kEn));
  for (const char* one :
       {"T-1 tenoned into P-A1", "P-A1 takes T-1", "P-A1 takes brace B-A1.1", "B-A1.1 braces P-A1",
        "G-A1.1 butts against P-A1", "P-A1 takes G-A1.1", "C-A1 bears on L-A1", "L-A1 carries C-A1"}) {
    INFO(one);
    CHECK(said.count(one) == 1);
  }
}
