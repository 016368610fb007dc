// Closed forms against vectors, on many random roofs. The constructions here share no formula with the core: they lay
// planes and lines, cut them with each other and measure.

#include <array>
#include <catch_amalgamated.hpp>
#include <cmath>

#include "geometry/cut_plane.h"
#include "random.h"
#include "roof/corner/corner.h"
#include "roof/rafter.h"

using namespace bentbook;

namespace {

constexpr double kPi = 3.14159265358979323846;

double angle_between(Vec3 a, Vec3 b) { return std::atan2(norm(cross(a, b)), dot(a, b)); }
bool near(double a, double b, double tolerance) { return std::fabs(a - b) <= tolerance; }

/// Two roof planes over an eave corner at the origin; inside the plan both rise.
struct Corner {
  double eave, own, other;
  Vec3 own_inward, other_inward;  // level, square to each eave, into the roof
  Vec3 own_normal, other_normal;
  Vec3 hip;  // up along the line where they meet
  Corner(double w, double m, double a) : eave(w), own(m), other(a) {
    own_inward = {0, 1, 0};
    other_inward = {std::sin(w), -std::cos(w), 0};
    own_normal = unit({-m * own_inward.x, -m * own_inward.y, 1});
    other_normal = unit({-a * other_inward.x, -a * other_inward.y, 1});
    hip = unit(cross(own_normal, other_normal));
    if (hip.z < 0) hip = -1.0 * hip;
  }
  [[nodiscard]] double own_height(Vec3 p) const { return own * dot(p, own_inward); }
  [[nodiscard]] double other_height(Vec3 p) const { return other * dot(p, other_inward); }
};

Corner random_corner(Random& random) {
  return {random.real(25, 155) * kPi / 180, random.real(2, 24) / 12, random.real(2, 24) / 12};
}

}  // namespace

TEST_CASE("hips: plan, slope, backing and jacks against roof planes", "[property][corner]") {
  Random random(0x5ea7);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const Corner c = random_corner(random);
    const double plan = hip_plan_angle(c.eave, c.own, c.other);
    const Vec3 level{c.hip.x, c.hip.y, 0}, across = cross({0, 0, 1}, level);
    bad += !near(plan, std::atan2(c.hip.y, c.hip.x), 1e-9);
    bad += !near(hip_slope(c.own, plan), angle_between(c.hip, level), 1e-9);
    // Backing: in the section square to the hip, the roof's trace against level.
    const Vec3 trace = cross(c.own_normal, c.hip);
    const double backing = angle_between(trace, across);
    bad += !near(std::fabs(backing_angle(c.own, plan)), std::min(backing, kPi - backing), 1e-9);
    // A jack climbs straight up its roof; its top lies in the roof's plane.
    const Vec3 jack = unit({0, 1, c.own});
    const double side_cut = angle_between(jack, c.hip);
    bad += !near(std::fabs(std::tan(jack_side_cut(c.own, plan))), std::fabs(std::tan(side_cut)),
                 1e-9 * (1 + std::fabs(std::tan(side_cut))));
    // Two jacks a spacing apart end on the hip: their lengths differ by the jack difference.
    const double spacing = random.real(8, 48), first = spacing * c.hip.y / c.hip.x;
    const double length = std::hypot(first, c.own * first) * (first < 0 ? -1 : 1);
    bad += !near(jack_difference(spacing, c.own, plan), length, 1e-7 * (1 + std::fabs(length)));
  }
  CHECK(bad == 0);
}

TEST_CASE("valleys use the outside angle", "[property][corner]") {
  Random random(0xa11e);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const double inside = random.real(205, 335) * kPi / 180;
    const Corner c(inside, random.real(2, 24) / 12, random.real(2, 24) / 12);
    const double plan = hip_plan_angle(2 * kPi - inside, c.own, c.other);
    // From the own eave prolonged past the corner.
    bad += !near(plan, angle_between({-1, 0, 0}, {c.hip.x, c.hip.y, 0}), 1e-9);
    bad += !near(hip_slope(c.own, plan), angle_between(c.hip, {c.hip.x, c.hip.y, 0}), 1e-9);
  }
  CHECK(bad == 0);
}

TEST_CASE("an unbacked hip, shifted and dropped, touches both roofs with its arrises", "[property][corner]") {
  Random random(0xd70b);
  int bad = 0, tried = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const Corner c = random_corner(random);
    const double plan = hip_plan_angle(c.eave, c.own, c.other);
    if (plan > kPi / 2 - 0.02 || c.eave - plan > kPi / 2 - 0.02) continue;  // a roof that rises away from the hip line
    ++tried;
    const double thickness = random.real(1, 10);
    const double drop = hip_drop(thickness, c.eave, c.own, c.other);
    const double shift = hip_shift(thickness, c.eave, c.own, c.other);
    const Vec3 to_own = unit(cross(c.hip, {0, 0, 1}));  // level, square to the hip, to the own eave's side
    const Vec3 axis = random.real(10, 200) * c.hip;
    for (const double half : {thickness / 2, -thickness / 2}) {
      const Vec3 arris = axis + (shift + half) * to_own;
      const double roof = std::min(c.own_height(arris), c.other_height(arris));
      bad += !near(arris.z - drop, roof, 1e-7);
    }
  }
  CHECK(tried > property_cases() / 2);
  CHECK(bad == 0);
}

TEST_CASE("a jack's cut as one plane: laid out on top, or plumb with the blade tilted", "[property][corner][cut]") {
  Random random(0x7ac6);
  int bad = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const Corner c = random_corner(random);
    const double plan = hip_plan_angle(c.eave, c.own, c.other);
    // Timber axes in the world: x up the roof, y level, z out of the roof.
    const Vec3 x = unit({0, 1, c.own}), z = c.own_normal, y = cross(z, x);
    const Vec3 plumb = cross({0, 0, 1}, c.hip);  // normal of the upright plane through the hip
    const Vec3 n = unit(plumb);
    const CutPlane cut{{dot(n, x), dot(n, y), dot(n, z)}, 0};
    const BladeAngles top = blade_angles(cut, Face::kTop), side = blade_angles(cut, Face::kNear);
    bad += !near(std::fabs(std::tan(top.swing) * std::tan(jack_side_cut(c.own, plan))), 1, 1e-8);
    bad += !near(std::fabs(std::tan(side.swing)), c.own, 1e-8);
    bad += !near(std::fabs(side.tilt), std::fabs(plan > kPi / 2 ? kPi - plan : plan), 1e-8);
  }
  CHECK(bad == 0);
}

namespace {

struct Vec2 {
  double x = 0, y = 0;
};
Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
Vec2 operator*(double k, Vec2 a) { return {k * a.x, k * a.y}; }
double size(Vec2 a) { return std::hypot(a.x, a.y); }

struct Line2 {
  Vec2 at, along;
};
Vec2 meet(Line2 a, Line2 b) {
  const double d = a.along.x * b.along.y - a.along.y * b.along.x;
  const Vec2 to = b.at - a.at;
  return a.at + ((to.x * b.along.y - to.y * b.along.x) / d) * a.along;
}
Line2 upright(double x) { return {{x, 0}, {0, 1}}; }
Line2 level(double y) { return {{0, y}, {1, 0}}; }
double distance(Vec2 p, Line2 line) {
  const Vec2 d = p - line.at;
  return std::fabs(d.x * line.along.y - d.y * line.along.x) / size(line.along);
}

RafterInput random_roof(Random& random) {
  RafterInput input;
  const auto inches = [&](double low, double high) { return Length::from_inches(random.real(low, high)); };
  input.span = inches(120, 480);
  input.section.depth = inches(3.5, 14);
  input.left.pitch = Slope::in_12(inches(3, 20));
  input.left.seat = inches(1, 5);
  input.left.overhang = inches(24, 48);
  input.peak = static_cast<PeakKind>(random.whole(0, 2));
  input.ridge_thickness = inches(0.75, 8);
  input.beam_breadth = inches(3, 12);
  input.beam_seat = {input.beam_breadth.count / 2 * random.whole(1, 9) / 10};
  input.tail = static_cast<TailCut>(random.whole(0, 2));
  input.tail_plumb = inches(1, 3);
  return input;
}

const Mark* find(const FixedList<Mark, 6>& marks, MarkName name) {
  for (const Mark& m : marks)
    if (m.name == name) return &m;
  return nullptr;
}

/// The rafter laid out with lines: how many of the answers differ.
int differences(const RafterInput& input, const Rafter& r) {
  constexpr double kClose = 1e-6;
  int bad = 0;
  const auto same = [&](Length answer, double built) { bad += !near(answer.in(), built, kClose); };
  const Vec2 up{input.left.pitch.run.in(), input.left.pitch.rise.in()};
  const double rate = size(up), depth = input.section.depth.in(), seat = input.left.seat.in();
  const double run = input.span.in() / 2, overhang = input.left.overhang.in();
  const Line2 bottom{{seat, 0}, up};
  const Line2 top{Vec2{seat, 0} + (depth / rate) * Vec2{-up.y, up.x}, up};
  const double half = input.peak == PeakKind::kRidgeBoard ? input.ridge_thickness.in() / 2 : 0;
  const Vec2 ridge = meet(top, upright(run)), wall = meet(top, upright(0));
  const Vec2 tip = meet(top, upright(run - half)), low_tip = meet(bottom, upright(run - half));
  const Vec2 tail = meet(top, upright(-overhang));
  same(r.line_length, size(ridge - wall));
  same(r.ridge_deduction, size(ridge - tip));
  same(r.tip_to_tip, size(tip - tail));
  same(r.rise, ridge.y - wall.y);
  same(r.heel, wall.y);
  same(r.plumb_depth, size(wall - meet(bottom, upright(0))));
  same(r.birdsmouth_depth, distance({0, 0}, bottom));
  same(r.peak_height, ridge.y);
  same(r.rafter_top, tip.y);
  same(find(r.marks_top, MarkName::kWallLine)->from_peak, size(tip - wall));
  same(find(r.marks_top, MarkName::kTail)->from_peak, size(tip - tail));
  same(find(r.marks_bottom, MarkName::kSeatEnd)->from_peak, size(low_tip - meet(bottom, level(0))));
  same(find(r.marks_bottom, MarkName::kWallLine)->from_peak, size(low_tip - meet(bottom, upright(0))));
  // Squared across at the top tip, the bottom corner lies back by the setback.
  same(r.peak_setback, size(low_tip - meet(bottom, {tip, {-up.y, up.x}})));
  Vec2 foot = meet(bottom, upright(-overhang));
  if (input.tail == TailCut::kSquare) {
    foot = meet(bottom, {tail, {-up.y, up.x}});
    same(find(r.marks_bottom, MarkName::kTail)->from_peak, size(low_tip - foot));
  } else if (input.tail == TailCut::kLevelAndPlumb) {
    const double y = tail.y - input.tail_plumb.in();
    foot = meet(bottom, level(y));
    same(find(r.marks_bottom, MarkName::kTailLevel)->from_peak, size(low_tip - foot));
    const Vec2 corner{tail.x, y};
    if (corner.x * up.x + corner.y * up.y < foot.x * up.x + foot.y * up.y) foot = corner;
  }
  double ends = std::min({foot.x * up.x + foot.y * up.y, tail.x * up.x + tail.y * up.y}) / rate;
  same(r.longest, (tip.x * up.x + tip.y * up.y) / rate - ends);
  if (input.peak == PeakKind::kOverBeam) {
    const double face = run - input.beam_breadth.in() / 2, beam_seat = input.beam_seat.in();
    const Vec2 seat_end = meet(bottom, upright(face + beam_seat));
    same(r.ridge_top, seat_end.y);
    same(r.beam_notch_depth, distance({face, seat_end.y}, bottom));
    same(find(r.marks_top, MarkName::kBeamPlumb)->from_peak, size(tip - meet(top, upright(face))));
    same(find(r.marks_bottom, MarkName::kBeamSeat)->from_peak, size(low_tip - seat_end));
  }
  return bad;
}

/// Area by the outline's corners; the parts laid out by hand must add up to it.
double area(const FixedList<XY, 16>& outline) {
  double twice = 0;
  for (int i = 0; i < outline.count; ++i) {
    const XY a = outline[i], b = outline[(i + 1) % outline.count];
    twice += a.x * b.y - a.y * b.x;
  }
  return twice / 2;
}

}  // namespace

TEST_CASE("every answer of a rafter against lines laid out and measured", "[property][rafter]") {
  Random random(0x2af7e2);
  int bad = 0, solved = 0;
  for (int i = 0; i < property_cases(); ++i) {
    const RafterInput input = random_roof(random);
    const auto pair = solve_rafters(input);
    if (!pair) continue;  // a seat or tail that this timber has no room for
    ++solved;
    bad += differences(input, pair->left) != 0;
  }
  CHECK(solved > property_cases() / 2);
  CHECK(bad == 0);
}

TEST_CASE("the outline turns counterclockwise and holds the timber less its notches", "[property][rafter]") {
  Random random(0x0071);
  int bad = 0, solved = 0;
  for (int i = 0; i < property_cases() / 10; ++i) {
    RafterInput input = random_roof(random);
    input.tail = TailCut::kPlumb;
    input.peak = PeakKind::kAgainstEachOther;
    const auto pair = solve_rafters(input);
    if (!pair) continue;
    ++solved;
    const Rafter& r = pair->left;
    // A parallelogram less the bird's mouth, a right triangle with the seat as one leg.
    const double stick = (r.run + r.overhang).in() * r.plumb_depth.in();
    const double mouth = r.seat.in() * (r.plumb_depth - r.heel).in() / 2;
    bad += !near(area(r.outline), stick - mouth, 1e-5);
  }
  CHECK(solved > property_cases() / 30);
  CHECK(bad == 0);
}

TEST_CASE("unlike sides: what is held stays, and the roof closes", "[property][rafter]") {
  Random random(0x0dd);
  int bad = 0, solved = 0;
  for (int i = 0; i < property_cases(); ++i) {
    RafterInput input = random_roof(random);
    input.peak = PeakKind::kAgainstEachOther;
    input.tail = TailCut::kPlumb;
    input.alike = false;
    input.right = input.left;
    input.right.pitch = Slope::in_12(Length::from_inches(random.real(3, 20)));
    input.right.plate_height = Length::from_inches(random.real(-24, 24));
    input.right.seat = Length::from_inches(random.real(1, 4));
    input.held = static_cast<Held>(random.whole(0, 2));
    const auto pair = solve_rafters(input);
    if (!pair) continue;
    ++solved;
    const Rafter &l = pair->left, &r = pair->right;
    const double floor = l.plate_height.in() + l.peak_height.in();
    bad += !near(floor, r.plate_height.in() + r.peak_height.in(), 1e-6);
    bad += !near((l.run + r.run).in(), input.span.in(), 1e-6);
    if (input.held != Held::kRidgeAndHeels) bad += r.plate_height != input.right.plate_height;
    if (input.held != Held::kRidgeAndPlates) bad += !near(r.seat.in(), input.right.seat.in(), 1e-6);
    if (input.held != Held::kHeelsAndPlates) bad += pair->ridge_off_centre != Length{};
  }
  CHECK(solved > property_cases() / 5);
  CHECK(bad == 0);
}
