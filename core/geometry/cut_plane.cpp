#include "geometry/cut_plane.h"

namespace bentbook {

BladeAngles blade_angles(const CutPlane& cut, Face face) {
  // Turned so that x grows along the normal, the plane is x = −(ny/nx) y − (nz/nx) z + const.
  const double sign = cut.normal.x < 0 ? -1 : 1;
  const double nx = sign * cut.normal.x, ny = sign * cut.normal.y, nz = sign * cut.normal.z;
  switch (face) {
    case Face::kTop:
      return {libm::atan2(-ny, nx), libm::asin(nz)};
    case Face::kBottom:
      return {libm::atan2(-ny, nx), libm::asin(-nz)};
    case Face::kNear:
      return {libm::atan2(-nz, nx), libm::asin(-ny)};
    case Face::kFar:
      return {libm::atan2(-nz, nx), libm::asin(ny)};
  }
  return {};
}

}  // namespace bentbook
