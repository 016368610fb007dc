#pragma once
/// Half-spaces and rigid placements.

#include "geometry/vec.h"

namespace bentbook {

/// Inside where dot(normal, p) <= offset. Normal of length 1, pointing outward.
struct Plane {
  Vec3 normal{0, 0, 1};
  double offset = 0;
};

inline double above(const Plane& plane, Vec3 p) { return dot(plane.normal, p) - plane.offset; }

/// Where a timber stands: its own axes and origin in the building's. Right-handed, lengths 1.
struct Placement {
  Vec3 origin;
  Vec3 x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};
  friend bool operator==(const Placement&, const Placement&) = default;
};

inline Vec3 to_world(const Placement& at, Vec3 p) { return at.origin + p.x * at.x + p.y * at.y + p.z * at.z; }
inline Vec3 to_world_direction(const Placement& at, Vec3 v) { return v.x * at.x + v.y * at.y + v.z * at.z; }
inline Vec3 to_local_direction(const Placement& at, Vec3 v) { return {dot(v, at.x), dot(v, at.y), dot(v, at.z)}; }
inline Vec3 to_local(const Placement& at, Vec3 p) { return to_local_direction(at, p - at.origin); }

}  // namespace bentbook
