// Laws of dormers on many random roofs. What is known here of a roof and a dormer is what the plan says: walls,
// pitches, plates, heel; heights and lengths follow from these alone.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>
#include <vector>

#include "random.h"
#include "roof/plan/roof_edits.h"
#include "roof/plan/solve_roof.h"
#include "roof_plans.h"

using namespace bentbook;

namespace {

/// A dormer by what its plan says, in its side's own axes: u along the wall, v inward.
struct Told {
  double main_tan, main_plate, heel, tan, plate, half, face, middle, out;
  bool gable;
  [[nodiscard]] double roof(double v) const { return main_plate + heel + main_tan * v; }
  [[nodiscard]] double own(double u, double v) const {
    return plate + heel + tan * (gable ? half - std::fabs(u - middle) : v - face);
  }
};

Told told(const RoofPlan& plan, const Dormer& d) {
  const PlanSide& side = plan.sides[static_cast<std::size_t>(d.side)];
  return {side.pitch.tan(),
          side.plate_height.in(),
          plan.heel.in(),
          d.pitch.tan(),
          side.plate_height.in() + d.plate_height.in(),
          d.width.in() / 2,
          d.face.in(),
          d.centre.in(),
          d.overhang.in(),
          d.kind == DormerKind::kGable};
}

struct Dormered {
  RoofPlan plan;
  RoofSolution roof;
};

/// What is said would do is put in where there is no room; a roof that no cure mends is passed over.
Dormered some_dormered(Random& random, int& cured, int& wrong) {
  for (;;) {
    RoofPlan plan = dormered_roof(random, random.whole(0, 1) != 0);
    if (plan.dormers.empty() || !solve_shape(plan)) continue;
    for (int tries = 0; tries < 12; ++tries) {
      RoofSolution roof;
      auto shape = solve_shape(plan);
      auto dormers = solve_dormers(plan, *shape);
      if (dormers) {
        roof.shape = *std::move(shape);
        roof.dormers = *std::move(dormers);
        add_dormers(roof.dormers, roof.shape);
        return {std::move(plan), std::move(roof)};
      }
      const Error error = dormers.error();
      if (!take_cure(plan, error)) break;
      if (error.code == ErrorCode::kTooSmall) continue;
      // What it says of room is all that it wants.
      ++cured;
      auto again = solve_dormers(plan, *solve_shape(plan));
      if (!again && again.error().where.substr(0, 10) == error.where.substr(0, 10)) ++wrong;
    }
  }
}

const RoofLine& line_of(const RoofShape& shape, const DormerShape& d, int i) {
  return shape.lines[static_cast<std::size_t>(d.line) + static_cast<std::size_t>(i)];
}

}  // namespace

TEST_CASE("every valley of a dormer lies in both planes, and has its triangle's length", "[property][dormer]") {
  Random random(71);
  int bad = 0, cured = 0, wrong = 0, gables = 0;
  for (int n = 0; n < 2000; ++n) {
    const Dormered it = some_dormered(random, cured, wrong);
    for (const DormerShape& d : it.roof.dormers) {
      const Told t = told(it.plan, it.plan.dormers[static_cast<std::size_t>(d.dormer)]);
      const RoofPlane& side = it.roof.shape.planes[static_cast<std::size_t>(d.side)];
      const auto u = [&](Vec3 p) { return dot(side.along, flat(p) - side.from); };
      if (!t.gable) {
        for (const Vec3 p : {line_of(it.roof.shape, d, 0).a, line_of(it.roof.shape, d, 0).b}) {
          bad += std::fabs(p.z - t.roof(side.depth(flat(p)))) > 1e-6;
          bad += std::fabs(p.z - t.own(u(p), side.depth(flat(p)))) > 1e-6;
        }
        continue;
      }
      ++gables;
      const double rise = t.tan * t.half, meets = (t.plate - t.main_plate + rise) / t.main_tan;
      bad += std::fabs(d.meets - meets) > 1e-6;
      bad += std::fabs(ridge_length(d) - (meets - t.face + t.out)) > 1e-6;
      bad += std::fabs(norm(line_of(it.roof.shape, d, 0).b - line_of(it.roof.shape, d, 0).a) - ridge_length(d)) > 1e-6;
      for (const int i : {1, 2}) {
        const RoofLine& valley = line_of(it.roof.shape, d, i);
        for (const Vec3 p : {valley.a, valley.b, 0.3 * valley.a + 0.7 * valley.b}) {
          bad += std::fabs(p.z - t.roof(side.depth(flat(p)))) > 1e-6;
          bad += std::fabs(p.z - t.own(u(p), 0)) > 1e-6;
        }
        // Half the width and overhang across, and as far in as the roof takes to rise as much: per unit of width.
        const double in = t.tan / t.main_tan, slant = std::sqrt(1 + in * in + t.tan * t.tan);
        bad += std::fabs(norm(valley.b - valley.a) - (t.half + t.out) * slant) > 1e-6;
      }
    }
  }
  CHECK(bad == 0);
  CHECK(wrong == 0);
  CHECK(cured > 300);
  CHECK(gables > 1000);
}

TEST_CASE("a dormer's planes and the roof with its openings cover the plan once, the dormer over the roof",
          "[property][dormer]") {
  Random random(72);
  int bad = 0, cured = 0, wrong = 0, over = 0;
  for (int n = 0; n < 500; ++n) {
    const Dormered it = some_dormered(random, cured, wrong);
    const RoofShape& shape = it.roof.shape;
    for (const DormerShape& near : it.roof.dormers) {
      const Polygon2& outline = shape.faces[static_cast<std::size_t>(near.side)].outline;
      const RoofPlane& side = shape.planes[static_cast<std::size_t>(near.side)];
      for (int k = 0; k < 40; ++k) {
        const double u = near.middle + random.real(-1.5, 1.5) * near.half, v = random.real(-0.1, 1.2) * near.past;
        const Vec2 p = side.from + u * side.along + v * side.in;
        if (depth_inside(outline, p) < 1e-6) continue;
        int covers = 1;
        bool edge = false;
        for (const Polygon2& hole : shape.faces[static_cast<std::size_t>(near.side)].holes) {
          const double depth = depth_inside(hole, p);
          edge = edge || std::fabs(depth) < 1e-6;
          if (depth > 0) covers = 0;
        }
        for (const DormerShape& d : it.roof.dormers) {
          if (d.side != near.side || std::fabs(u - d.middle) > d.half || v < d.face) continue;
          for (int plane = d.plane; plane < d.plane + (d.gable ? 2 : 1); ++plane) {
            const double depth = depth_inside(shape.faces[static_cast<std::size_t>(plane)].outline, p);
            edge = edge || std::fabs(depth) < 1e-6;
            if (depth <= 0) continue;
            ++covers;
            ++over;
            bad += shape.planes[static_cast<std::size_t>(plane)].height(p) < side.height(p) - 1e-6;
          }
        }
        const bool cut_eave = covers == 0 && v < 0;  // flush with the wall: the eave ends beside it
        if (!edge && !cut_eave) bad += covers != 1;
      }
    }
  }
  CHECK(bad == 0);
  CHECK(over > 3000);
}
