#include "raising/insertion/move_cells.h"

#include <utility>

#include "geometry/cell.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

/// Smaller pieces are rounding (in³).
constexpr double kCrumb = 1e-7;

/// Adds a direction unless it, or its opposite, is there.
void add_once(std::vector<Vec3>& known, Vec3 v) {
  const double size = norm(v);
  if (size < 1e-9) return;
  v = (1 / size) * v;
  for (const Vec3& k : known)
    if (libm::fabs(dot(k, v)) > 1 - 1e-12) return;
  known.push_back(v);
}

void find_bounds(MoveCell& cell) {
  cell.lo = cell.hi = cell.corners[0];
  for (const Vec3& p : cell.corners) {
    cell.lo = {p.x < cell.lo.x ? p.x : cell.lo.x, p.y < cell.lo.y ? p.y : cell.lo.y, p.z < cell.lo.z ? p.z : cell.lo.z};
    cell.hi = {p.x > cell.hi.x ? p.x : cell.hi.x, p.y > cell.hi.y ? p.y : cell.hi.y, p.z > cell.hi.z ? p.z : cell.hi.z};
  }
}

MoveCell placed_cell(const Cell& cell, const Placement& at) {
  MoveCell made;
  for (const Plane& plane : cell.planes) add_once(made.normals, to_world_direction(at, plane.normal));
  std::size_t begin = 0;
  for (const int last : cell.ends) {
    const auto end = static_cast<std::size_t>(last);
    for (std::size_t i = begin; i < end; ++i) {
      const Vec3 a = cell.corners[i], b = cell.corners[i + 1 == end ? begin : i + 1];
      if (norm(b - a) > 1e-6) add_once(made.edges, to_world_direction(at, b - a));
      const Vec3 p = to_world(at, a);
      bool known = false;
      for (const Vec3& q : made.corners) known = known || norm(q - p) < kSamePlace;
      if (!known) made.corners.push_back(p);
    }
    begin = end;
  }
  find_bounds(made);
  return made;
}

/// Parts the cells by the pocket's planes and leaves out what lies inside of it.
void take_out(Clipper& clipper, std::vector<Cell>& cells, const Pocket& pocket) {
  std::vector<Cell> left;
  for (Cell& cell : cells) {
    Cell inside = cell;
    std::vector<Cell> outside;
    for (const Plane& plane : planes_of(pocket)) {
      Cell out = inside;
      clipper.clip(out, {-1 * plane.normal, -plane.offset});
      if (!out.empty() && volume_of(out).volume > kCrumb) outside.push_back(std::move(out));
      clipper.clip(inside, plane);
      if (inside.empty()) break;
    }
    if (inside.empty() || volume_of(inside).volume <= kCrumb)
      left.push_back(std::move(cell));
    else
      for (Cell& out : outside) left.push_back(std::move(out));
  }
  cells.swap(left);
}

template <class Where>
MoveBody moved(const MoveBody& body, Where where) {
  MoveBody made = body;
  const auto move = [&](MoveCell& cell) {
    for (Vec3& p : cell.corners) p = where(p, true);
    for (Vec3& n : cell.normals) n = where(n, false);
    for (Vec3& e : cell.edges) e = where(e, false);
    find_bounds(cell);
  };
  move(made.whole);
  for (MoveCell& cell : made.cells) move(cell);
  return made;
}

struct Reach {
  double lo = 1e300, hi = -1e300;
};
Reach reach_of(const MoveCell& cell, Vec3 axis) {
  Reach r;
  for (const Vec3& p : cell.corners) {
    const double h = dot(axis, p);
    r.lo = h < r.lo ? h : r.lo;
    r.hi = h > r.hi ? h : r.hi;
  }
  return r;
}

struct Way {
  Vec3 from, sweep;
};

bool parted_along(const MoveCell& a, const Way& way, const MoveCell& b, Vec3 axis) {
  Reach ra = reach_of(a, axis);
  const Reach rb = reach_of(b, axis);
  const double at = dot(axis, way.from), go = dot(axis, way.sweep);
  ra.lo += at + (go < 0 ? go : 0);
  ra.hi += at + (go > 0 ? go : 0);
  return ra.hi <= rb.lo + limits::kTouching || rb.hi <= ra.lo + limits::kTouching;
}

bool parted_across(const MoveCell& a, const Way& way, const MoveCell& b, Vec3 u, Vec3 v) {
  const Vec3 axis = cross(u, v);
  const double size = norm(axis);
  return size > 1e-6 * norm(v) && parted_along(a, way, b, (1 / size) * axis);
}

bool parted_bounds(double a_lo, double a_hi, double at, double go, double b_lo, double b_hi) {
  return a_hi + at + (go > 0 ? go : 0) <= b_lo + limits::kTouching ||
         b_hi <= a_lo + at + (go < 0 ? go : 0) + limits::kTouching;
}

/// Separating axes of two convex bodies, one of them swept: the faces of both and pairs of edges, the way itself
/// counted as an edge of what moves.
bool parted(const MoveCell& a, const Way& way, const MoveCell& b) {
  if (parted_bounds(a.lo.x, a.hi.x, way.from.x, way.sweep.x, b.lo.x, b.hi.x) ||
      parted_bounds(a.lo.y, a.hi.y, way.from.y, way.sweep.y, b.lo.y, b.hi.y) ||
      parted_bounds(a.lo.z, a.hi.z, way.from.z, way.sweep.z, b.lo.z, b.hi.z))
    return true;
  for (const Vec3& n : a.normals)
    if (parted_along(a, way, b, n)) return true;
  for (const Vec3& n : b.normals)
    if (parted_along(a, way, b, n)) return true;
  for (const Vec3& e : a.edges)
    if (parted_across(a, way, b, e, way.sweep)) return true;
  for (const Vec3& e : b.edges)
    if (parted_across(a, way, b, e, way.sweep)) return true;
  for (const Vec3& e : a.edges)
    for (const Vec3& f : b.edges)
      if (parted_across(a, way, b, e, f)) return true;
  return false;
}

}  // namespace

MoveBody move_body_of(const Timber& timber) {
  const Solid solid = solid_of(timber);
  MoveBody body;
  std::vector<Cell> cells{body_of(solid)};
  if (cells[0].empty()) return body;
  body.whole = placed_cell(cells[0], timber.at);
  Clipper clipper;
  for (const Pocket& pocket : solid.pockets)
    if (pocket.radius <= 0) take_out(clipper, cells, pocket);
  for (const Cell& cell : cells) body.cells.push_back(placed_cell(cell, timber.at));
  return body;
}

MoveBody turned(const MoveBody& body, Vec3 pivot, Vec3 axis, double angle) {
  const double c = libm::cos(angle), s = libm::sin(angle);
  return moved(body, [&](Vec3 p, bool point) {
    const Vec3 v = point ? p - pivot : p;
    const Vec3 r = c * v + s * cross(axis, v) + ((1 - c) * dot(axis, v)) * axis;
    return point ? pivot + r : r;
  });
}

bool runs_into(const MoveBody& moving, Vec3 from, Vec3 sweep, const MoveBody& still) {
  if (moving.cells.empty() || still.cells.empty()) return false;
  const Way way{from, sweep};
  if (parted(moving.whole, way, still.whole)) return false;
  for (const MoveCell& a : moving.cells) {
    if (parted(a, way, still.whole)) continue;
    for (const MoveCell& b : still.cells)
      if (!parted(a, way, b)) return true;
  }
  return false;
}

}  // namespace bentbook
