#include "roof/plan/roof_shape.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "roof/plan/wavefront.h"

namespace bentbook {
namespace {

RoofPlane plane_of(const RoofPlan& plan, std::size_t i) {
  const PlanSide &side = plan.sides[i], &next = plan.sides[i + 1 == plan.sides.size() ? 0 : i + 1];
  RoofPlane p;
  p.gable = side.kind == SideKind::kGable;
  p.from = {side.x.in(), side.y.in()};
  p.to = {next.x.in(), next.y.in()};
  p.length = norm(p.to - p.from);
  p.along = unit(p.to - p.from);
  p.in = left_of(p.along);
  p.overhang = side.overhang.in();
  if (p.gable) return p;
  p.tan = side.pitch.tan();
  p.cos = side.pitch.cos();
  p.sin = side.pitch.sin();
  p.plate = side.plate_height.in();
  const double plumb = plan.common.depth.in() / p.cos;
  p.seat = plan.heel_by == HeelBy::kSeat ? plan.seat.in() : (plumb - plan.heel.in()) / p.tan;
  p.base = p.plate + (plan.heel_by == HeelBy::kSeat ? plumb - p.seat * p.tan : plan.heel.in());
  p.eave_z = p.base - p.overhang * p.tan;
  return p;
}

Vec2 corner_of(const RoofPlane& a, double a_out, const RoofPlane& b, double b_out) {
  const double u = dot(a.in, a.from) - a_out, v = dot(b.in, b.from) - b_out, turn = cross(a.in, b.in);
  return {(u * b.in.y - v * a.in.y) / turn, (v * a.in.x - u * b.in.x) / turn};
}

/// The tails' outline in plan; errors where an overhang is longer than its side can bear.
Result<Polygon2> eaves_of(const std::vector<RoofPlane>& planes) {
  Polygon2 eaves;
  const std::size_t n = planes.size();
  eaves.reserve(n);
  for (std::size_t i = 0; i < n; ++i) {
    const RoofPlane &last = planes[i == 0 ? n - 1 : i - 1], &own = planes[i];
    eaves.push_back(corner_of(last, last.overhang, own, own.overhang));
  }
  for (std::size_t i = 0; i < n; ++i)
    if (!(dot(planes[i].along, eaves[i + 1 == n ? 0 : i + 1] - eaves[i]) > 1e-3))
      return fail(ErrorCode::kImpossible, "sides." + std::to_string(i) + ".overhang");
  if (crosses_itself(eaves)) return fail(ErrorCode::kImpossible, "overhang");
  return eaves;
}

RoofLineKind kind_of(const RoofPlane& left, const RoofPlane& right, Vec3 a, Vec3 b) {
  const bool level = libm::fabs(b.z - a.z) < 1e-6 * norm(b - a) + 1e-9;
  if (left.gable || right.gable) return level ? RoofLineKind::kTop : RoofLineKind::kRake;
  const Vec2 across = left_of(unit(flat(b - a)));
  const double fall = left.fall(across) + right.fall(-1.0 * across);
  if (libm::fabs(fall) < 1e-9) return RoofLineKind::kFlush;
  if (fall < 0) return level ? RoofLineKind::kBreak : RoofLineKind::kValley;
  if (!level) return RoofLineKind::kHip;
  return left.fall(across) > 0 && right.fall(-1.0 * across) > 0 ? RoofLineKind::kRidge : RoofLineKind::kBreak;
}

/// The part of a straight way that lies within the eaves; several: the longest.
bool clip_way(const Polygon2& eaves, Vec3& a, Vec3& b) {
  std::vector<double> at_share{0, 1};
  at_share.reserve(eaves.size() + 2);
  const Vec2 p = flat(a), d = flat(b) - p;
  for (std::size_t i = 0; i < eaves.size(); ++i) {
    const Vec2 q = eaves[i], e = eaves[i + 1 == eaves.size() ? 0 : i + 1] - q;
    const double turn = cross(d, e);
    if (libm::fabs(turn) < 1e-12 * norm(d) * norm(e)) continue;
    const double s = cross(q - p, e) / turn, t = cross(q - p, d) / turn;
    if (s > 0 && s < 1 && t >= 0 && t <= 1) at_share.push_back(s);
  }
  sort_up(at_share);
  double from = 0, to = 0;
  for (std::size_t i = 0; i + 1 < at_share.size(); ++i) {
    const double lo = at_share[i], hi = at_share[i + 1];
    if (depth_inside(eaves, p + (0.5 * (lo + hi)) * d) <= 0) continue;
    if (hi - lo > to - from) from = lo, to = hi;
  }
  if (!((to - from) * norm(d) > 10 * kOnePlace)) return false;
  const Vec3 start = a, way = b - a;
  a = start + from * way;
  b = start + to * way;
  return true;
}

void add_lines(RoofShape& shape, const Wavefronts& fronts) {
  for (const RoofEdge& edge : fronts.edges) {
    RoofLine line;
    line.left = edge.left;
    line.right = edge.right;
    line.a = shape.nodes[at(edge.low)];
    line.b = shape.nodes[at(edge.high)];
    line.node_a = edge.low;
    line.node_b = edge.high;
    if (norm(flat(line.b - line.a)) < 10 * kOnePlace) continue;  // up a gable's wall
    if (!shape.lined_up) {
      const Vec3 a = line.a, b = line.b;
      if (!clip_way(shape.eaves, line.a, line.b)) continue;
      if (norm(line.a - a) > kOnePlace) line.node_a = -1;
      if (norm(line.b - b) > kOnePlace) line.node_b = -1;
    }
    line.kind = kind_of(shape.planes[at(line.left)], shape.planes[at(line.right)], line.a, line.b);
    shape.lines.push_back(line);
  }
  for (std::size_t i = 0; i < shape.planes.size(); ++i) {
    const RoofPlane& plane = shape.planes[i];
    if (plane.gable) continue;
    const Vec2 p = shape.eaves[i], q = shape.eaves[i + 1 == shape.eaves.size() ? 0 : i + 1];
    shape.lines.push_back(
        {RoofLineKind::kEave, {p.x, p.y, plane.eave_z}, {q.x, q.y, plane.eave_z}, -1, -1, static_cast<int>(i), -1});
  }
  sort_by(shape.lines, [](const RoofLine& a, const RoofLine& b) { return a.kind < b.kind; });
}

Result<void> add_faces(RoofShape& shape, const Wavefronts& fronts) {
  shape.faces.resize(shape.planes.size());
  for (std::size_t i = 0; i < shape.planes.size(); ++i) {
    const RoofPlane& plane = shape.planes[i];
    if (plane.gable) continue;
    Polygon2 outline;
    outline.reserve(fronts.faces[i].size());
    for (const int node : fronts.faces[i]) outline.push_back(flat(shape.nodes[at(node)]));
    if (!shape.lined_up) outline = common_area(outline, shape.eaves, 4 * kOnePlace);
    RoofFace& face = shape.faces[i];
    face.plan_area = area_of(outline);
    if (!(face.plan_area > 1e-3)) return fail(ErrorCode::kImpossible, "sides." + std::to_string(i) + ".eave");
    face.slope_area = face.plan_area / plane.cos;
    face.outline = std::move(outline);
  }
  return {};
}

}  // namespace

double roof_area(const RoofShape& shape) {
  double area = 0;
  for (const RoofFace& face : shape.faces) area += face.slope_area;
  return area;
}

double highest_point(const RoofShape& shape) {
  double top = shape.nodes.empty() ? 0 : shape.nodes.front().z;
  for (const Vec3& node : shape.nodes) top = std::max(top, node.z);
  return top;
}

Result<RoofShape> solve_shape(const RoofPlan& plan) {
  if (auto ok = check_roof_plan(plan); !ok) return tl::unexpected(ok.error());
  RoofShape shape;
  shape.sides = static_cast<int>(plan.sides.size());
  shape.planes.reserve(plan.sides.size());
  double bottom = 1e300, top = -1e300;
  for (std::size_t i = 0; i < plan.sides.size(); ++i) {
    shape.planes.push_back(plane_of(plan, i));
    const RoofPlane& p = shape.planes.back();
    if (p.gable) continue;
    bottom = std::min(bottom, p.eave_z);
    top = std::max(top, p.eave_z);
  }
  if (bottom > top) return fail(ErrorCode::kImpossible, "roof");
  auto eaves = eaves_of(shape.planes);
  if (!eaves) return tl::unexpected(eaves.error());
  shape.eaves = *std::move(eaves);
  // All planes are taken down to the lowest tail; there they bound one area, and what lies outside of the eaves goes.
  shape.lined_up = top - bottom < kOnePlace;
  std::vector<LevelLine> lines;
  lines.reserve(shape.planes.size());
  for (const RoofPlane& p : shape.planes) {
    const double wall = dot(p.in, p.from);
    if (p.gable)
      lines.push_back({p.along, p.in, wall - p.overhang, 0});
    else
      lines.push_back({p.along, p.in, wall - p.base / p.tan, 1 / p.tan});
  }
  auto fronts = follow_up(lines, bottom);
  if (!fronts) {
    Error error = fronts.error();
    if (error.where == "plane") error.where = "sides." + std::to_string(error.limit) + ".plane", error.limit = 0;
    return tl::unexpected(error);
  }
  shape.nodes.reserve(fronts->nodes.size());
  for (const RoofNode& node : fronts->nodes) shape.nodes.push_back({node.at.x, node.at.y, node.z});
  add_lines(shape, *fronts);
  if (auto ok = add_faces(shape, *fronts); !ok) return tl::unexpected(ok.error());
  return shape;
}

}  // namespace bentbook
