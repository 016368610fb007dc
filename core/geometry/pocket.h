#pragma once
/// Pockets: what is taken out of a timber's body between its faces and end cuts. Slots, mortises, housings, notches,
/// shoulders and holes are all one thing: a convex outline drawn square to one timber axis and swept along it.
/// Inches, timber axes (cut_plane.h).

#include <cstdint>

#include "geometry/plane.h"
#include "geometry/vec.h"
#include "numeric/fixed_list.h"

namespace bentbook {

enum class Axis : std::uint8_t { kX, kY, kZ };

/// Outline coordinates by sweep axis: kX (y, z), kY (x, z), kZ (x, y). Corners counterclockwise in them.
/// Where a pocket is open to the outside its outline or sweep reaches past the timber.
struct Pocket {
  Axis sweep = Axis::kY;
  double from = 0, to = 0;  ///< along the sweep axis, from < to
  double radius = 0;        ///< more than 0: a round hole, `outline` holds its centre alone
  FixedList<Vec2, 8> outline{};
  friend bool operator==(const Pocket&, const Pocket&) = default;
};

/// A round hole is this regular polygon, of the circle's area, with a corner on the first outline axis.
inline constexpr int kHoleSides = 24;

/// The outline itself, or a round hole's polygon.
[[nodiscard]] FixedList<Vec2, kHoleSides> corners_of(const Pocket& pocket);

/// The pocket as half-spaces, normals outward: one to each side of the outline, then `to`, then `from`.
[[nodiscard]] FixedList<Plane, kHoleSides + 2> planes_of(const Pocket& pocket);

struct Box {
  Vec3 lo, hi;
};
[[nodiscard]] Box bounds_of(const Pocket& pocket);

/// A rectangle swept: the box between two corners, made as a pocket swept along `sweep`.
[[nodiscard]] Pocket box_pocket(Axis sweep, Vec3 lo, Vec3 hi);
/// A round hole along `sweep` about `centre` (outline coordinates).
[[nodiscard]] Pocket hole_pocket(Axis sweep, Vec2 centre, double diameter, double from, double to);

}  // namespace bentbook
