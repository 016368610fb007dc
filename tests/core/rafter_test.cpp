// The common rafter: what it answers, what it refuses, what it warns of.

#include "roof/rafter.h"

#include <catch_amalgamated.hpp>

#include "cut/setting.h"
#include "roof/cut_section.h"
#include "roof/rafter_fields.h"
#include "roof/square_drawing.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

RafterInput eight_in_twelve() {
  RafterInput input;
  input.span = Length::feet(24);
  input.left.seat = Length::inches(7, 2);
  input.left.overhang = Length::feet(1);
  return input;
}

RafterPair solved(const RafterInput& input) {
  const auto pair = solve_rafters(input);
  if (!pair) FAIL("refused with code " << static_cast<int>(pair.error().code) << " at " << pair.error().where);
  return *pair;
}

Error refused(const RafterInput& input) {
  const auto pair = solve_rafters(input);
  REQUIRE_FALSE(pair);
  return pair.error();
}

bool warns(const Rafter& rafter, CautionId id, bool at_beam = false) {
  for (const Caution& c : rafter.cautions)
    if (c.id == id && c.at_beam == at_beam) return true;
  return false;
}

}  // namespace

TEST_CASE("a ridge board shortens the rafter and lowers its top", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.peak = PeakKind::kRidgeBoard;
  input.ridge_thickness = Length::inches(3, 2);
  const Rafter r = solved(input).left;
  CHECK_THAT(r.ridge_deduction.in(), WithinAbs(0.75 * 14.422205101855956 / 12, 1e-8));
  CHECK_THAT((r.peak_height - r.rafter_top).in(), WithinAbs(0.75 * 8 / 12, 1e-8));
  CHECK(r.ridge_top == r.rafter_top);
  CHECK_THAT(r.tip_to_tip.in(), WithinAbs((144 - 0.75 + 12) * 14.422205101855956 / 12, 1e-7));
}

TEST_CASE("over a ridge beam", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.peak = PeakKind::kOverBeam;
  input.beam_breadth = Length::inches(15, 2);
  input.beam_seat = Length::inches(15, 4);
  const Rafter r = solved(input).left;
  // (run − b/2 + s₂ − s₁) · tan θ = (144 − 3.75 + 3.75 − 3.5) · 8/12
  CHECK_THAT(r.ridge_top.in(), WithinAbs(140.5 * 8 / 12, 1e-8));
  CHECK(r.ridge_deduction == Length{});
  input.beam_seat = Length::inches(4);
  CHECK(refused(input).where == "ridge_seat");
  CHECK(refused(input).limit == Length::inches(15, 4).count);
}

TEST_CASE("seat and heel give each other", "[rafter]") {
  RafterInput input = eight_in_twelve();
  const Rafter by_seat = solved(input).left;
  CHECK_THAT(by_seat.heel.in(), WithinAbs(7.5 * 14.422205101855956 / 12 - 3.5 * 8 / 12, 1e-8));
  input.left.heel_by = HeelBy::kHeel;
  input.left.heel = by_seat.heel;
  CHECK_THAT(solved(input).left.seat.in(), WithinAbs(3.5, 1e-7));
}

TEST_CASE("a seat as long as the quarter rule allows leaves three quarters of the depth", "[rafter]") {
  RafterInput input = eight_in_twelve();
  const double sin = 8 / 14.422205101855956;
  input.left.seat = Length::from_inches(7.5 / 4 / sin);
  const Rafter at_limit = solved(input).left;
  CHECK_THAT(at_limit.share_left, WithinAbs(0.75, 1e-9));
  CHECK_FALSE(warns(at_limit, CautionId::kNotchPastQuarter));
  CHECK(warns(at_limit, CautionId::kNotchPastSixth));
  input.left.seat = input.left.seat + Length::inches(1, 16);
  CHECK(warns(solved(input).left, CautionId::kNotchPastQuarter));
  input.left.seat = Length::from_inches(7.5 / 6 / sin);
  CHECK_FALSE(warns(solved(input).left, CautionId::kNotchPastSixth));
}

TEST_CASE("a seat that is too long is refused with the longest that works", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.left.seat = Length::inches(14);
  const Error error = refused(input);
  CHECK(error.code == ErrorCode::kSeatTooLong);
  CHECK(error.where == "seat_left");
  CHECK_THAT(Length{error.limit}.in(), WithinAbs(7.5 * 14.422205101855956 / 8, 1e-7));
  input.left.seat = Length{error.limit};
  CHECK(solve_rafters(input));
  input.left.heel_by = HeelBy::kHeel;
  input.left.heel = Length::inches(10);
  CHECK(refused(input).code == ErrorCode::kHeelTooLarge);
  input.left.heel = Length{refused(input).limit};
  CHECK(solved(input).left.seat == Length{});
}

TEST_CASE("unlike sides meet where the trade's formula says", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.alike = false;
  input.left.pitch = Slope::in_12(Length::inches(12));
  input.right = input.left;
  input.right.pitch = Slope::in_12(Length::inches(8));
  input.right.plate_height = Length::inches(10);
  const RafterPair pair = solved(input);
  const double run = (288 * 8.0 / 12 + pair.right.heel.in() - pair.left.heel.in() + 10) / (1 + 8.0 / 12);
  CHECK_THAT(pair.left.run.in(), WithinAbs(run, 1e-7));
  CHECK_THAT((pair.left.run + pair.right.run).in(), WithinAbs(288, 1e-8));
  CHECK_THAT(pair.left.peak_height.in(), WithinAbs(pair.right.peak_height.in() + 10, 1e-7));
  CHECK_THAT(pair.ridge_off_centre.in(), WithinAbs(run - 144, 1e-7));
}

TEST_CASE("what is held decides what follows", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.alike = false;
  input.right = input.left;
  input.right.pitch = Slope::in_12(Length::inches(7));
  input.held = Held::kRidgeAndPlates;
  input.left.heel_by = input.right.heel_by = HeelBy::kHeel;
  input.left.heel = Length::inches(4);
  // The right side rises 12 in less over the same run: its heel would stand at 16 in, deeper than the rafter.
  CHECK(refused(input).code == ErrorCode::kImpossible);
  input.plan_by = PlanBy::kSpanAndRun;
  input.run = Length::inches(136);
  const RafterPair by_heel = solved(input);
  CHECK(by_heel.left.run == Length::inches(136));
  CHECK_THAT(by_heel.right.heel.in(), WithinAbs(4 + 136 * 8.0 / 12 - 152 * 7.0 / 12, 1e-7));
  input.held = Held::kRidgeAndHeels;
  const RafterPair by_plate = solved(input);
  CHECK_THAT(by_plate.right.plate_height.in(), WithinAbs(4 + 136 * 8.0 / 12 - 6 - 152 * 7.0 / 12, 1e-7));
  input.held = Held::kHeelsAndPlates;
  CHECK(refused(input).code == ErrorCode::kConflict);
}

TEST_CASE("a rafter that was measured has its own angle", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.left.measured = true;
  input.left.measured_rise = Length::inches(97);
  input.left.measured_run = Length::inches(144);
  const Rafter r = solved(input).left;
  CHECK_THAT(r.slope.deg(), WithinAbs(33.9646, 1e-4));  // atan(97/144)
  CHECK_THAT(r.line_length.in(), WithinAbs(173.6231, 1e-4));
}

// Statics of a three-hinged frame: w · span / (4 tan θ).
TEST_CASE("thrust where nothing ties the feet", "[rafter]") {
  RafterInput input = eight_in_twelve();
  CHECK(solved(input).thrust_lb == 0);
  input.feet = Feet::kLoose;
  input.load_psf = 30;
  input.spacing = Length::feet(2);
  const RafterPair pair = solved(input);
  CHECK_THAT(pair.thrust_lb, WithinAbs(30 * 2 * 24 / (4 * 8.0 / 12), 1e-9));
  CHECK(warns(pair.left, CautionId::kThrust));
}

TEST_CASE("the stock is the next two feet that hold the longest length and the trim", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.tail = TailCut::kSquare;
  input.trim = {};
  input.left.overhang = Length::feet(2);
  // Tip to tip along the top edge is the longest length of a rafter with a square tail.
  Rafter r = solved(input).left;
  CHECK(r.longest == r.tip_to_tip);
  CHECK(r.stock == Length::feet(18));
  input.plan_by = PlanBy::kRun;
  input.left.pitch = Slope::ratio(Length::inches(3), Length::inches(4));
  input.run = Length::inches(16 * 12 * 4 / 5 - 24);  // exactly 16 ft along the slope
  CHECK(solved(input).left.stock == Length::feet(16));
  input.trim = Length::inches(1);
  CHECK(solved(input).left.stock == Length::feet(18));
}

TEST_CASE("a tail that cannot be cut so is refused with the overhang it needs", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.left.overhang = Length::inches(2);
  for (const TailCut tail : {TailCut::kSquare, TailCut::kLevelAndPlumb}) {
    input.tail = tail;
    const Error error = refused(input);
    CHECK(error.code == ErrorCode::kTooSmall);
    CHECK(error.where == "overhang_left");
    RafterInput again = input;
    again.left.overhang = Length{error.limit};
    CHECK(solve_rafters(again));
  }
}

TEST_CASE("a seat past the plate is said", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.plate_breadth = Length::inches(3);
  const Rafter r = solved(input).left;
  REQUIRE(warns(r, CautionId::kSeatPastPlate));
  for (const Caution& c : r.cautions)
    if (c.id == CautionId::kSeatPastPlate) CHECK(c.length == Length::inches(1, 2));
}

// International Residential Code R802.3: a ridge board is no less deep than the cut end of the rafter. 7 1/2 in at 8 in
// 12: 7.5 / cos = 7.5 * sqrt(208) / 12 = 9.014 in.
TEST_CASE("a ridge board shallower than the rafters' plumb cut is said", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.peak = PeakKind::kRidgeBoard;
  input.section.depth = Length::inches(15, 2);
  CHECK_FALSE(warns(solved(input).left, CautionId::kRidgeShallow));
  input.ridge_depth = Length::inches(37, 4);
  CHECK_FALSE(warns(solved(input).left, CautionId::kRidgeShallow));
  input.ridge_depth = Length::inches(15, 2);
  const Rafter r = solved(input).left;
  REQUIRE(warns(r, CautionId::kRidgeShallow));
  for (const Caution& c : r.cautions)
    if (c.id == CautionId::kRidgeShallow) CHECK(std::fabs(c.length.in() - 7.5 * std::sqrt(208.0) / 12) < 1e-6);
}

TEST_CASE("fields of no sense are refused by name", "[rafter]") {
  const auto where = [](void (*spoil)(RafterInput&)) {
    RafterInput input = eight_in_twelve();
    spoil(input);
    return refused(input).where;
  };
  CHECK(where([](RafterInput& i) { i.span = {}; }) == "span");
  CHECK(where([](RafterInput& i) { i.section.depth = -Length::inches(1); }) == "depth");
  CHECK(where([](RafterInput& i) { i.left.pitch = Slope::in_12({}); }) == "pitch_left");
  CHECK(where([](RafterInput& i) { i.left.pitch = Slope::of_angle(Angle::degrees(90)); }) == "pitch_left");
  CHECK(where([](RafterInput& i) { i.left.overhang = -Length::inches(1); }) == "overhang_left");
  CHECK(where([](RafterInput& i) { i.peak = PeakKind::kRidgeBoard, i.ridge_thickness = Length::feet(30); }) == "ridge");
}

TEST_CASE("each field is set by its key and says how it was given", "[rafter]") {
  RafterInput input;
  for (const std::string_view key : rafter_length_keys()) {
    REQUIRE(is_rafter_length(key));
    REQUIRE(set_rafter_length(input, key, Length::inches(5)));
    CHECK(rafter_length(input, key) == Length::inches(5));
  }
  CHECK_FALSE(set_rafter_length(input, "seat", Length::inches(5)));
  set_rafter_length(input, "heel_left", Length::inches(6));
  CHECK(input.left.heel_by == HeelBy::kHeel);
  set_rafter_length(input, "seat_right", Length::inches(3));  // sides alike: the left one
  CHECK(input.left.heel_by == HeelBy::kSeat);
  CHECK(input.left.seat == Length::inches(3));
  input.alike = false;
  set_rafter_length(input, "seat_right", Length::inches(4));
  CHECK(input.left.seat == Length::inches(3));
  CHECK(input.right.seat == Length::inches(4));
}

// What a saw's whole degree costs at a seat: on its own length, not across the timber. 9:12, off square 53.13°; its
// line of 2 1/2 in crosses 2 1/2 · cos 53.13° = 1 1/2 in, and 53° misses there by 1.5 · (tan 53.13° − tan 53°).
TEST_CASE("a seat is judged by its own length, a plumb cut by the timber's depth", "[rafter]") {
  RafterInput input = eight_in_twelve();
  input.left.pitch = Slope::in_12(Length::inches(9));
  input.left.seat = Length::inches(5, 2);
  const Rafter r = solved(input).left;
  int seats = 0;
  for (const CutAngle& cut : r.cuts) {
    const Section crossed = crossed_by(r, cut, input.section);
    CHECK(crossed.breadth == input.section.breadth);
    if (cut.name != CutName::kSeat) {
      CHECK(crossed.depth == input.section.depth);
      continue;
    }
    ++seats;
    CHECK_THAT(crossed.depth.in(), WithinAbs(1.5, 1e-8));
    const auto costs = graduations(Saw{}, crossed.depth, cut.off_square);
    REQUIRE(costs);
    CHECK_THAT(costs->below.arris.in(), WithinAbs(1.5 * (4.0 / 3 - 1.3270448216204098), 1e-7));
  }
  CHECK(seats == 1);
}

TEST_CASE("a square in millimetres is held at 300 and steps off by it", "[rafter]") {
  RafterInput input;
  input.span = Length::mm(7200);
  input.left.pitch = Slope::in_12(Length::inches(8));
  input.left.overhang = Length::mm(400);
  const auto pair = solve_rafters(input);
  REQUIRE(pair);
  const SquareSteps steps = square_steps(pair->left, square_run(true));
  CHECK(steps.run == Length::mm(300));
  CHECK(steps.rise.to_mm() == Catch::Approx(200));       // 8 in 12 of 300
  CHECK(steps.along.to_mm() == Catch::Approx(360.555));  // √(300² + 200²)
  CHECK((steps.steps == 12 && steps.odd == Length{}));   // 3600 level
  CHECK((steps.tail_steps == 1 && steps.tail_odd == Length::mm(100)));
  const SquareSteps inches = square_steps(pair->left, square_run(false));
  CHECK((inches.steps == pair->left.steps && inches.odd == pair->left.step_odd &&
         inches.along == pair->left.step_length));
}
