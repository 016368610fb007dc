#include "draw/fill.h"

#include <algorithm>

#include "numeric/libm.h"
#include "numeric/sorting.h"

namespace bentbook::draw {
namespace {

double cross(Point a, Point b, Point c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

bool inside(Point p, Point a, Point b, Point c) {
  return cross(a, b, p) >= 0 && cross(b, c, p) >= 0 && cross(c, a, p) >= 0;
}

double twice_area(std::span<const Point> polygon) {
  double sum = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point& p = polygon[i];
    const Point& q = polygon[(i + 1) % polygon.size()];
    sum += p.x * q.y - q.x * p.y;
  }
  return sum;
}

/// True if the corner at `middle` can be cut off: it turns left and no other point lies in it.
bool is_ear(std::span<const Point> polygon, const std::vector<std::uint16_t>& ring, std::size_t middle) {
  const std::size_t n = ring.size();
  const std::uint16_t before = ring[(middle + n - 1) % n], at = ring[middle], after = ring[(middle + 1) % n];
  const Point a = polygon[before], b = polygon[at], c = polygon[after];
  if (cross(a, b, c) <= 0) return false;
  return std::none_of(ring.begin(), ring.end(), [&](std::uint16_t other) {
    const Point p = polygon[other];
    return !(p == a) && !(p == b) && !(p == c) && inside(p, a, b, c);
  });
}

}  // namespace

std::vector<Segment> hatch(std::span<const Point> polygon, double spacing, bool down) {
  std::vector<Segment> out;
  if (polygon.size() < 3 || !(spacing > 0)) return out;
  // Lines at 45° are rows of u = x ∓ y; along a row runs v = x ± y.
  const double sign = down ? -1 : 1;
  const auto row_of = [&](Point p) { return p.x * sign + p.y; };
  const auto along = [&](Point p) { return p.x - p.y * sign; };
  const auto point = [&](double u, double v) {
    // Solves u = sign x + y, v = x − sign y.
    return Point{(v + sign * u) / 2, (u - sign * v) / 2};
  };
  double low = 1e300, high = -1e300;
  for (const Point& p : polygon) {
    low = std::min(low, row_of(p));
    high = std::max(high, row_of(p));
  }
  const double step = spacing * 1.4142135623730951;
  constexpr double kMostRows = 4000;
  if (!(high - low < step * kMostRows)) return out;
  std::vector<double> hits;
  for (double u = (libm::floor(low / step) + 0.5) * step; u < high; u += step) {
    hits.clear();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
      const double ua = row_of(a), ub = row_of(b);
      if ((ua <= u) == (ub <= u)) continue;
      hits.push_back(along(a) + (along(b) - along(a)) * (u - ua) / (ub - ua));
    }
    sort_up(hits);
    for (std::size_t i = 0; i + 1 < hits.size(); i += 2) out.push_back({point(u, hits[i]), point(u, hits[i + 1])});
  }
  return out;
}

std::vector<std::uint16_t> triangles(std::span<const Point> polygon) {
  std::vector<std::uint16_t> out, ring;
  if (polygon.size() < 3 || polygon.size() > 60000) return out;
  for (std::size_t i = 0; i < polygon.size(); ++i) ring.push_back(static_cast<std::uint16_t>(i));
  if (twice_area(polygon) < 0) std::reverse(ring.begin(), ring.end());
  while (ring.size() > 3) {
    std::size_t ear = 0;
    while (ear < ring.size() && !is_ear(polygon, ring, ear)) ++ear;
    if (ear == ring.size()) ear = 0;  // crossing or flat: cut something off and go on
    const std::size_t n = ring.size();
    for (const std::size_t i : {(ear + n - 1) % n, ear, (ear + 1) % n}) out.push_back(ring[i]);
    ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(ear));
  }
  out.insert(out.end(), ring.begin(), ring.end());
  return out;
}

}  // namespace bentbook::draw
