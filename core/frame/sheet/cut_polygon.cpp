#include "frame/sheet/cut_polygon.h"

#include "frame/sheet/layout_marks.h"

namespace bentbook {
namespace {

constexpr double kSameCut = 1e-7;

using Polygon = std::vector<Vec3>;

void clip(Polygon& polygon, const Plane& plane) {
  Polygon out;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec3 p = polygon[i], q = polygon[i + 1 == polygon.size() ? 0 : i + 1];
    const double dp = above(plane, p), dq = above(plane, q);
    const bool in_p = dp <= 1e-9, in_q = dq <= 1e-9;
    if (in_p) out.push_back(p);
    if (in_p != in_q) out.push_back(p + dp / (dp - dq) * (q - p));
  }
  polygon = std::move(out);
}

}  // namespace

double area_of(const Polygon& polygon) {
  Vec3 twice;
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
    twice = twice + cross(polygon[i] - polygon[0], polygon[i + 1] - polygon[0]);
  return norm(twice) / 2;
}

Polygon polygon_of(const Timber& timber, const CutPlane& plane) {
  const Vec3 n = plane.normal;
  const Vec3 u = unit(cross(n, libm::fabs(n.z) < 0.8 ? Vec3{0, 0, 1} : Vec3{0, 1, 0})), v = cross(n, u);
  const Vec3 middle{timber.length / 2, 0, 0};
  const Vec3 foot = middle + (plane.offset - dot(n, middle)) * n;
  const double r = 2 * timber.length + 1000;
  Polygon polygon{foot - r * u - r * v, foot + r * u - r * v, foot + r * u + r * v, foot - r * u + r * v};
  const Sides& s = timber.sides;
  clip(polygon, {{0, 1, 0}, s.y_hi});
  clip(polygon, {{0, -1, 0}, -s.y_lo});
  clip(polygon, {{0, 0, 1}, s.z_hi});
  clip(polygon, {{0, 0, -1}, -s.z_lo});
  for (const EndCut& cut : timber.cuts) clip(polygon, {cut.plane.normal, cut.plane.offset});
  return polygon;
}

Polygon side_of(const Timber& timber, const CutPlane& side, const FixedList<Plane, kHoleSides + 2>& planes, int own) {
  Polygon polygon = polygon_of(timber, side);
  for (int i = 0; i < planes.count; ++i)
    if (i != own) clip(polygon, planes[i]);
  return polygon;
}

bool same_plane(const CutPlane& a, const CutPlane& b) {
  return norm(a.normal - b.normal) < kSameCut && libm::fabs(a.offset - b.offset) < kSameCut;
}

bool on_boundary(const Timber& timber, const CutPlane& plane) {
  for (const EndCut& cut : timber.cuts)
    if (same_plane(cut.plane, plane) || same_plane({-1.0 * cut.plane.normal, -cut.plane.offset}, plane)) return true;
  for (const Face face : kFaces) {
    const FaceFrame f = frame_of(face, timber.sides);
    const Vec3 out = f.flat ? Vec3{0, 0, f.outward} : Vec3{0, f.outward, 0};
    const CutPlane faces[] = {{out, f.outward * f.at}, {-1.0 * out, -f.outward * f.at}};
    if (same_plane(faces[0], plane) || same_plane(faces[1], plane)) return true;
  }
  return false;
}

bool is_wall(const Timber& timber, const FixedList<Plane, kHoleSides + 2>& planes, int own) {
  const CutPlane side{planes[own].normal, planes[own].offset};
  return !on_boundary(timber, side) && area_of(side_of(timber, side, planes, own)) > kLeastCut;
}

}  // namespace bentbook
