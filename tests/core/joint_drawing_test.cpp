// Joints as they are drawn to be tapped.
#include "frame/drawings/joint_drawing.h"

#include <algorithm>
#include <array>
#include <catch_amalgamated.hpp>
#include <map>
#include <set>

#include "book/field.h"
#include "frame/joinery.h"
#include "frame/joints/joint_table.h"
#include "frame/placing/solve_frame.h"
#include "measure/fields.h"
#include "plans.h"
#include "words/frame_words.h"

using namespace bentbook;

namespace {

FramePlan barn() {
  return default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
}

std::multiset<std::string> drawn_measures(const JointType& type, const JointWood& wood) {
  std::multiset<std::string> keys;
  for (const JointDrawing& view : joint_drawings(type, wood)) {
    for (const draw::Dimension& d : view.drawing.dimensions)
      if (d.meaning == draw::Meaning::kGiven) keys.insert(d.key);
    for (const draw::Note& n : view.drawing.notes)
      if (n.meaning == draw::Meaning::kGiven) keys.insert(n.key);
  }
  return keys;
}

double tool(const Frame& frame, Meeting meeting, ToolSetting setting) {
  for (const Joint& joint : frame.joints)
    for (int i = 0; joint.meeting == meeting && i < joint.tools.count; ++i)
      if (joint.tools[i].setting == setting && joint.tools[i].timber == joint.member) return joint.tools[i].value;
  return -1;
}

}  // namespace

TEST_CASE("every length and count of a joint that its cuts ask for stands on one of its drawings, once",
          "[joint_drawing]") {
  for (const JointRow& row : joint_table()) {
    const JointType type = row.usual();
    JointWood wood;
    if (kind_of(type) == JointKind::kRafterPeak) wood.lean = 0.75;  // level rafters have no tongue
    const auto drawn = drawn_measures(type, wood);
    for (const std::string& measure : field_paths(described_as_is(type))) {
      CAPTURE(row.word, measure);
      if (joint_measure_name(measure, Language::kEn).empty() || measure == "tongue_and_fork" || measure == "through")
        continue;
      CHECK(drawn.count(measure) == (is_used(type, measure) ? 1 : 0));
    }
  }
}

// 8 in wide: (8 − 7/16) / 2 = 3 25/32; slot 3/8 + 1/16, depth 7 1/2 + 1/4; a tenon of 2 in: (8 − 2) / 2; all by hand.
TEST_CASE("what a joint's drawing tells is what its tools are set to", "[joint_drawing]") {
  const FramePlan wooden = barn(), plates = with_joinery(barn(), Joinery::kPlates);
  const auto tell = [&](const FramePlan& plan, std::string_view key) {
    const Frame frame = *solve_frame(plan);
    const Joint* joint = joint_to_show(frame, Meeting::kTiePost);
    REQUIRE(joint != nullptr);
    return *joint_answer(plan.joints[static_cast<std::size_t>(Meeting::kTiePost)], joint_wood(frame, *joint), key);
  };
  CHECK(tell(plates, "gauge") == 3 + 25 / 32.0);
  CHECK(tell(plates, "slot_width") == 7 / 16.0);
  CHECK(tell(plates, "slot_depth") == 7.75);
  CHECK(tell(plates, "plate_top") == 2);    // (10 − 6) / 2
  CHECK(tell(plates, "first_pin") == 3.5);  // (10 − 3) / 2
  CHECK(tell(wooden, "fence") == 3);
  CHECK(tell(wooden, "first_peg") == 3.5);  // two pegs 3 in apart in the middle of 10
  const Frame steel = *solve_frame(plates), wood = *solve_frame(wooden);
  using Catch::Matchers::WithinAbs;
  CHECK_THAT(tool(steel, Meeting::kTiePost, ToolSetting::kFence), WithinAbs(tell(plates, "gauge"), 1e-9));
  CHECK_THAT(tool(steel, Meeting::kTiePost, ToolSetting::kSlotWidth), WithinAbs(tell(plates, "slot_width"), 1e-9));
  CHECK_THAT(tool(steel, Meeting::kTiePost, ToolSetting::kDepthStop), WithinAbs(tell(plates, "slot_depth"), 1e-9));
  CHECK_THAT(tool(wood, Meeting::kTiePost, ToolSetting::kFence), WithinAbs(tell(wooden, "fence"), 1e-9));
}

namespace {

bool as_designed(const Timber& t) { return t.wood.actual == t.wood.design && t.warnings.empty(); }

/// From the member's top edge to the first hole that the joint bores across its view.
double first_hole(const Frame& frame, const Joint& joint, double high) {
  const Timber& member = frame.timbers[static_cast<std::size_t>(joint.member)];
  double first = high;
  for (const Feature& f : member.features)
    if (f.kind == FeatureKind::kHole && f.joint == static_cast<int>(&joint - frame.joints.data())) {
      first = std::min(first, high / 2 - (f.across_lo + f.across_hi) / 2);
    }
  return first;
}

}  // namespace

// The solver's own joints, cut and bored, on the wood that the plan has.
TEST_CASE("drawn joints of random frames tell the numbers by which they are cut", "[joint_drawing]") {
  Random random(611);
  std::map<std::string, int> told;
  for (int round = 0; round < 120; ++round) {
    const FramePlan plan = random_plan(random);
    const auto frame = solve_frame(plan);
    if (!frame || !plan.overrides.empty()) continue;
    for (const Joint& joint : frame->joints) {
      const JointType& type = plan.joints[static_cast<std::size_t>(joint.meeting)];
      const Timber& member = frame->timbers[static_cast<std::size_t>(joint.member)];
      if (kind_of(type) != joint.kind || !as_designed(member) ||
          !as_designed(frame->timbers[static_cast<std::size_t>(joint.receiver)]))
        continue;
      const JointWood wood = joint_wood(*frame, joint);
      const auto same = [&](std::string_view key, ToolSetting setting) {
        const auto drawn = joint_answer(type, wood, key);
        for (int i = 0; drawn && i < joint.tools.count; ++i) {
          if (joint.tools[i].setting != setting || joint.tools[i].timber != joint.member) continue;
          CAPTURE(round, member.mark, row_of(joint.kind).word, key, wood.lean);
          CHECK_THAT(joint.tools[i].value, Catch::Matchers::WithinAbs(*drawn, 1e-6));
          ++told[std::string(key)];
        }
      };
      same("slot_width", ToolSetting::kSlotWidth);
      same("slot_depth", ToolSetting::kDepthStop);
      if (wood.lean > 0) continue;
      for (const char* key : {"first_pin", "first_peg"}) {
        const auto drawn = joint_answer(type, wood, key);
        const double bored = first_hole(*frame, joint, wood.high);
        if (!drawn || bored == wood.high) continue;
        CAPTURE(round, member.mark, row_of(joint.kind).word, key);
        CHECK_THAT(bored, Catch::Matchers::WithinAbs(*drawn, 1e-6));
        ++told[key];
      }
    }
  }
  for (const char* key : {"slot_width", "slot_depth", "first_pin", "first_peg"}) {
    CAPTURE(key, told[key]);
    CHECK(told[key] > 20);
  }
}

// Of a brace's upper end, drawn coming from below and to the left: the edge farther from the post is the right one,
// which is the sketch's high one.
// An 8 in post under a 6 in plate, flush outside, where the reference faces are: the tenon stands in the middle of the
// plate's 6, (6 − 2) / 2 from there, not in the post's own middle, 3.
TEST_CASE("a tenon is drawn in the wood that both timbers have, as it is gauged", "[joint_drawing]") {
  FramePlan plan = barn();
  plan.sections.plate.breadth = Length::inches(6);
  const Frame frame = *solve_frame(plan);
  std::set<double> fences;
  for (const Joint& joint : frame.joints)
    if (joint.meeting == Meeting::kPostTop)
      fences.insert(
          *joint_answer(plan.joints[static_cast<std::size_t>(joint.meeting)], joint_wood(frame, joint), "fence"));
  CHECK(fences == std::set<double>{2});
}

TEST_CASE("a brace's top edge is drawn where it lies", "[joint_drawing]") {
  const Frame frame = *solve_frame(barn());
  int seen = 0;
  for (const Joint& joint : frame.joints) {
    const JointWood wood = joint_wood(frame, joint);
    if (joint.meeting != Meeting::kBraceEnd || wood.from != MemberFrom::kBelow) continue;
    const Timber& brace = frame.timbers[static_cast<std::size_t>(joint.member)];
    const Vec3 away = joint.end == End::kB ? -1 * brace.at.x : brace.at.x;  // down, to the post
    const Vec3 to_post{away.x, away.y, 0};
    // Two points of its edges at one level: that on the top edge is farther from the post or nearer.
    const double top_far = -dot(brace.at.z, to_post) + brace.at.z.z / away.z * dot(away, to_post);
    CHECK(wood.top_is_low == (top_far < 0));
    ++seen;
  }
  CHECK(seen > 10);
}

TEST_CASE("a joint is drawn as its timbers lie", "[joint_drawing]") {
  const Frame frame = *solve_frame(barn());
  const auto wood = [&](Meeting meeting) { return joint_wood(frame, *joint_to_show(frame, meeting)); };
  const JointWood tie = wood(Meeting::kTiePost), post = wood(Meeting::kPostTop), brace = wood(Meeting::kBraceEnd);
  const JointWood king = wood(Meeting::kKingFoot), mouth = wood(Meeting::kRafterPlate);
  CHECK(tie.from == MemberFrom::kRight);
  CHECK(tie.high == 10);
  CHECK(tie.wide == 8);
  CHECK(tie.receiver == 8);
  CHECK(tie.lean == 0);
  CHECK(post.from == MemberFrom::kBelow);
  CHECK(king.from == MemberFrom::kAbove);
  CHECK(king.receiver == 10);
  CHECK(brace.from == MemberFrom::kBelow);
  CHECK(brace.high == 6);
  CHECK_THAT(brace.lean, Catch::Matchers::WithinAbs(1, 1e-9));
  CHECK_THAT(mouth.lean, Catch::Matchers::WithinAbs(9 / 12.0, 1e-9));
}

// 9 in 12: secant 15/12. A seat s has a plumb cut of 3/4 s and is 3/5 s deep, square; above it 6 · 15/12 − 3/4 s.
TEST_CASE("a bird's mouth tells its plumb cut, its depth and how high the rafter stands", "[joint_drawing]") {
  const FramePlan plan = barn();
  const Frame frame = *solve_frame(plan);
  const JointWood wood = joint_wood(frame, *joint_to_show(frame, Meeting::kRafterPlate));
  const JointType& type = plan.joints[static_cast<std::size_t>(Meeting::kRafterPlate)];
  const double seat = std::get<BirdsMouth>(type).seat.in();
  using Catch::Matchers::WithinAbs;
  CHECK_THAT(*joint_answer(type, wood, "heel"), WithinAbs(0.75 * seat, 1e-9));
  CHECK_THAT(*joint_answer(type, wood, "mouth_depth"), WithinAbs(0.6 * seat, 1e-9));
  CHECK_THAT(*joint_answer(type, wood, "stand"), WithinAbs(7.5 - 0.75 * seat, 1e-9));
  CHECK_THAT(*joint_answer(type, wood, "slope"), WithinAbs(36.8698976458, 1e-9));
}

TEST_CASE("plates throughout and back leave the wooden joints as they were", "[joint_drawing]") {
  const FramePlan plan = barn(), plates = with_joinery(plan, Joinery::kPlates);
  CHECK(joinery_of(plan) == Joinery::kWooden);
  CHECK(joinery_of(plates) == Joinery::kPlates);
  CHECK(with_joinery(plates, Joinery::kWooden) == plan);
  FramePlan mixed = plates;
  mixed.joints[static_cast<std::size_t>(Meeting::kBraceEnd)] = default_joint(Meeting::kBraceEnd);
  CHECK_FALSE(joinery_of(mixed));
}

TEST_CASE("a fresh frame with plates throughout has nothing said against it", "[joint_drawing]") {
  for (const auto& [span, length, height] : {std::array{12, 16, 8}, {16, 24, 9}, {24, 36, 10}, {30, 60, 12}})
    for (const int rise : {6, 8, 9, 12}) {
      const auto frame =
          solve_frame(with_joinery(default_plan(Length::feet(span), Length::feet(length), Length::feet(height),
                                                Slope::in_12(Length::inches(rise))),
                                   Joinery::kPlates));
      REQUIRE(frame);
      CAPTURE(span, rise);
      CHECK(std::all_of(frame->timbers.begin(), frame->timbers.end(),
                        [](const Timber& t) { return t.warnings.empty(); }));
    }
}
