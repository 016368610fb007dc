#pragma once
/// Convex cells: a bounded convex solid as its flat faces, cut down by one plane after another.

#include <vector>

#include "geometry/plane.h"
#include "geometry/pocket.h"
#include "geometry/solid.h"

namespace bentbook {

/// Closer than this is the same place (inches): far below any cut, far above rounding.
inline constexpr double kSamePlace = 1e-9;

/// Each face is a plane (normal outward) and its corners counterclockwise seen from outside. No faces: empty.
struct Cell {
  std::vector<Plane> planes;
  std::vector<int> ends;  ///< where each face's corners end in `corners`
  std::vector<Vec3> corners;
  [[nodiscard]] bool empty() const { return planes.empty(); }
};

[[nodiscard]] Cell cell_of(const Box& box);
[[nodiscard]] Cell cell_of(const Pocket& pocket);
/// Blank and cuts, without the pockets.
[[nodiscard]] Cell body_of(const Solid& solid);
/// Cuts cells down and keeps the room that it works in from one cut to the next.
class Clipper {
 public:
  /// Keeps what lies inside of the plane. A plane that only touches the cell changes nothing.
  void clip(Cell& cell, const Plane& plane);

 private:
  void add_cap(const Plane& plane, double reach);
  std::vector<double> height_;
  std::vector<Vec3> polygon_, next_;
  Cell kept_;
};
[[nodiscard]] VolumeFacts volume_of(const Cell& cell);

/// One flat polygon cut by a plane: the part above it (outside), the part below it.
void split(const std::vector<Vec3>& polygon, const Plane& plane, std::vector<Vec3>& outside, std::vector<Vec3>& inside);

}  // namespace bentbook
