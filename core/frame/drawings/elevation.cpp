#include "frame/drawings/elevation.h"

#include <utility>

#include "geometry/cell.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

using draw::Point;

double turn(Point o, Point a, Point b) { return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x); }

/// Corners of one edge seen at its end differ in their last bits: made one point, or the chain below would go past what
/// stands between them.
Point settled(Point p) {
  constexpr double kPerInch = 1e6;
  return {libm::floor(p.x * kPerInch + 0.5) / kPerInch, libm::floor(p.y * kPerInch + 0.5) / kPerInch};
}

/// Convex hull, counterclockwise (Andrew's monotone chain).
std::vector<Point> hull_of(std::vector<Point> points) {
  for (Point& p : points) p = settled(p);
  sort_by(points, [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  std::vector<Point> hull(2 * points.size() + 1);
  std::size_t n = 0;
  const auto add = [&](Point p, std::size_t floor) {
    while (n >= floor + 2 && turn(hull[n - 2], hull[n - 1], p) <= 1e-9) --n;
    hull[n++] = p;
  };
  for (const Point p : points) add(p, 0);
  const std::size_t floor = n - 1;
  for (auto p = points.rbegin(); p != points.rend(); ++p) add(*p, floor);
  hull.resize(n > 1 ? n - 1 : n);
  return hull;
}

}  // namespace

std::vector<Vec3> corners_of(const Timber& timber) {
  std::vector<Vec3> corners;
  for (const Vec3& p : body_of(solid_of(timber)).corners) corners.push_back(to_world(timber.at, p));
  return corners;
}

draw::Polygon elevation_of(const std::vector<Vec3>& corners, Elevation elevation, draw::Fill fill) {
  std::vector<Point> points;
  points.reserve(corners.size());
  for (const Vec3& p : corners) points.push_back(seen(p, elevation));
  return {hull_of(std::move(points)), draw::Stroke::kVisible, fill};
}

}  // namespace bentbook
