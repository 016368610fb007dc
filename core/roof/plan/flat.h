#pragma once
/// Vectors and polygons in plan: X and Y of the building, inches, corners counterclockwise.

#include <span>
#include <vector>

#include "geometry/vec.h"

namespace bentbook {

constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
constexpr Vec2 operator*(double k, Vec2 a) { return {k * a.x, k * a.y}; }
constexpr double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
/// Positive where b lies counterclockwise of a.
constexpr double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
/// A quarter turn counterclockwise.
constexpr Vec2 left_of(Vec2 a) { return {-a.y, a.x}; }
inline double norm(Vec2 a) { return libm::sqrt(dot(a, a)); }
inline Vec2 unit(Vec2 a) { return (1 / norm(a)) * a; }
constexpr Vec2 flat(Vec3 p) { return {p.x, p.y}; }

using Polygon2 = std::vector<Vec2>;

/// Positive counterclockwise.
[[nodiscard]] double area_of(std::span<const Vec2> polygon);
/// Whether two of its sides that are no neighbours meet, or a side lies back on its neighbour.
[[nodiscard]] bool crosses_itself(std::span<const Vec2> polygon);
/// Nearest distance to the boundary, positive inside.
[[nodiscard]] double depth_inside(std::span<const Vec2> polygon, Vec2 p);
/// How far two convex polygons lie in each other: the shortest way that parts them; negative: they are apart.
[[nodiscard]] double overlap_of(std::span<const Vec2> a, std::span<const Vec2> b);

/// A straight piece of boundary from one numbered point to another, what it bounds on its left.
struct BoundaryPiece {
  int from = 0, to = 0;
  Vec2 along;   ///< its direction, length 1
  int tag = 0;  ///< the caller's
};
/// Joins pieces to closed loops that do not cross: at a point where several go on, each takes the way that keeps most
/// to its left. Indices of pieces; what does not close is left out.
[[nodiscard]] std::vector<std::vector<int>> trace_loops(const std::vector<BoundaryPiece>& pieces);

/// What of `polygon` lies within `outline`, neither crossing itself; corners nearer than `same` are one. Nothing where
/// they do not meet; with several pieces the largest.
[[nodiscard]] Polygon2 common_area(const Polygon2& polygon, const Polygon2& outline, double same);

}  // namespace bentbook
