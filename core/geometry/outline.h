#pragma once
/// What is left of a convex polygon where convex pieces are taken out of it: a face of wood with its notches.

#include <span>
#include <vector>

#include "geometry/vec.h"

namespace bentbook {

/// Lengths in inches; what lies nearer than this is one place.
inline constexpr double kOutlineSame = 1e-6;

/// Closed outlines with what is left at their left: counterclockwise around a piece, clockwise around an opening inside
/// one. Corners in a straight edge are left out; pieces thinner than kOutlineSame may be. `whole` and each of `taken`
/// convex, in either sense.
[[nodiscard]] std::vector<std::vector<Vec2>> left_over(const std::vector<Vec2>& whole,
                                                       std::span<const std::vector<Vec2>> taken);

/// Whether a point lies inside; on an edge either may be said. Method: crossings of a ray, even or odd.
[[nodiscard]] bool inside_outline(std::span<const Vec2> outline, Vec2 p);
/// Its area, positive where the outline runs counterclockwise.
[[nodiscard]] double signed_area(const std::vector<Vec2>& outline);

}  // namespace bentbook
