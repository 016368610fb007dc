// What stands under the peaks of a roof with hipped ends, and what is said where nothing does.

#include <algorithm>
#include <array>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "frame/drawings/elevation.h"
#include "hip_frames.h"
#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

// By hand: span 24 ft, 8 in posts and king posts. The peak lies half a span in from the wall, 144 in; the king post's
// outer face there puts its middle, and bent 2, at 144 + 4 from the wall, 144 from the first bent.
TEST_CASE("King posts of a hip-ended frame stand under the ridge's ends", "[hipframe]") {
  const FramePlan plan = hip_plan(24, 48, 10, 9);
  CHECK(plan.bays.front().width == Length::inches(144));
  CHECK(plan.bays.back().width == Length::inches(144));
  const Frame frame = framed(plan);
  double from = 1e300, to = -1e300;
  for (const Timber* ridge : all_of(frame, TimberKind::kRidgeBeam)) {
    from = std::min(from, ridge->at.origin.y);
    to = std::max(to, ridge->at.origin.y + ridge->length);
  }
  CHECK_THAT(from, WithinAbs(140, 1e-9));
  CHECK_THAT(to, WithinAbs(48 * 12 - 4 - 144, 1e-9));
  const auto kings = all_of(frame, TimberKind::kKingPost);
  REQUIRE(kings.size() == 3);
  CHECK_THAT(kings.front()->at.origin.y - 4, WithinAbs(from, 1e-9));
  CHECK_THAT(kings.back()->at.origin.y + 4, WithinAbs(to, 1e-9));
  // Ties stand between the ends; a plate lies across each end, on a corner post at either side and one between.
  CHECK(all_of(frame, TimberKind::kTie).size() == 3);
  CHECK(timber_of(frame, "L-1").length == 24 * 12);
  CHECK(timber_of(frame, "P-C1").at.origin.x == 0);
}

TEST_CASE("A square hip roof comes to one peak on a pointed king post, a facet under each hip", "[hipframe]") {
  const Frame frame = framed(hip_plan(20, 20, 10, 8));
  CHECK(all_of(frame, TimberKind::kRidgeBeam).empty());
  CHECK(all_of(frame, TimberKind::kCommonRafter).empty());
  const auto hips = all_of(frame, TimberKind::kHipRafter);
  REQUIRE(hips.size() == 4);
  for (const Timber* hip : hips) CHECK(hip->alike == hips.front()->alike);
  const auto kings = all_of(frame, TimberKind::kKingPost);
  REQUIRE(kings.size() == 1);
  int facets = 0;
  for (const Joint& joint : frame.joints) {
    if (joint.member != timber_by_mark(frame, kings.front()->mark) || joint.meeting != Meeting::kKingTop) continue;
    CHECK(joint.contacts == 1);
    CHECK(joint.carrier == joint.member);
    ++facets;
  }
  CHECK(facets == 4);
}

TEST_CASE("Where hips meet over nothing it is said, with the bay that would carry them", "[hipframe]") {
  FramePlan plan = hip_plan(24, 48, 10, 9);
  plan.bays[0].width = plan.bays[0].width - Length::feet(3);
  plan.bays[1].width = plan.bays[1].width + Length::feet(3);
  const Frame frame = framed(plan);
  int told = 0;
  for (const Finding& f : frame.findings) {
    if (f.id != FindingId::kPeakUncarried) continue;
    ++told;
    CHECK_THAT(f.value, WithinAbs(144, 1e-9));
    CHECK(f.mark == "HR-A1");
  }
  CHECK(told == 1);
  CHECK_FALSE(found(frame, FindingId::kCornerThrust));
}

TEST_CASE("A hip roof's ridge that no king post holds in its middle is told, as a gable's is", "[hipframe]") {
  const FramePlan whole = hip_plan(24, 48, 10, 9);
  for (const char* mark : {"K-C3", "T-3"}) {
    CAPTURE(mark);
    FramePlan plan = whole;
    plan.overrides.emplace_back();
    plan.overrides.back().mark = mark;
    plan.overrides.back().removed = true;
    const Frame frame = framed(plan);
    CHECK(found(frame, FindingId::kRidgeUnsupported));
    CHECK_FALSE(found(frame, FindingId::kPeakUncarried));
  }
  // Bents out of the ridge's reach hold no king post and leave nothing of it.
  FramePlan more = whole;
  more.bays.front().width = more.bays.front().width - Length::feet(6);
  insert_bay(more, -1, Length::feet(6));
  CHECK_FALSE(found(framed(more), FindingId::kRidgeUnsupported));
}

TEST_CASE("The end bay that is told, entered as it is printed, sets a king post under the hips", "[hipframe]") {
  const auto told_at = [](const Frame& frame, const std::string& hip) {
    const Finding* found = nullptr;
    for (const Finding& f : frame.findings)
      if (f.id == FindingId::kPeakUncarried && f.mark == hip) found = &f;
    return found != nullptr ? found->value : 0;
  };
  int framed_plans = 0;
  for (const SizedBy by : {SizedBy::kInches, SizedBy::kMillimetres})
    for (const LengthStyle style : {LengthStyle{}, LengthStyle{LengthForm::kFeetInches, 8, 3},
                                    LengthStyle{LengthForm::kMm, 16, 0}, LengthStyle{LengthForm::kMetre, 16, 3}})
      for (const int sides : {6, 8, 9, 12})
        for (const int ends : {7, 8, 10, 12}) {
          CAPTURE(static_cast<int>(by), static_cast<int>(style.form), sides, ends);
          const bool metric = by == SizedBy::kMillimetres;
          FramePlan plan =
              default_hip_plan(metric ? Length::mm(7215) : Length::inches(23 * 12 * 16 + 5, 16),
                               metric ? Length::mm(19800) : Length::feet(66), Length::feet(10),
                               Slope::in_12(Length::inches(sides)), by, Slope::in_12(Length::inches(ends)));
          plan.bays[0].width = plan.bays[0].width - Length::inches(20);
          plan.bays.back().width = plan.bays.back().width + Length::inches(25);
          const auto moved = solve_frame(plan);
          if (!moved) continue;
          ++framed_plans;
          const std::string last = "HR-A" + std::to_string(plan.bays.back().label);
          for (const bool at_last : {false, true}) {
            const std::string hip = at_last ? last : "HR-A1";
            const double bay = told_at(*moved, hip);
            CHECK(bay > 0);
            const Printed printed = print_length(Length::from_inches(bay), style, Marks::kAscii);
            FramePlan cured = plan;
            (at_last ? cured.bays.back() : cured.bays.front()).width =
                parse_length(printed.text, metric ? BareUnit::kMm : BareUnit::kInch).value();
            CHECK(told_at(framed(cured), hip) == 0);
            for (const Finding& f : framed(cured).findings)
              CHECK_FALSE((f.id == FindingId::kPeakUncarried && f.mark == hip));
          }
        }
  // Of 128: ends at 7 in 12 are too flat for the heel of sides at 12.
  REQUIRE(framed_plans >= 120);
}

TEST_CASE("Where no end bay would set a king post under the hips none is told", "[hipframe]") {
  const auto said_of = [](const FramePlan& plan) {
    const Frame frame = framed(plan);
    std::vector<Finding> peaks;
    for (const Finding& f : frame.findings)
      if (f.id == FindingId::kPeakUncarried || f.id == FindingId::kMiddleUncarried) peaks.push_back(f);
    return peaks;
  };
  const FramePlan whole = hip_plan(24, 48, 10, 9);
  std::vector<FramePlan> plans;
  for (const char* mark : {"K-C2", "T-2"}) {
    plans.push_back(whole);
    plans.back().overrides.emplace_back();
    plans.back().overrides.back().mark = mark;
    plans.back().overrides.back().removed = true;
    // Where a bay moves the post, it stays taken out.
    plans.push_back(plans.back());
    plans.back().bays.front().width = plans.back().bays.front().width + Length::feet(2);
  }
  plans.push_back(whole);
  plans.back().ties = false;
  plans.push_back(whole);
  plans.back().on_ties = OnTies::kNothing;
  plans.push_back(whole);
  plans.back().bays = {{Length::feet(40), 2}};
  plans.push_back(hip_plan(24, 24, 10, 9));
  plans.back().on_ties = OnTies::kNothing;
  for (const FramePlan& plan : plans) {
    const std::vector<Finding> peaks = said_of(plan);
    CHECK_FALSE(peaks.empty());
    for (const Finding& f : peaks) {
      CHECK(f.value == 0);
      CHECK(finding_text(f, {}) == "No king post carries " + f.mark + " and " + f.other + " where they meet.");
    }
  }
  // One peak, and a ridge that one post may carry, want it in the middle.
  for (const auto& [length, off] : {std::array{24, 24}, {25, 24}, {27, 24}, {27, 8}}) {
    CAPTURE(length, off);
    FramePlan plan = hip_plan(24, length, 10, 9);
    plan.bays[0].width = plan.bays[0].width - Length::inches(off);
    plan.bays[1].width = plan.bays[1].width + Length::inches(off);
    const std::vector<Finding> peak = said_of(plan);
    REQUIRE(peak.size() == 1);
    CHECK(peak[0].id == FindingId::kMiddleUncarried);
    CHECK_THAT(peak[0].value, WithinAbs(length * 6 - 4, 1e-9));
    for (Bay& bay : plan.bays) bay.width = Length::from_inches(peak[0].value);
    CHECK(said_of(plan).empty());
    CHECK(outside_length(plan) == Length::feet(length));
  }
}

TEST_CASE("A ridge shorter than its king post lies over the middle of it, or it is told which bays give it length",
          "[hipframe]") {
  const auto short_ridge = [](int over, int rise) {
    return default_hip_plan(Length::feet(24), Length::inches(24 * 12 + over), Length::feet(10),
                            Slope::in_12(Length::inches(rise)));
  };
  // 24' 6" and 24' 8": a ridge of 6 in and of 8.
  for (const int over : {6, 7, 8, 12, 39})
    for (const int rise : {4, 6, 8, 9}) {
      CAPTURE(over, rise);
      const Frame frame = framed(short_ridge(over, rise));
      nothing_said(frame);
      CHECK(all_of(frame, TimberKind::kKingPost).size() == 1);
    }
  // 24' 2": no joint in a ridge of 2 in. Or hips so steep that they reach down to a post that is broader than the
  // ridge.
  for (const auto& [over, rise] : {std::array{1, 4}, {2, 9}, {4, 8}, {6, 12}, {6, 16}, {7, 16}}) {
    CAPTURE(over, rise);
    FramePlan plan = short_ridge(over, rise);
    const Frame frame = framed(plan);
    CHECK_FALSE(found(frame, FindingId::kClash));
    CHECK_FALSE(found(frame, FindingId::kPeakUncarried));
    std::vector<Finding> peaks;
    for (const Finding& f : frame.findings)
      if (f.id == FindingId::kMiddleUncarried) peaks.push_back(f);
    REQUIRE(peaks.size() == 1);
    CHECK(finding_text(peaks[0], {}).find("Two bays of 12") != std::string::npos);
    for (Bay& bay : plan.bays) bay.width = Length::from_inches(peaks[0].value);
    nothing_said(framed(plan));
  }
}

// By hand: where the sides rise a third and the ends as much as they run, a span of 12 ft has its peaks 2 ft in from
// the walls; of 20 ft at 3 in 12, 2 1/2 ft. An end bay so narrow is none. Nor is half of
// a building of 5 ft.
TEST_CASE("Ends too steep for a bay that reaches their peaks begin with even bays, and peaks that hang are told",
          "[hipframe]") {
  for (const auto& [span, length, sides, ends] : {std::array{12, 30, 4, 10},
                                                  {12, 30, 4, 11},
                                                  {12, 30, 4, 12},
                                                  {12, 30, 4, 14},
                                                  {20, 40, 3, 12},
                                                  {12, 5, 4, 12}}) {
    CAPTURE(span, length, sides, ends);
    const FramePlan plan =
        default_hip_plan(Length::feet(span), Length::feet(length), Length::feet(10),
                         Slope::in_12(Length::inches(sides)), SizedBy::kInches, Slope::in_12(Length::inches(ends)));
    CHECK(outside_length(plan) == Length::feet(length));
    for (const Bay& bay : plan.bays) CHECK_FALSE(bay.width < least_bay(plan));
    const Frame frame = framed(plan);
    std::vector<std::string> told;
    for (const Finding& f : frame.findings)
      if (f.id == FindingId::kPeakUncarried) {
        CHECK(f.value == 0);
        told.push_back(f.mark);
      }
    CHECK(told == std::vector<std::string>{"HR-A1", "HR-A" + std::to_string(plan.bays.back().label)});
    CHECK_FALSE(found(frame, FindingId::kClash));
  }
}

// By hand: sides at 8 in 12 and ends at 4 put the peaks of a building twice as long as it is broad into one place. Its
// king post is 8 in square: 4 in from the axis to each face. A hip's arrises lie in both planes, alike high, p and q
// from the corner's line: 8 · 240 p = 4 · 120 q, p + q = 6 in: p = 6/5 on the sides' plane. Hips run 1 across by 2
// along there, and leave their jack √5/2 of p from the axis.
TEST_CASE("A jack that comes between the hips into the post under one peak bears on it", "[hipframe]") {
  const auto pitched = [](int span, int length, int sides, int ends) {
    return framed(default_hip_plan(Length::feet(span), Length::feet(length), Length::feet(10),
                                   Slope::in_12(Length::inches(sides)), SizedBy::kInches,
                                   Slope::in_12(Length::inches(ends))));
  };
  const auto bear_on = [](const Frame& frame, TimberKind kind) {
    std::vector<Joint> bearing;
    for (const Joint& joint : frame.joints)
      if (joint.meeting == Meeting::kKingTop && frame.timbers[static_cast<std::size_t>(joint.carried)].kind == kind)
        bearing.push_back(joint);
    return bearing;
  };
  for (const Frame& frame : {pitched(20, 40, 8, 4), pitched(20, 10, 4, 8)}) {
    CHECK_FALSE(found(frame, FindingId::kClash));
    CHECK(bear_on(frame, TimberKind::kHipRafter).size() == 4);
    CHECK(bear_on(frame, TimberKind::kJackRafter).size() == 2);
    for (const Joint& joint : frame.joints)
      if (joint.meeting == Meeting::kKingTop) CHECK(joint.contacts == 1);
  }
  const Frame along = pitched(20, 40, 8, 4);
  const Vec3 axis = timber_of(along, "K-C2").at.origin;
  for (const char* mark : {"JR-A2", "JR-E2"}) {
    CAPTURE(mark);
    const Timber& jack = timber_of(along, mark);
    double nearest = 1e300;
    for (const Vec3& p : corners_of(jack)) nearest = std::min(nearest, std::fabs(p.x - axis.x));
    CHECK_THAT(nearest, WithinAbs(0.6 * std::sqrt(5.0), 1e-6));
  }
  for (const Joint& joint : bear_on(along, TimberKind::kJackRafter)) {
    const Timber& jack = along.timbers[static_cast<std::size_t>(joint.carried)];
    const auto& corners = along.contacts[static_cast<std::size_t>(joint.first_contact)].corners;
    double farthest = 0;
    for (const Vec3& p : corners) {
      farthest = std::max(farthest, std::fabs(p.x - axis.x));
      CHECK(std::fabs(p.y - axis.y) < 2 + 1e-6);                // half of the jack's breadth
      CHECK_THAT(to_local(jack.at, p).z, WithinAbs(-5, 1e-6));  // of its depth
    }
    CHECK_THAT(farthest, WithinAbs(4, 1e-6));
  }
  // Ends so steep that with a facet for their jack the hips would bear no more: it ends against the post.
  const Frame steep =
      framed(default_hip_plan(Length::feet(20), Length::inches(90), Length::feet(10), Slope::in_12(Length::inches(6)),
                              SizedBy::kInches, Slope::in_12(Length::inches(16))));
  CHECK_FALSE(found(steep, FindingId::kClash));
  CHECK(bear_on(steep, TimberKind::kHipRafter).size() == 4);
  CHECK(bear_on(steep, TimberKind::kJackRafter).empty());
  int against = 0;
  for (const Joint& joint : steep.joints) {
    if (joint.meeting != Meeting::kRafterRidge || joint.receiver != timber_by_mark(steep, "K-C2")) continue;
    CHECK(steep.timbers[static_cast<std::size_t>(joint.member)].kind == TimberKind::kJackRafter);
    CHECK(joint.contacts == 1);
    ++against;
  }
  CHECK(against == 2);
  // Where all pitches are alike the hips keep it farther off, half a hip's breadth over their plan's sine.
  CHECK(bear_on(framed(hip_plan(20, 20, 10, 8)), TimberKind::kJackRafter).empty());
}
