#include "roof/plan/flat.h"

#include <algorithm>

#include "geometry/outline.h"
#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

std::size_t after(std::size_t i, std::size_t count) { return i + 1 == count ? 0 : i + 1; }

double distance_to(Vec2 a, Vec2 b, Vec2 p) {
  const Vec2 d = b - a;
  const double square = dot(d, d);
  const double t = square > 0 ? std::clamp(dot(p - a, d) / square, 0.0, 1.0) : 0.0;
  return norm(p - (a + t * d));
}

bool segments_meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const double c_side = cross(b - a, c - a), d_side = cross(b - a, d - a);
  const double a_side = cross(d - c, a - c), b_side = cross(d - c, b - c);
  if (((c_side > 0) != (d_side > 0)) && ((a_side > 0) != (b_side > 0))) return true;
  constexpr double kTouch = 1e-6;
  return distance_to(a, b, c) < kTouch || distance_to(a, b, d) < kTouch || distance_to(c, d, a) < kTouch ||
         distance_to(c, d, b) < kTouch;
}

/// Angle from `from` counterclockwise to `to`, in (0, 2π].
double turn_left(Vec2 from, Vec2 to) {
  const double angle = libm::atan2(cross(from, to), dot(from, to));
  return angle > 1e-9 ? angle : angle + 2 * libm::kPi;
}

/// Pieces of two polygons cut at each other's corners and crossings.
class Overlay {
 public:
  explicit Overlay(double same) : same_(same) {}
  int point(Vec2 p) {
    for (std::size_t i = 0; i < points.size(); ++i)
      if (norm(points[i] - p) < same_) return static_cast<int>(i);
    points.push_back(p);
    return static_cast<int>(points.size()) - 1;
  }
  /// The numbered points on the straight way from a to b, both ends among them.
  [[nodiscard]] std::vector<int> on_way(Vec2 a, Vec2 b) const {
    const Vec2 along = unit(b - a);
    const double length = norm(b - a);
    std::vector<std::pair<double, int>> found;
    found.reserve(points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
      const double t = dot(points[i] - a, along), off = cross(along, points[i] - a);
      if (libm::fabs(off) < same_ && t > -same_ && t < length + same_) found.emplace_back(t, static_cast<int>(i));
    }
    sort_up(found);
    std::vector<int> way;
    way.reserve(found.size());
    for (const auto& it : found) way.push_back(it.second);
    return way;
  }
  std::vector<Vec2> points;

 private:
  double same_;
};

void add_crossings(Overlay& overlay, const Polygon2& a, const Polygon2& b) {
  for (std::size_t i = 0; i < a.size(); ++i)
    for (std::size_t j = 0; j < b.size(); ++j) {
      const Vec2 p = a[i], d = a[after(i, a.size())] - p, q = b[j], e = b[after(j, b.size())] - q;
      const double turn = cross(d, e);
      if (libm::fabs(turn) < 1e-12 * norm(d) * norm(e)) continue;
      const double s = cross(q - p, e) / turn, t = cross(q - p, d) / turn;
      if (s >= 0 && s <= 1 && t >= 0 && t <= 1) overlay.point(p + s * d);
    }
}

/// Pieces of `polygon` in `other`; `shared`: also those that run along its boundary the same way.
void add_pieces(const Overlay& overlay, const Polygon2& polygon, const Polygon2& other, bool shared, double same,
                std::vector<BoundaryPiece>& pieces) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[after(i, polygon.size())];
    if (norm(b - a) < same) continue;
    const std::vector<int> way = overlay.on_way(a, b);
    for (std::size_t k = 0; k + 1 < way.size(); ++k) {
      const Vec2 from = overlay.points[at(way[k])], to = overlay.points[at(way[k + 1])];
      const Vec2 along = unit(to - from);
      const double depth = depth_inside(other, 0.5 * (from + to));
      bool keeps = depth > same;
      if (!keeps && shared && depth > -same)  // on the boundary: what lies just to its left decides
        keeps = depth_inside(other, 0.5 * (from + to) + 4 * same * left_of(along)) > 0;
      if (keeps) pieces.push_back({way[k], way[k + 1], along, 0});
    }
  }
}

}  // namespace

double area_of(std::span<const Vec2> polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) twice += cross(polygon[i], polygon[after(i, polygon.size())]);
  return twice / 2;
}

bool crosses_itself(std::span<const Vec2> polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = polygon[i], b = polygon[after(i, n)], c = polygon[after(after(i, n), n)];
    const double turn = cross(b - a, c - b);
    if (dot(b - a, c - b) < 0 && libm::fabs(turn) <= 1e-9 * norm(b - a) * norm(c - b)) return true;
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j + 1 == n) continue;
      if (segments_meet(a, b, polygon[j], polygon[after(j, n)])) return true;
    }
  }
  return false;
}

double depth_inside(std::span<const Vec2> polygon, Vec2 p) {
  double least = 1e300;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    least = std::min(least, distance_to(polygon[i], polygon[after(i, polygon.size())], p));
  return inside_outline(polygon, p) ? least : -least;
}

double overlap_of(std::span<const Vec2> a, std::span<const Vec2> b) {
  double least = 1e300;
  for (const auto& [own, other] : {std::pair{a, b}, std::pair{b, a}})
    for (std::size_t i = 0; i < own.size(); ++i) {
      const Vec2 d = own[after(i, own.size())] - own[i];
      if (dot(d, d) == 0) continue;
      const Vec2 in = left_of(unit(d));
      double deepest = -1e300;
      for (const Vec2& p : other) deepest = std::max(deepest, dot(in, p - own[i]));
      least = std::min(least, deepest);
    }
  return least;
}

std::vector<std::vector<int>> trace_loops(const std::vector<BoundaryPiece>& pieces) {
  std::vector<bool> used(pieces.size(), false);
  std::vector<std::vector<int>> loops;
  for (std::size_t first = 0; first < pieces.size(); ++first) {
    if (used[first]) continue;
    std::vector<int> loop;
    std::size_t now = first;
    bool closed = false;
    while (!used[now]) {
      used[now] = true;
      loop.push_back(static_cast<int>(now));
      // Turning clockwise from the way back, the first one out: nothing lies between.
      const Vec2 back = -1.0 * pieces[now].along;
      int best = -1;
      double least = 1e300;
      for (std::size_t k = 0; k < pieces.size(); ++k) {
        if (pieces[k].from != pieces[now].to || (used[k] && k != first)) continue;
        const double turn = turn_left(pieces[k].along, back);
        if (turn < least) least = turn, best = static_cast<int>(k);
      }
      if (best < 0) break;
      now = at(best);
      closed = now == first;
    }
    if (closed) loops.push_back(std::move(loop));
  }
  return loops;
}

Polygon2 common_area(const Polygon2& polygon, const Polygon2& outline, double same) {
  Overlay overlay(same);
  for (const Vec2& p : polygon) overlay.point(p);
  for (const Vec2& p : outline) overlay.point(p);
  add_crossings(overlay, polygon, outline);
  std::vector<BoundaryPiece> pieces;
  add_pieces(overlay, polygon, outline, true, same, pieces);
  add_pieces(overlay, outline, polygon, false, same, pieces);
  Polygon2 largest;
  for (const std::vector<int>& loop : trace_loops(pieces)) {
    Polygon2 found;
    found.reserve(loop.size());
    for (const int k : loop) found.push_back(overlay.points[at(pieces[at(k)].from)]);
    if (area_of(found) > area_of(largest)) largest = std::move(found);
  }
  return largest;
}

}  // namespace bentbook
