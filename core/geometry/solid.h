#pragma once
/// A timber's solid: a convex body (blank and end cuts) less convex pockets. Volume and centre of gravity are exact but
/// for rounding (inclusion and exclusion over the pockets that overlap).
/// Inches. Checked against an outside solid modeller in tests/fit.

#include <vector>

#include "geometry/plane.h"
#include "geometry/pocket.h"

namespace bentbook {

struct Solid {
  Box blank;
  std::vector<Plane> cuts;  ///< the body is the blank inside of all of these
  std::vector<Pocket> pockets;
};

struct VolumeFacts {
  double volume = 0;  ///< in³
  Vec3 centroid;      ///< of even density; 0 where the volume is 0
};
[[nodiscard]] VolumeFacts volume_of(const Solid& solid);

/// Room that two placed solids both take, in³; round holes count as filled. 0 where they only touch.
[[nodiscard]] double shared_volume(const Solid& a, const Placement& at_a, const Solid& b, const Placement& at_b);
/// Wood that two pockets of one solid both take, in³.
[[nodiscard]] double shared_volume(const Solid& solid, const Pocket& a, const Pocket& b);

}  // namespace bentbook
