#include "geometry/cell.h"

#include <utility>

namespace bentbook {
namespace {

void add_face(Cell& cell, const Plane& plane) {
  cell.planes.push_back(plane);
  cell.ends.push_back(static_cast<int>(cell.corners.size()));
}

/// Keeps the part of one polygon that lies below the plane; appends it to `out`.
void keep_below(const Vec3* p, const double* height, int count, std::vector<Vec3>& out) {
  for (int i = 0; i < count; ++i) {
    const int j = i + 1 == count ? 0 : i + 1;
    if (height[i] <= kSamePlace) out.push_back(p[i]);
    const bool crosses =
        (height[i] > kSamePlace && height[j] < -kSamePlace) || (height[i] < -kSamePlace && height[j] > kSamePlace);
    if (crosses) out.push_back(p[i] + (height[i] / (height[i] - height[j])) * (p[j] - p[i]));
  }
}

}  // namespace

Cell cell_of(const Box& box) { return cell_of(box_pocket(Axis::kZ, box.lo, box.hi)); }

Cell cell_of(const Pocket& pocket) {
  Cell cell;
  const auto corners = corners_of(pocket);
  const auto planes = planes_of(pocket);
  const int n = corners.count;
  const auto lift = [&pocket](Vec2 p, double along) {
    return pocket.sweep == Axis::kX   ? Vec3{along, p.x, p.y}
           : pocket.sweep == Axis::kY ? Vec3{p.x, along, p.y}
                                      : Vec3{p.x, p.y, along};
  };
  // Swept along y the outline (x, z) is seen from the other side, so that it runs clockwise.
  const bool turned = pocket.sweep == Axis::kY;
  for (int i = 0; i < n; ++i) {
    const Vec2 a = corners[i], b = corners[i + 1 == n ? 0 : i + 1];
    const Vec2 first = turned ? b : a, second = turned ? a : b;
    cell.corners.push_back(lift(first, pocket.from));
    cell.corners.push_back(lift(second, pocket.from));
    cell.corners.push_back(lift(second, pocket.to));
    cell.corners.push_back(lift(first, pocket.to));
    add_face(cell, planes[i]);
  }
  for (int i = 0; i < n; ++i) cell.corners.push_back(lift(corners[turned ? n - 1 - i : i], pocket.to));
  add_face(cell, planes[n]);
  for (int i = 0; i < n; ++i) cell.corners.push_back(lift(corners[turned ? i : n - 1 - i], pocket.from));
  add_face(cell, planes[n + 1]);
  return cell;
}

Cell body_of(const Solid& solid) {
  Cell cell = cell_of(solid.blank);
  Clipper clipper;
  for (const Plane& plane : solid.cuts) clipper.clip(cell, plane);
  return cell;
}

/// The new face: what the other faces leave of the plane.
void Clipper::add_cap(const Plane& plane, double reach) {
  const Vec3 side = libm::fabs(plane.normal.x) < 0.6 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 u = reach * unit(cross(plane.normal, side)), v = cross(plane.normal, u);
  Vec3 centre = kept_.corners[0];
  centre = centre - above(plane, centre) * plane.normal;
  polygon_.assign({centre - u - v, centre + u - v, centre + u + v, centre - u + v});
  for (const Plane& other : kept_.planes) {
    height_.clear();
    bool cuts = false;
    for (const Vec3& p : polygon_) {
      height_.push_back(above(other, p));
      cuts = cuts || height_.back() > kSamePlace;
    }
    if (!cuts) continue;
    next_.clear();
    keep_below(polygon_.data(), height_.data(), static_cast<int>(polygon_.size()), next_);
    polygon_.swap(next_);
    if (polygon_.size() < 3) return;
  }
  kept_.corners.insert(kept_.corners.end(), polygon_.begin(), polygon_.end());
  add_face(kept_, plane);
}

void Clipper::clip(Cell& cell, const Plane& plane) {
  if (cell.empty()) return;
  height_.clear();
  double highest = -1e300, lowest = 1e300;
  for (const Vec3& p : cell.corners) {
    const double h = above(plane, p);
    highest = h > highest ? h : highest;
    lowest = h < lowest ? h : lowest;
    height_.push_back(h);
  }
  if (highest <= kSamePlace) return;
  kept_.planes.clear();
  kept_.ends.clear();
  kept_.corners.clear();
  double reach = 0;
  int begin = 0;
  if (lowest < -kSamePlace)
    for (std::size_t f = 0; f < cell.planes.size(); ++f) {
      const int end = cell.ends[f];
      const std::size_t before = kept_.corners.size();
      const auto first = static_cast<std::size_t>(begin);
      keep_below(&cell.corners[first], &height_[first], end - begin, kept_.corners);
      if (kept_.corners.size() - before < 3)
        kept_.corners.resize(before);
      else
        add_face(kept_, cell.planes[f]);
      begin = end;
    }
  for (const Vec3& p : kept_.corners) {
    const Vec3 d = p - kept_.corners[0];
    const double far = libm::fabs(d.x) + libm::fabs(d.y) + libm::fabs(d.z);
    reach = far > reach ? far : reach;
  }
  if (!kept_.empty()) add_cap(plane, 2 * reach + 1);
  std::swap(cell, kept_);
}

VolumeFacts volume_of(const Cell& cell) {
  VolumeFacts facts;
  if (cell.empty()) return facts;
  const Vec3 origin = cell.corners[0];
  Vec3 moment{};
  int begin = 0;
  for (const int end : cell.ends) {
    const Vec3 a = cell.corners[static_cast<std::size_t>(begin)] - origin;
    for (int i = begin + 1; i + 1 < end; ++i) {
      const Vec3 b = cell.corners[static_cast<std::size_t>(i)] - origin;
      const Vec3 c = cell.corners[static_cast<std::size_t>(i) + 1] - origin;
      const double v = dot(a, cross(b, c)) / 6;
      facts.volume += v;
      moment = moment + (v / 4) * (a + b + c);
    }
    begin = end;
  }
  if (facts.volume > 0) facts.centroid = origin + (1 / facts.volume) * moment;
  return facts;
}

void split(const std::vector<Vec3>& polygon, const Plane& plane, std::vector<Vec3>& outside,
           std::vector<Vec3>& inside) {
  std::vector<double> height, depth;
  for (const Vec3& p : polygon) {
    height.push_back(above(plane, p));
    depth.push_back(-height.back());
  }
  outside.clear();
  inside.clear();
  const int n = static_cast<int>(polygon.size());
  keep_below(polygon.data(), height.data(), n, inside);
  keep_below(polygon.data(), depth.data(), n, outside);
  // A polygon that only touches the plane belongs to one side whole.
  bool any_above = false, any_below = false;
  for (const double h : height) {
    any_above = any_above || h > kSamePlace;
    any_below = any_below || h < -kSamePlace;
  }
  if (!any_above || outside.size() < 3) outside.clear();
  if (!any_below || inside.size() < 3) inside.clear();
}

}  // namespace bentbook
