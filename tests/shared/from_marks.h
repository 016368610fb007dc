#pragma once
/// The way back: from what is drawn on a timber to the plane or pocket that it stands for. Written apart from
/// frame/layout_marks, with nothing of it but its marks.

#include <vector>

#include "frame/sheet/layout_marks.h"
#include "geometry/pocket.h"

namespace from_marks {

using namespace bentbook;

/// A point of a face's line, in the timber.
inline Vec3 on_face(Face face, Vec2 p, const Sides& s) {
  if (face == Face::kTop) return {p.x, p.y, s.z_hi};
  if (face == Face::kBottom) return {p.x, p.y, s.z_lo};
  if (face == Face::kNear) return {p.x, s.y_lo, p.y};
  return {p.x, s.y_hi, p.y};
}

/// The plane through the marked points (the widest triangle among them), its waste side from the mark.
inline bool plane_from(const std::vector<Vec3>& points, Waste waste, CutPlane& plane) {
  double best = 0;
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t j = i + 1; j < points.size(); ++j)
      for (std::size_t k = j + 1; k < points.size(); ++k) {
        const Vec3 n = cross(points[j] - points[i], points[k] - points[i]);
        if (norm(n) <= best) continue;
        best = norm(n);
        plane.normal = unit(n);
        plane.offset = dot(plane.normal, points[i]);
      }
  if ((plane.normal.x > 0) != (waste == Waste::kTowardB)) plane = {-1.0 * plane.normal, -plane.offset};
  return best > 1e-3;
}

inline bool comes_back(const Timber& timber, const CutMarks& marks) {
  std::vector<Vec3> points;
  for (const LineMark& line : marks.lines) {
    points.push_back(on_face(line.face, line.a, timber.sides));
    points.push_back(on_face(line.face, line.b, timber.sides));
  }
  CutPlane plane;
  if (!plane_from(points, marks.waste, plane)) return false;
  const CutPlane& own = timber.cuts[static_cast<std::size_t>(marks.cut)].plane;
  bool same = norm(plane.normal - own.normal) < 1e-7 && libm::fabs(plane.offset - own.offset) < 1e-5;
  // Each arris station that is marked lies on it too.
  for (std::size_t i = 0; i < 4; ++i) {
    const double y = i == 0 || i == 3 ? timber.sides.y_hi : timber.sides.y_lo;
    const double z = i <= 1 ? timber.sides.z_hi : timber.sides.z_lo;
    if (marks.on_wood[i]) same = same && libm::fabs(dot(own.normal, Vec3{marks.stations[i], y, z}) - own.offset) < 1e-6;
  }
  return same;
}

inline bool comes_back(const Timber& timber, const RecessMarks& marks) {
  const Sides& s = timber.sides;
  Pocket pocket;
  pocket.radius = marks.diameter / 2;
  if (marks.on_end) {
    pocket.sweep = Axis::kX;
    pocket.from = marks.start;
    pocket.to = marks.stop;
    for (const Vec2& p : marks.outline) pocket.outline.add({p.x + s.y_lo, p.y + s.z_lo});
  } else {
    const bool flat = marks.face == Face::kTop || marks.face == Face::kBottom;
    const bool above = marks.face == Face::kTop || marks.face == Face::kFar;
    const double face = flat ? (above ? s.z_hi : s.z_lo) : (above ? s.y_hi : s.y_lo);
    pocket.sweep = flat ? Axis::kZ : Axis::kY;
    pocket.from = above ? face - marks.stop : face + marks.start;
    pocket.to = above ? face - marks.start : face + marks.stop;
    for (const Vec2& p : marks.outline) pocket.outline.add({p.x, p.y + (flat ? s.y_lo : s.z_lo)});
  }
  const Pocket& own = timber.pockets[static_cast<std::size_t>(marks.pocket)];
  const auto close = [](double a, double b) { return libm::fabs(a - b) < 1e-9; };
  bool same = pocket.sweep == own.sweep && close(pocket.from, own.from) && close(pocket.to, own.to) &&
              close(pocket.radius, own.radius) && pocket.outline.count == own.outline.count;
  for (int i = 0; same && i < own.outline.count; ++i)
    same = close(pocket.outline[i].x, own.outline[i].x) && close(pocket.outline[i].y, own.outline[i].y);
  return same;
}

}  // namespace from_marks
