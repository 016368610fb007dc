// Saws, triangles, mitres, the flip test.

#include <catch_amalgamated.hpp>

#include "cut/flip_test.h"
#include "cut/mitre.h"
#include "cut/setting.h"
#include "cut/triangle.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

constexpr Section kEightByEight{Length::inches(15, 2), Length::inches(15, 2)};

Setting set(const Saw& saw, Angle angle, const Section& section = kEightByEight) {
  const auto setting = saw_setting(saw, section, angle);
  REQUIRE(setting);
  return *setting;
}

}  // namespace

TEST_CASE("a scale that reads 90 at square reads the complement", "[saw]") {
  Saw saw;
  saw.square_reads = SquareReads::kNinety;
  const Setting s = set(saw, Angle::from_degrees(39.8));
  CHECK(s.set_to == Angle::from_degrees(50.2));
  CHECK(s.graduations.below.reads == Angle::degrees(51));
  CHECK(s.graduations.below.off_square == Angle::degrees(39));
  CHECK(s.graduations.above.reads == Angle::degrees(50));
  CHECK(s.graduations.above.off_square == Angle::degrees(40));
}

TEST_CASE("45 degrees is on its mark", "[saw]") {
  const Setting s = set(Saw{}, Angle::from_degrees(Slope::in_12(Length::inches(12)).deg()));
  CHECK(s.graduations.on_mark);
  CHECK(s.graduations.below.reads == Angle::degrees(45));
  CHECK(s.graduations.below.gap == Length{});
}

TEST_CASE("a known error of the scale is taken off the setting", "[saw]") {
  Saw saw;
  saw.scale_error = Angle::from_degrees(0.5);  // cuts half a degree more than it says
  const Setting s = set(saw, Angle::degrees(40));
  CHECK(s.set_to == Angle::from_degrees(39.5));
  CHECK(s.graduations.below.reads == Angle::degrees(39));
  CHECK(s.graduations.below.off_square == Angle::from_degrees(39.5));
  CHECK(s.graduations.above.off_square == Angle::from_degrees(40.5));
}

TEST_CASE("how many faces a cut takes", "[saw]") {
  Saw saw;
  saw.reach = Length::inches(8);
  CHECK(set(saw, Angle::degrees(30)).on_side.faces == Faces::kOne);
  saw.reach = Length::inches(5);
  CHECK(set(saw, Angle::degrees(30)).on_side.faces == Faces::kTwo);
  saw.reach = Length::inches(5, 2);
  const Pass by_hand = set(saw, Angle::degrees(30)).on_side;
  CHECK(by_hand.faces == Faces::kByHand);
  CHECK(by_hand.left == Length::inches(5, 2));
  CHECK(by_hand.bite == Bite::kReach);
  // Riding on the top with the blade tilted 30°: 7 1/2 / cos 30° = 8.66 deep.
  saw.reach = Length::inches(8);
  const Pass on_top = set(saw, Angle::degrees(30)).on_top;
  CHECK_THAT(on_top.needed.in(), WithinAbs(8.660254, 1e-6));
  CHECK(on_top.faces == Faces::kTwo);
  saw.max_tilt = Angle::degrees(20);
  CHECK(set(saw, Angle::degrees(30)).on_top.bite == Bite::kTilt);
  saw.max_swing = Angle::degrees(20);
  CHECK(set(saw, Angle::degrees(30)).on_side.bite == Bite::kSwing);
  saw.kind = SawKind::kHand;
  CHECK(set(saw, Angle::degrees(30)).on_side.faces == Faces::kOne);
}

TEST_CASE("travel through the face is depth over the cosine", "[saw]") {
  CHECK_THAT(set(Saw{}, Angle::degrees(60)).travel.in(), WithinAbs(15, 1e-8));
}

TEST_CASE("saws and cuts of no sense are refused by name", "[saw]") {
  Saw saw;
  saw.step = {};
  CHECK(saw_setting(saw, kEightByEight, Angle::degrees(30)).error().where == "step");
  CHECK(saw_setting(Saw{}, kEightByEight, Angle::degrees(90)).error().code == ErrorCode::kSteep);
  CHECK(saw_setting(Saw{}, {Length::inches(1), {}}, Angle::degrees(30)).error().where == "depth");
}

TEST_CASE("the last graduation before the timber's own length costs the most that is told", "[saw]") {
  const Setting s = set(Saw{}, Angle::from_degrees(89.5));
  CHECK(s.graduations.above.off_square == Angle::degrees(90));
  CHECK(s.graduations.above.arris.count == Length::kLimit);
}

TEST_CASE("any two measures give the 3-4-5 triangle", "[triangle]") {
  const Slope slope = Slope::ratio(Length::inches(3), Length::inches(4));
  const TrianglePart parts[] = {TrianglePart::kRise, TrianglePart::kRun, TrianglePart::kSlopeLength,
                                TrianglePart::kSlope};
  for (const TrianglePart a : parts) {
    for (const TrianglePart b : parts) {
      if (a == b) continue;
      const auto t = solve_triangle({Length::inches(3), Length::inches(4), Length::inches(5), slope, a, b});
      REQUIRE(t);
      CHECK_THAT(t->rise.in(), WithinAbs(3, 1e-8));
      CHECK_THAT(t->run.in(), WithinAbs(4, 1e-8));
      CHECK_THAT(t->slope_length.in(), WithinAbs(5, 1e-8));
      CHECK_THAT(t->angle.deg(), WithinAbs(36.869898, 1e-6));
    }
  }
}

TEST_CASE("measures that contradict each other are refused", "[triangle]") {
  TriangleInput input;
  input.older = TrianglePart::kRise;
  input.newer = TrianglePart::kSlopeLength;
  input.rise = Length::inches(10);
  input.slope_length = Length::inches(9);
  CHECK(solve_triangle(input).error().where == "slope_length");
  CHECK(solve_triangle(input).error().limit == Length::inches(10).count);
  input.newer = TrianglePart::kSlope;
  input.slope = Slope::in_12({});
  CHECK(solve_triangle(input).error().where == "rise");
  input.newer = TrianglePart::kRise;
  CHECK(solve_triangle(input).error().code == ErrorCode::kMissing);
}

TEST_CASE("the measure told longest ago gives way", "[triangle]") {
  TriangleInput input;  // run, then slope
  input.tell(TrianglePart::kRise);
  CHECK(input.given(TrianglePart::kSlope));
  CHECK(input.given(TrianglePart::kRise));
  input.tell(TrianglePart::kSlope);  // told again: now the newer
  input.tell(TrianglePart::kRun);
  CHECK(input.given(TrianglePart::kSlope));
  CHECK(input.given(TrianglePart::kRun));
}

TEST_CASE("equal members halve the angle, unequal ones go corner to corner", "[mitre]") {
  const auto equal = solve_mitre(Angle::degrees(120), Length::inches(6), Length::inches(6));
  REQUIRE(equal);
  CHECK(equal->off_square_a == Angle::degrees(30));
  CHECK(equal->off_square_b == Angle::degrees(30));
  const auto unequal = solve_mitre(Angle::degrees(90), Length::inches(3), Length::inches(4));
  REQUIRE(unequal);
  CHECK_THAT(unequal->line.in(), WithinAbs(5, 1e-8));
  CHECK_THAT(unequal->from_length_a.deg(), WithinAbs(36.869898, 1e-6));
  CHECK(solve_mitre(Angle::degrees(180), Length::inches(3), Length::inches(4)).error().where == "between");
}

// Trade geometry: gap = 2 · depth · sin(error).
TEST_CASE("the flip test tells the scale's error", "[flip]") {
  const auto error = scale_error_from_flip(Length::inches(1, 16), Length::inches(15, 2));
  REQUIRE(error);
  CHECK_THAT(error->deg(), WithinAbs(0.23874, 1e-5));
  CHECK_THAT(flip_gap(*error, Length::inches(15, 2)).in(), WithinAbs(0.0625, 1e-8));
  CHECK(*scale_error_from_flip(-Length::inches(1, 16), Length::inches(15, 2)) == Angle{} - *error);
  CHECK(scale_error_from_flip(Length::inches(3), Length::inches(6)).error().where == "flip_gap");
}
