// The trade's printed tables. Beside each check its source; exact values stand where print rounded.

#include <catch_amalgamated.hpp>
#include <cmath>

#include "cut/setting.h"
#include "measure/print.h"
#include "roof/corner/corner.h"
#include "roof/rafter.h"

using namespace bentbook;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180;
constexpr double kSquareCorner = 90 * kDegree;

double hundredths(double x) { return std::floor(x * 100 + 0.5) / 100; }

RafterInput plain_roof(Length span, Slope pitch) {
  RafterInput input;
  input.span = span;
  input.left.pitch = pitch;
  input.left.overhang = {};
  return input;
}

Rafter rafter_of(const RafterInput& input) {
  const auto pair = solve_rafters(input);
  REQUIRE(pair);
  return pair->left;
}

std::string feet_inches(Length length, int division) {
  return print_length(length, {LengthForm::kFeetInches, division, 3}, Marks::kAscii).text;
}

double hip_per_foot(double rise) { return std::sqrt(12 * 12 + 12 * 12 + rise * rise); }

}  // namespace

// NAVEDTRA 14044 ch. 2; Griffith, Carpentry (1916); Hodgson, ABC of the Steel Square.
TEST_CASE("common rafter for each foot of run, as on the framing square", "[trade][rafter]") {
  const std::pair<int, double> kTable[] = {{6, 13.42}, {7, 13.89}, {8, 14.42}, {9, 15.00}, {10, 15.62}, {12, 16.97}};
  for (const auto& [rise, printed] : kTable) {
    const Rafter r = rafter_of(plain_roof(Length::feet(20), Slope::in_12(Length::inches(rise))));
    CHECK(hundredths(r.step_length.in()) == printed);
  }
}

// NAVEDTRA 14044 ch. 2: span 16 ft, unit rise 7: 111.12 in, cut at 9 ft 3 1/8 in.
TEST_CASE("half of a 16 ft span at 7 in 12 is 9 ft 3 1/8 in", "[trade][rafter]") {
  const Rafter r = rafter_of(plain_roof(Length::feet(16), Slope::in_12(Length::inches(7))));
  CHECK_THAT(r.line_length.in(), WithinAbs(111.12, 0.03));  // the manual multiplies the rounded 13.89
  CHECK(feet_inches(r.line_length, 8) == "9' 3-1/8\"");
}

// Griffith, Carpentry (1916), appendix IV: span 25 ft, half pitch: 17 ft 8.12 in, 17 ft 8 1/8 in.
TEST_CASE("half of a 25 ft span at 12 in 12 is 17 ft 8 1/8 in", "[trade][rafter]") {
  const Rafter r = rafter_of(plain_roof(Length::feet(25), Slope::in_12(Length::inches(12))));
  CHECK_THAT(r.line_length.in(), WithinAbs(17 * 12 + 8.12, 0.02));
  CHECK(feet_inches(r.line_length, 8) == "17' 8-1/8\"");
}

// US Army subcourse EN0069A: run 10 ft at 8 in 12: ten steps of 14 5/12, 144 2/12 in.
TEST_CASE("a run of 10 ft at 8 in 12 is 144 2/12 in", "[trade][rafter]") {
  RafterInput input = plain_roof(Length::feet(20), Slope::in_12(Length::inches(8)));
  input.plan_by = PlanBy::kRun;
  input.run = Length::feet(10);
  const Rafter r = rafter_of(input);
  CHECK_THAT(r.line_length.in(), WithinAbs(144 + 2.0 / 12, 0.06));  // exact 144.222, stepped 144.167
  CHECK_THAT(r.line_length.in(), WithinAbs(144.2221, 1e-4));
  CHECK(r.steps == 10);
  CHECK(r.step_odd == Length{});
}

// TAFE roofing tables to AS 1684, per unit of run.
TEST_CASE("rafters of 30, 22 and 40 degrees per unit of run", "[trade][rafter]") {
  const std::pair<int, double> kTable[] = {{30, 1.15470}, {22, 1.07853}, {40, 1.30541}};
  for (const auto& [degrees, per_unit] : kTable) {
    const Rafter r = rafter_of(plain_roof(Length::mm(2000), Slope::of_angle(Angle::degrees(degrees))));
    CHECK_THAT(r.line_length.to_mm() / 1000, WithinAbs(per_unit, 5e-6));
  }
}

TEST_CASE("hips of 30, 22 and 40 degrees per unit of run", "[trade][corner]") {
  // The same tables: the hip over a square corner runs √2 for each unit.
  const std::pair<double, double> kTable[] = {{30, 1.52753}, {22, 1.47079}, {40, 1.64441}};
  for (const auto& [degrees, per_unit] : kTable) {
    const double plan = hip_plan_angle(kSquareCorner, std::tan(degrees * kDegree), std::tan(degrees * kDegree));
    CHECK_THAT(1 / (std::sin(plan) * std::cos(hip_slope(std::tan(degrees * kDegree), plan))),
               WithinAbs(per_unit, 5e-6));
  }
}

// NAVEDTRA 14044; Griffith; Audel's Guide vol. 3.
TEST_CASE("hip for each foot of common run, and jack difference at 16 in", "[trade][corner]") {
  const std::pair<double, double> kHips[] = {{8, 18.76}, {12, 20.78}};
  for (const auto& [rise, printed] : kHips) {
    const double plan = hip_plan_angle(kSquareCorner, rise / 12, rise / 12);
    const double hip = 12 / (std::sin(plan) * std::cos(hip_slope(rise / 12, plan)));
    CHECK(hundredths(hip) == printed);
    CHECK_THAT(hip, WithinAbs(hip_per_foot(rise), 1e-9));
  }
  const std::pair<double, double> kJacks[] = {{8, 19.23}, {10, 20.83}};
  for (const auto& [rise, printed] : kJacks) CHECK(hundredths(jack_difference(16, rise / 12, 45 * kDegree)) == printed);
}

// Hodgson: span 24 ft, end run 16 ft, rise 10 ft: the hip runs 20 ft; 20 and 10 on the square.
TEST_CASE("hip of an unequal roof runs the diagonal of both runs", "[trade][corner]") {
  const double side = 10.0 / 12, end = 10.0 / 16;
  const double plan = hip_plan_angle(kSquareCorner, side, end);
  CHECK_THAT(12 / std::sin(plan), WithinAbs(20, 1e-9));
  CHECK_THAT(std::tan(hip_slope(side, plan)), WithinAbs(10.0 / 20, 1e-9));
}

// Published irregular-roof framing notes (geocities archive), recomputed: valley of 12/12 and 8/12, square plan.
TEST_CASE("valley of 12 in 12 and 8 in 12", "[trade][corner]") {
  const double steep = 1, low = 8.0 / 12;
  const double p = hip_plan_angle(kSquareCorner, steep, low), q = hip_plan_angle(kSquareCorner, low, steep);
  CHECK_THAT(hip_slope(steep, p) / kDegree, WithinAbs(29.01714, 1e-5));
  CHECK_THAT(hip_slope(low, q) / kDegree, WithinAbs(29.01714, 1e-5));
  CHECK_THAT(p / kDegree, WithinAbs(33.69007, 1e-5));
  CHECK_THAT(jack_side_cut(steep, p) / kDegree, WithinAbs(46.68614, 1e-5));
  CHECK_THAT(backing_angle(steep, p) / kDegree, WithinAbs(36.03989, 1e-5));
  CHECK_THAT(jack_difference(16, steep, p), WithinAbs(15.08495, 1e-5));
  CHECK_THAT(q / kDegree, WithinAbs(56.30993, 1e-5));
  CHECK_THAT(jack_side_cut(low, q) / kDegree, WithinAbs(29.01714, 1e-5));
  CHECK_THAT(backing_angle(low, q) / kDegree, WithinAbs(17.92021, 1e-5));
  CHECK_THAT(jack_difference(16, low, q), WithinAbs(28.84441, 1e-5));
}

// Published hip-drop example, recomputed: square hip, 8 in 12, 1 1/2 in: about 3/8 in. The chart that doubles it errs.
TEST_CASE("drop and shift of an unbacked hip", "[trade][corner]") {
  CHECK_THAT(hip_drop(1.5, kSquareCorner, 8.0 / 12, 8.0 / 12), WithinAbs(0.3536, 1e-4));
  CHECK_THAT(hip_shift(1.5, kSquareCorner, 8.0 / 12, 8.0 / 12), WithinAbs(0, 1e-12));
  // 12 and 8 in 12, 1 1/2 in (plane geometry; property tests prove it on roof planes).
  CHECK_THAT(hip_drop(1.5, kSquareCorner, 1, 8.0 / 12), WithinAbs(0.384, 1e-3));
  CHECK_THAT(hip_shift(1.5, kSquareCorner, 1, 8.0 / 12), WithinAbs(-0.288, 1e-3));  // toward the shallower
}

// Plane geometry: asin(sin slope · cos 45°); taking the hip's own slope is a common slip (17.55° at 8 in 12).
TEST_CASE("backing of a square hip", "[trade][corner]") {
  CHECK_THAT(backing_angle(8.0 / 12, 45 * kDegree) / kDegree, WithinAbs(23.093, 5e-4));
  CHECK_THAT(backing_angle(1, 45 * kDegree) / kDegree, WithinAbs(30, 1e-9));
}

// 8 in 12: 39.76° off the length is 50.24° off square; or a plumb cut with the blade tilted 45° (plane geometry).
TEST_CASE("a jack's side cut both ways", "[trade][corner]") {
  const double tan = 8.0 / 12, plan = 45 * kDegree;
  CHECK_THAT(jack_side_cut(tan, plan) / kDegree, WithinAbs(39.76, 5e-3));
  // NAVEDTRA 14044: side cut of jacks against 12 is 144 over the common length for a foot of run.
  CHECK_THAT(12 * std::tan(jack_side_cut(tan, plan)), WithinAbs(144 / std::sqrt(144 + 64.0), 1e-9));
}

// Common practice: 10 in 12 is about 40°, its seat 50°; the two make 90.
TEST_CASE("10 in 12 and its complement", "[trade][angle]") {
  const Angle slope = Angle::from_degrees(Slope::in_12(Length::inches(10)).deg());
  CHECK_THAT(slope.deg(), WithinAbs(39.806, 5e-4));
  CHECK_THAT((Angle::degrees(90) - slope).deg(), WithinAbs(50.194, 5e-4));
}

// NAVEDTRA 14044: ×16, half or more goes up; 0.12 in is 1/8 in.
TEST_CASE("rounding to the sixteenth", "[trade][print]") {
  CHECK(feet_inches(Length::inches(12, 100), 16) == "1/8\"");
  CHECK(feet_inches(Length::inches(3, 32), 16) == "1/8\"");
}

// Trade geometry; the figures of the handbook example: 10 in 12, 7 1/2 in, set to 40°.
TEST_CASE("what a whole degree costs", "[trade][saw]") {
  Saw saw;
  const auto g = graduations(saw, Length::inches(15, 2), Angle::from_degrees(Slope::in_12(Length::inches(10)).deg()));
  REQUIRE(g);
  CHECK(g->above.reads == Angle::degrees(40));
  CHECK_THAT(g->above.arris.in(), WithinAbs(0.043, 5e-4));
  CHECK_THAT(g->above.gap.in(), WithinAbs(0.033, 5e-4));
  CHECK_THAT(g->above.gap_mated.in(), WithinAbs(0.066, 5e-4));
  CHECK(&g->best() == &g->above);
}
