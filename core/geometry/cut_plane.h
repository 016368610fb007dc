#pragma once
/// A cut as a plane in timber axes: x from end A to end B, y across the breadth, z up through the depth; the waste lies
/// on the side to which the normal points. A square cut, a plumb cut and a compound hip cut are one thing.

#include "geometry/vec.h"

namespace bentbook {

/// Points p with dot(normal, p) = offset lie on the cut. Normal of length 1 with x ≠ 0 (a cut across the timber).
struct CutPlane {
  Vec3 normal{1, 0, 0};
  double offset = 0;
  friend bool operator==(const CutPlane&, const CutPlane&) = default;
};

/// The face the saw rides on. Faces count clockwise seen from end A: 1 top, 2 the −y side, 3 bottom, 4 the +y side.
enum class Face : unsigned char { kTop = 1, kNear = 2, kBottom = 3, kFar = 4 };

/// How a blade that rides on a face makes the cut. Radians.
/// `swing`: the line on that face, off square across the face; positive where the line runs toward end B as the cross
/// coordinate of the face (y on top and bottom, z on the sides) grows.
/// `tilt`: the blade off square to the face; positive where the cut runs toward end B as it goes into the timber.
struct BladeAngles {
  double swing = 0;
  double tilt = 0;
};

/// Swing and tilt of the cut as seen from `face`. Source: SOURCES.md, "plane geometry".
[[nodiscard]] BladeAngles blade_angles(const CutPlane& cut, Face face);

}  // namespace bentbook
