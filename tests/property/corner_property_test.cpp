// Whole corners, hips and valleys, on many random pairs of roofs: against the closed forms, and against timbers laid
// out as lines in space whose arrises are cut and measured.

#include <array>
#include <catch_amalgamated.hpp>
#include <cmath>

#include "random.h"
#include "roof/corner/corner.h"
#include "roof/corner/corner_cuts.h"

using namespace bentbook;

namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kAngle = 2e-9;   // degrees: two roundings to a billionth
constexpr double kLength = 1e-7;  // inches

bool near(double a, double b, double tolerance) { return std::fabs(a - b) <= tolerance; }
double deg(double rad) { return rad * 180 / kPi; }

CornerInput random_corner_input(Random& random) {
  CornerInput input;
  const auto inches = [&](double low, double high) { return Length::from_inches(random.real(low, high)); };
  input.kind = random.whole(0, 1) == 0 ? CornerKind::kHip : CornerKind::kValley;
  input.eave_angle = Angle::from_degrees(random.real(25, 155));
  input.pitch = Slope::in_12(inches(2, 24));
  input.pitch_other = Slope::in_12(inches(2, 24));
  input.run = inches(60, 300);
  input.hip_breadth = inches(1.5, 9);
  input.hip_depth = inches(6, 40);
  input.jack_breadth = inches(1.5, 8);
  input.jack_depth = inches(4, 12);
  input.backed = random.whole(0, 1) == 0;
  input.peak = random.whole(0, 1) == 0 ? CornerPeak::kRidge : CornerPeak::kBetween;
  input.ridge = inches(0, 6);
  input.seat = {};
  input.overhang = inches(0, 30);
  input.spacing = inches(12, 48);
  return input;
}

/// The roofs by their heights over the plan, nothing else: roof 0 rises with y, roof 1 square to its own eave.
struct Heights {
  double eave, own, other;
  explicit Heights(const CornerInput& in)
      : eave(in.eave_angle.rad()), own(in.pitch.tan()), other(in.pitch_other.tan()) {}
  [[nodiscard]] double at(int roof, double x, double y) const {
    return roof == 0 ? own * y : other * (x * std::sin(eave) - y * std::cos(eave));
  }
};

struct Line {
  Vec3 from, along;
};
/// Where a line crosses the upright plane through the hip, measured along the line.
double crossing(const Line& line, Vec3 hip) {
  const double side = line.from.x * hip.y - line.from.y * hip.x, turn = line.along.x * hip.y - line.along.y * hip.x;
  return -side / turn;
}

}  // namespace

TEST_CASE("a solved corner says what the closed forms say", "[property][corner][roof]") {
  Random random(0xc0a);
  int bad = 0, solved = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const CornerInput in = random_corner_input(random);
    const auto corner = solve_corner(in);
    if (!corner) continue;
    ++solved;
    const double eave = in.eave_angle.rad(), thick = in.hip_breadth.in();
    const std::array tans{in.pitch.tan(), in.pitch_other.tan()};
    for (const std::size_t r : {0U, 1U}) {
      const CornerRoof& roof = corner->roofs[r];
      const double plan = hip_plan_angle(eave, tans[r], tans[1 - r]);
      bad += !near(roof.plan.deg(), deg(plan), kAngle);
      bad += !near(corner->slope.deg(), deg(hip_slope(tans[r], plan)), kAngle);
      bad += !near(roof.backing.deg(), deg(backing_angle(tans[r], plan)), 1e-8);
      const double side = jack_side_cut(tans[r], plan);
      bad += !near(roof.jack_side.deg(), deg(std::min(side, kPi - side)), 1e-8);
      const double difference = jack_difference(in.spacing.in(), tans[r], plan);
      if (std::fabs(difference) < 1e5)  // beyond, the roofs' rafters run with the hip
        bad += !near(roof.jack_difference.in(), difference, kLength * (1 + std::fabs(difference)));
    }
    const bool both = corner->roofs[0].meets && corner->roofs[1].meets;
    if (in.kind == CornerKind::kValley || in.backed) {
      bad += corner->drop != Length{} || corner->shift != Length{};
    } else if (both) {
      bad += !near(corner->drop.in(), hip_drop(thick, eave, tans[0], tans[1]), kLength);
      const double shift = hip_shift(thick, eave, tans[0], tans[1]);  // positive: toward the first roof
      bad += !near(corner->shift_to == 0 ? corner->shift.in() : -corner->shift.in(), shift, kLength);
    }
  }
  CHECK(solved > property_cases() * 8 / 10);
  CHECK(bad == 0);
}

TEST_CASE("a hip's line lies in both roofs, from the corner to the ridge", "[property][corner][roof]") {
  Random random(0x11e);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const CornerInput in = random_corner_input(random);
    const auto corner = solve_corner(in);
    if (!corner) continue;
    // Its end in plan, by the plan angle; both roofs stand over it as high as the first roof's ridge.
    const double plan = corner->roofs[0].plan.rad(), run = corner->run.in();
    const double x = run * std::cos(plan), y = run * std::sin(plan);
    const Heights roofs(in);
    bad += !near(y, in.run.in(), 1e-6);
    bad += !near(roofs.at(0, x, y), corner->rise.in(), 1e-5);
    bad += !near(roofs.at(1, x, y), corner->rise.in(), 1e-4 * (1 + corner->rise.in()));
    bad += !near(std::hypot(run, corner->rise.in()), corner->length.in(), 1e-6);
    bad += !near(corner->rise.in(), corner->roofs[1].run.in() * in.pitch_other.tan(), 1e-6);
  }
  CHECK(bad == 0);
}

TEST_CASE("jacks and purlins laid out in space are cut where their marks say", "[property][corner][roof]") {
  Random random(0x3a7);
  int bad = 0, cuts_seen = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const CornerInput in = random_corner_input(random);
    const auto corner = solve_corner(in);
    if (!corner) continue;
    const double eave = in.eave_angle.rad(), plan = corner->roofs[0].plan.rad();
    const Vec3 hip{std::cos(plan), std::sin(plan), 0};
    for (const CornerCut& cut : corner_cuts(in, *corner)) {
      const bool jack = cut.name == CornerCutName::kJack;
      if (!jack && cut.name != CornerCutName::kPurlinSquare && cut.name != CornerCutName::kPurlinPlumb) continue;
      ++cuts_seen;
      // The roof's own directions: level up it, level along its eave, up.
      const Vec3 up{0, 0, 1};
      const Vec3 in_plan = cut.roof == 0 ? Vec3{0, 1, 0} : Vec3{std::sin(eave), -std::cos(eave), 0};
      const Vec3 along_eave = cut.roof == 0 ? Vec3{1, 0, 0} : Vec3{std::cos(eave), std::sin(eave), 0};
      const Slope& pitch = cut.roof == 0 ? in.pitch : in.pitch_other;
      const Vec3 slope = unit(in_plan + pitch.tan() * up), out = unit(up - pitch.tan() * in_plan);
      // Axes of the timber, as a hand would turn it: along, the two directions of its section.
      const bool plumb = cut.name == CornerCutName::kPurlinPlumb;
      const Vec3 along = jack ? slope : along_eave;
      const Vec3 deep = plumb ? up : out, wide = jack ? along_eave : plumb ? in_plan : slope;
      const double b = cut.section.breadth.in() / 2, d = cut.section.depth.in() / 2;
      std::array<double, 4> crossed{};
      double low = 1e300, high = -1e300;
      for (std::size_t k = 0; k < 4; ++k) {
        const Vec3 from = (k % 2 == 0 ? b : -b) * wide + (k < 2 ? d : -d) * deep;
        crossed[k] = crossing({from, along}, hip);
        low = std::min(low, crossed[k]), high = std::max(high, crossed[k]);
      }
      // The same four marks, whichever end and hand: sorted, from the long point.
      std::array<double, 4> marks{};
      const auto reported = arris_marks(cut);
      for (std::size_t k = 0; k < 4; ++k) marks[k] = reported[k].in();
      std::sort(marks.begin(), marks.end());
      std::sort(crossed.begin(), crossed.end());
      std::array<double, 4> mirrored{};
      for (std::size_t k = 0; k < 4; ++k) mirrored[k] = high - crossed[3 - k], crossed[k] -= low;
      double off = 0, off_mirrored = 0;
      for (std::size_t k = 0; k < 4; ++k) {
        off = std::max(off, std::fabs(marks[k] - crossed[k]));
        off_mirrored = std::max(off_mirrored, std::fabs(marks[k] - mirrored[k]));
      }
      bad += !(std::min(off, off_mirrored) <= 1e-7 * (1 + high - low));
    }
  }
  CHECK(cuts_seen > 4 * property_cases());
  CHECK(bad == 0);
}

TEST_CASE("a jack is cut off its length on top, or plumb with the blade tilted by the plan angle",
          "[property][corner][roof]") {
  Random random(0x71);
  int bad = 0;
  for (int i = 0; i < property_cases() / 10; ++i) {
    const CornerInput in = random_corner_input(random);
    const auto corner = solve_corner(in);
    if (!corner) continue;
    for (const CornerCut& cut : corner_cuts(in, *corner)) {
      const CornerRoof& roof = corner->roof(cut.roof);
      const CutLine top = cut_line(cut, Face::kTop), side = cut_line(cut, Face::kNear);
      if (cut.name == CornerCutName::kJack) {
        bad += !near(top.from_length.deg(), roof.jack_side.deg(), 1e-7);
        bad += !near(side.off_square.deg(), roof.slope.deg(), 1e-7);
        bad += !near(side.tilt.deg(), roof.jack_tilt.deg(), 1e-7);
        bad += !near(side.tilt.deg(), roof.plan.deg(), 1e-7);
      } else if (cut.name == CornerCutName::kPeakCheek || cut.name == CornerCutName::kFootCheek) {
        bad += !near(side.off_square.deg(), corner->slope.deg(), 1e-7);  // plumb on the hip's upright side
      } else if (cut.name == CornerCutName::kPurlinSquare && roof.meets) {
        // In the roof's plane the hip's line is one: what it makes with the jack and with the purlin is a right angle.
        bad += !near(top.from_length.deg() + roof.jack_side.deg(), 90, 1e-7);
      } else if (cut.name == CornerCutName::kPurlinPlumb) {
        bad += !near(side.off_square.deg(), 0, 1e-7);
        bad += !near(std::sin(top.from_length.rad()), std::sin(roof.plan.rad()), 1e-9);
      }
    }
  }
  CHECK(bad == 0);
}

TEST_CASE("mitred boards meet: what is cut off one is as far from both outer faces", "[property][corner][roof]") {
  Random random(0xb0d);
  int bad = 0;
  for (int i = 0; i < property_cases() / 10; ++i) {
    const CornerInput in = random_corner_input(random);
    const auto corner = solve_corner(in);
    if (!corner) continue;
    const CornerPlanes planes = corner_planes(in);
    for (const CornerCut& cut : corner_cuts(in, *corner)) {
      if (cut.name < CornerCutName::kFasciaSquare) continue;
      const std::size_t r = cut.roof == 0 ? 0 : 1;
      const Placement at = eave_axes(planes, cut.roof, cut.name != CornerCutName::kFasciaPlumb);
      const Vec3 normal = to_world_direction(at, cut.plane.normal);
      const Vec3 any{random.real(-1, 1), random.real(-1, 1), random.real(-1, 1)};
      const Vec3 on = any - dot(any, normal) * normal;
      const Heights roofs(in);
      const auto depth = [&](std::size_t k) {  // under the outer face of a roof's board
        const Vec3 up{0, 0, 1}, level = k == 0 ? Vec3{0, 1, 0} : Vec3{std::sin(roofs.eave), -std::cos(roofs.eave), 0};
        const double tan = k == 0 ? roofs.own : roofs.other;
        if (cut.name == CornerCutName::kBoards) return dot(on, unit(up - tan * level));
        return cut.name == CornerCutName::kFasciaPlumb ? dot(on, level) : dot(on, unit(level + tan * up));
      };
      bad += !near(depth(r), depth(1 - r), 1e-9);
      bad += !(cut.plane.normal.x > 0);
    }
  }
  CHECK(bad == 0);
}

TEST_CASE("any corner ends in numbers or in a reason", "[property][corner][roof]") {
  Random random(0xf0);
  int bad = 0, refused = 0;
  const auto any_length = [&] {
    const int kind = static_cast<int>(random.whole(0, 9));
    if (kind == 0) return Length{};
    if (kind == 1) return Length{random.whole(-Length::kLimit * 2, Length::kLimit * 2)};
    if (kind == 2) return Length{random.whole(0, 1000)};
    return Length::from_inches(random.real(0.5, 400));
  };
  const auto any_slope = [&] {
    const int kind = static_cast<int>(random.whole(0, 9));
    if (kind == 0) return Slope::of_angle(Angle{random.whole(-1, 90'000'000'001)});
    if (kind == 1) return Slope::ratio(any_length(), any_length());
    if (kind == 2) return Slope::of_angle(Angle{90'000'000'000 - random.whole(1, 9)});
    return Slope::in_12(Length::from_inches(random.real(0.01, 60)));
  };
  for (int i = 0; i < property_cases(); ++i) {
    CornerInput in = random_corner_input(random);
    if (random.whole(0, 1) == 0) in.eave_angle = Angle{random.whole(-1, 181'000'000'000)};
    in.pitch = any_slope();
    in.pitch_other = any_slope();
    for (Length CornerInput::*at : {&CornerInput::run, &CornerInput::hip_breadth, &CornerInput::hip_depth,
                                    &CornerInput::jack_depth, &CornerInput::seat, &CornerInput::spacing})
      if (random.whole(0, 2) == 0) in.*at = any_length();
    const auto corner = solve_corner(in);
    if (!corner) {
      ++refused;
      bad += corner.error().where.empty();
      continue;
    }
    const auto finite = [&](double v) { bad += !std::isfinite(v); };
    finite(corner->tan), finite(corner->cos), finite(corner->sin), finite(corner->notch_share);
    for (const CornerRoof& r : corner->roofs) {
      finite(r.fall);
      bad += r.jacks < 0 || r.plan <= Angle{} || r.plan >= Angle::degrees(180);
      bad += r.jack_side < Angle{} || r.jack_side > Angle::degrees(180);
    }
    for (const CornerCut& cut : corner_cuts(in, *corner)) {
      for (const double v : {cut.plane.normal.x, cut.plane.normal.y, cut.plane.normal.z}) finite(v);
      for (const Face face : {Face::kTop, Face::kNear, Face::kBottom, Face::kFar}) {
        const CutLine line = cut_line(cut, face);
        bad += line.off_square < Angle{} || line.off_square > Angle::degrees(90) || line.tilt > Angle::degrees(90);
        bad += on_square(line.off_square).number > Length::inches(12);
      }
    }
  }
  CHECK(refused > property_cases() / 10);
  CHECK(refused < property_cases() * 9 / 10);
  CHECK(bad == 0);
}
