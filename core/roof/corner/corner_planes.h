#pragma once
/// Two roof planes over an eave corner, as vectors, and the timbers that lie in them. Everything that a corner answers
/// is derived from these; the closed forms (corner.h) are its checks.
///
/// The corner of the eaves is the origin, z up, x along the first roof's eave, lengths in inches. Roof 0 is the first,
/// roof 1 the other. Source: SOURCES.md, "roof corners", "plane geometry".

#include <array>

#include "geometry/cut_plane.h"
#include "geometry/plane.h"
#include "roof/corner/corner_input.h"

namespace bentbook {

struct CornerPlanes {
  CornerKind kind = CornerKind::kHip;
  std::array<Vec3, 2> eave;    ///< level, length 1: from the corner along each eave; of a valley, its prolongation
  std::array<Vec3, 2> inward;  ///< level, length 1: square to each eave, up its roof
  std::array<Vec3, 2> normal;  ///< length 1: square to each roof, up
  std::array<double, 2> tan{}, cos{}, sin{};
  Vec3 hip;    ///< length 1: up along the line in which the roofs meet
  Vec3 level;  ///< the same in plan

  /// Level, length 1: from the hip square to it, over to the side of that roof.
  [[nodiscard]] Vec3 toward(int roof) const;
  /// How much that roof falls, to an inch square off a hip's line (rises, off a valley's). Below 0: the other way, the
  /// eave stands at less than a right angle behind the hip and none of this roof's rafters comes up to it.
  [[nodiscard]] double fall(int roof) const;
};

/// `input` as check_corner() takes it.
[[nodiscard]] CornerPlanes corner_planes(const CornerInput& input);

/// Axes of the timbers (x along, y level across, z up through the depth), origin at the corner. The hip or valley, x up
/// it. A rafter of a roof, x up it. What lies along an eave (purlin, fascia, boards), x toward the hip, its depth
/// square to the roof or plumb.
[[nodiscard]] Placement hip_axes(const CornerPlanes& planes);
[[nodiscard]] Placement rafter_axes(const CornerPlanes& planes, int roof);
[[nodiscard]] Placement eave_axes(const CornerPlanes& planes, int roof, bool square_to_roof);

/// The plane that halves the mitre of two boards whose outer faces have these normals.
[[nodiscard]] Vec3 mitre_normal(Vec3 own, Vec3 other);

}  // namespace bentbook
