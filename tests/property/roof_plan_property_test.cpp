// Laws of roof planes on many random plans, of any pitches, plates and overhangs: water runs down a plane to its own
// tail or to a line that takes it, planes agree along the line that they share, together they cover the plan once, and
// over a convex plan the roof is the lowest of its planes. What is known here of a plane is its wall, pitch and plate.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <string>

#include "random.h"
#include "roof/plan/solve_roof.h"
#include "roof_plans.h"

using namespace bentbook;

namespace {

/// A plan that can be solved.
RoofShape some_shape(Random& random, RandomRoof wanted) {
  for (;;)
    if (auto shape = solve_shape(random_roof(random, wanted))) return *std::move(shape);
}

Vec2 some_place(Random& random, const Polygon2& outline) {
  Vec2 lo = outline[0], hi = lo;
  for (const Vec2& p : outline) {
    lo = {std::min(lo.x, p.x), std::min(lo.y, p.y)};
    hi = {std::max(hi.x, p.x), std::max(hi.y, p.y)};
  }
  return {random.real(lo.x, hi.x), random.real(lo.y, hi.y)};
}

bool has_break(const RoofShape& shape) {
  return std::any_of(shape.lines.begin(), shape.lines.end(),
                     [](const RoofLine& line) { return line.kind == RoofLineKind::kBreak; });
}

bool is_convex(const Polygon2& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i], b = outline[(i + 1) % outline.size()], c = outline[(i + 2) % outline.size()];
    if (cross(b - a, c - b) < 0) return false;
  }
  return true;
}

double distance(const RoofLine& line, Vec2 p) {
  const Vec2 a = flat(line.a), d = flat(line.b) - a;
  const double t = std::clamp(dot(p - a, d) / dot(d, d), 0.0, 1.0);
  return norm(p - (a + t * d));
}

/// Whether a side's plane falls toward its line with another: a valley, or a hip beyond which the roof falls steeper
/// still, as between a flat and a steep plane at a blunt corner.
bool takes_water(const RoofShape& shape, const RoofLine& line, int side) {
  if ((line.left != side && line.right != side) || line.kind > RoofLineKind::kValley) return false;
  const Vec2 left = left_of(unit(flat(line.b) - flat(line.a)));
  return shape.planes[static_cast<std::size_t>(side)].fall(line.left == side ? left : -1.0 * left) < 0;
}

/// The plane over a place in plan.
const RoofPlane* plane_over(const RoofShape& shape, Vec2 p) {
  const RoofPlane* found = nullptr;
  double deepest = -1e-6;
  for (std::size_t i = 0; i < shape.faces.size(); ++i)
    if (!shape.faces[i].outline.empty())
      if (const double depth = depth_inside(shape.faces[i].outline, p); depth > deepest) {
        deepest = depth;
        found = &shape.planes[i];
      }
  return found;
}

/// The height of the lowest plane.
double lowest(const RoofShape& shape, Vec2 p) {
  double least = 1e300;
  for (const RoofPlane& plane : shape.planes)
    if (!plane.gable) least = std::min(least, plane.height(p));
  return least;
}

}  // namespace

TEST_CASE("Planes agree along the line that they share", "[roofplan]") {
  Random random(1);
  for (int i = 0; i < property_cases() / 100; ++i) {
    const RoofShape shape = some_shape(random, {false, true, i % 2 == 0});
    for (const RoofLine& line : shape.lines)
      for (const int side : {line.left, line.right}) {
        if (side < 0 || shape.planes[static_cast<std::size_t>(side)].gable) continue;
        const RoofPlane& plane = shape.planes[static_cast<std::size_t>(side)];
        for (const Vec3& p : {line.a, line.b})
          if (std::fabs(plane.height({p.x, p.y}) - p.z) > 1e-5) FAIL("roof " << i << ", side " << side);
      }
  }
}

TEST_CASE("The planes cover the plan once", "[roofplan]") {
  Random random(2);
  for (int i = 0; i < property_cases() / 100; ++i) {
    const RoofShape shape = some_shape(random, {false, true, i % 2 == 0});
    double sum = 0;
    for (const RoofFace& face : shape.faces) sum += face.plan_area;
    const double whole = area_of(shape.eaves);
    if (std::fabs(sum - whole) > 1e-6 * whole) FAIL("roof " << i << ": " << sum << " of " << whole);
    for (int k = 0; k < 20; ++k) {
      const Vec2 p = some_place(random, shape.eaves);
      if (std::fabs(depth_inside(shape.eaves, p)) < 1e-3) continue;
      int covers = 0, borders = 0;
      for (const RoofFace& face : shape.faces) {
        if (face.outline.empty()) continue;
        const double depth = depth_inside(face.outline, p);
        if (std::fabs(depth) < 1e-3) ++borders;
        if (depth > 0) ++covers;
      }
      if (borders == 0 && covers != (depth_inside(shape.eaves, p) > 0 ? 1 : 0)) FAIL("roof " << i << ": " << covers);
    }
  }
}

TEST_CASE("Water runs straight down its plane to a tail, into a valley or over a blunt hip", "[roofplan]") {
  Random random(3);
  for (int i = 0; i < property_cases() / 500; ++i) {
    const RoofShape shape = some_shape(random, {false, false, i % 2 == 0});
    if (has_break(shape)) continue;
    for (std::size_t side = 0; side < shape.faces.size(); ++side) {
      const RoofPlane& plane = shape.planes[side];
      const Vec2 start = some_place(random, shape.faces[side].outline);
      if (depth_inside(shape.faces[side].outline, start) < 1e-3) continue;
      constexpr double kStep = 0.25;
      Vec2 p = start;
      while (depth_inside(shape.faces[side].outline, p) > 0) p = p - kStep * plane.in;
      bool ends = std::fabs(depth_inside(shape.eaves, p)) < 2 * kStep;
      for (const RoofLine& line : shape.lines)
        ends = ends || (takes_water(shape, line, static_cast<int>(side)) && distance(line, p) < 2 * kStep);
      if (!ends) FAIL("roof " << i << ", side " << side);
    }
  }
}

TEST_CASE("Over a convex plan the roof is the lowest of its planes", "[roofplan]") {
  Random random(5);
  int seen = 0;
  for (int i = 0; i < property_cases() / 50; ++i) {
    const RoofShape shape = some_shape(random, {false, i % 3 == 0, i % 2 == 0});
    if (!is_convex(shape.eaves)) continue;
    ++seen;
    for (int k = 0; k < 20; ++k) {
      const Vec2 p = some_place(random, shape.eaves);
      if (depth_inside(shape.eaves, p) < 1e-3) continue;
      const RoofPlane* over = plane_over(shape, p);
      if (over == nullptr || std::fabs(over->height(p) - lowest(shape, p)) > 1e-5) FAIL("roof " << i);
    }
  }
  CHECK(seen > property_cases() / 500);
}

TEST_CASE("Any plan ends in a roof of whole numbers or in a refusal that names its field", "[roofplan]") {
  Random random(6);
  for (int i = 0; i < property_cases() / 100; ++i) {
    RoofPlan plan = random_roof(random, {false, true, i % 2 == 0});
    // Slips of the finger.
    PlanSide& side = plan.sides[static_cast<std::size_t>(random.whole(0, static_cast<int>(plan.sides.size()) - 1))];
    switch (random.whole(0, 7)) {
      case 0:
        side.x = Length::inches(random.whole(-4000, 4000));
        break;
      case 1:
        side.y = {random.whole(-Length::kLimit, Length::kLimit)};
        break;
      case 2:
        side.pitch = Slope::of_angle(Angle{random.whole(-100, 100) * Angle::kPerDegree});
        break;
      case 3:
        side.overhang = Length::inches(random.whole(-20, 300));
        break;
      case 4:
        side.plate_height = Length::inches(random.whole(-3000, 3000));
        break;
      case 5:
        plan.spacing = Length::inches(random.whole(0, 12));
        break;
      case 6:
        plan.hip = {Length::inches(random.whole(0, 60)), Length::inches(random.whole(0, 60))};
        break;
      default:
        plan.heel = Length::inches(random.whole(-2, 30));
        break;
    }
    const auto roof = solve_roof(plan);
    if (!roof) {
      if (roof.error().where.empty()) FAIL("roof " << i);
      continue;
    }
    for (const RoofTimber& t : roof->timbers) {
      const double sum = t.length + t.at.origin.x + t.at.origin.y + t.at.origin.z + t.run + t.line_length +
                         t.shortening + t.drop + t.shift + t.seat.depth + t.seat.heel;
      if (!std::isfinite(sum) || !(t.length > 0)) FAIL("roof " << i << ", " << t.mark);
    }
  }
}
