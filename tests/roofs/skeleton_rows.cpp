/// Roofs of one pitch against the straight skeleton of a general-purpose geometry library (CGAL): every node of the one
/// must be a node of the other, at the same place and height.
///   skeleton_rows COUNT SEED
/// Prints `skeleton: N passed, N failed`.

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/create_straight_skeleton_2.h>

#include <cstdio>
#include <cstdlib>
#include <string>

#include "roof/plan/roof_shape.h"
#include "roof_plans.h"

using namespace bentbook;

namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;

/// Their nodes: level place and height.
std::vector<Vec3> outside_nodes(const RoofShape& shape) {
  std::vector<Kernel::Point_2> corners;
  for (const Vec2& p : shape.eaves) corners.emplace_back(p.x, p.y);
  const auto skeleton = CGAL::create_interior_straight_skeleton_2(corners.begin(), corners.end(), Kernel());
  std::vector<Vec3> nodes;
  if (!skeleton) return nodes;
  const RoofPlane& plane = shape.planes.front();
  for (auto v = skeleton->vertices_begin(); v != skeleton->vertices_end(); ++v)
    if (v->is_skeleton()) nodes.push_back({v->point().x(), v->point().y(), plane.eave_z + plane.tan * v->time()});
  return nodes;
}

bool among(const std::vector<Vec3>& all, Vec3 p) {
  for (const Vec3& q : all)
    if (norm(p - q) < 1e-3) return true;
  return false;
}

/// Where two sides' planes are one, the line between them is anybody's choice, and its ends are nodes of neither roof.
bool on_a_line(const RoofShape& shape, Vec3 p) {
  for (const RoofLine& line : shape.lines) {
    const Vec3 d = line.b - line.a;
    const double t = dot(p - line.a, d) / dot(d, d);
    if (t > -1e-6 && t < 1 + 1e-6 && norm(p - (line.a + t * d)) < 1e-3) return true;
  }
  return false;
}
bool ends_flush(const RoofShape& shape, Vec3 p) {
  for (const RoofLine& line : shape.lines)
    if (line.kind == RoofLineKind::kFlush && (norm(line.a - p) < 1e-3 || norm(line.b - p) < 1e-3)) return true;
  return false;
}

/// What differs; empty: nothing.
std::string unlike(const RoofPlan& plan) {
  const auto shape = solve_shape(plan);
  if (!shape) return "not solved: " + shape.error().where;
  const std::vector<Vec3> theirs = outside_nodes(*shape);
  if (theirs.empty()) return "no skeleton from outside";
  std::vector<Vec3> ours;
  for (const Vec3& node : shape->nodes)
    if (node.z > shape->planes.front().eave_z + 1e-6) ours.push_back(node);
  for (const Vec3& p : theirs)
    if (!among(ours, p) && !on_a_line(*shape, p)) return "missing a node";
  for (const Vec3& p : ours)
    if (!among(theirs, p) && !ends_flush(*shape, p)) return "a node too many";
  return {};
}

}  // namespace

int main(int argc, char** argv) try {
  const int count = argc > 1 ? std::atoi(argv[1]) : 200;
  Random random(std::strtoull(argc > 2 ? argv[2] : "1", nullptr, 10));
  int passed = 0, failed = 0;
  for (int i = 0; i < count; ++i) {
    const RoofPlan plan = random_roof(random, {true, false, i % 2 == 0});
    if (!check_roof_plan(plan)) {
      --i;
      continue;
    }
    const auto shape = solve_shape(plan);
    if (!shape && shape.error().where.ends_with("overhang")) {  // tails that meet: a plan of its own, none of these
      --i;
      continue;
    }
    const std::string found = unlike(plan);
    if (found.empty())
      ++passed;
    else if (++failed <= 10) {
      std::printf("roof %d: %s\n", i, found.c_str());
      for (const PlanSide& side : plan.sides) std::printf("  %.4f %.4f\n", side.x.in(), side.y.in());
    }
  }
  std::printf("skeleton: %d passed, %d failed\n", passed, failed);
  return failed > 0 ? 1 : 0;
} catch (...) {
  return 1;
}
