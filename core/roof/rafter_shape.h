#pragma once
/// Inside the rafter: the shape of one side in inches, axes as in rafter.h, and what is read off it.

#include "roof/rafter_plan.h"

namespace bentbook {

struct Shape {
  double tan = 0, cos = 1, sin = 0;
  double depth = 0, run = 0, seat = 0, heel = 0, overhang = 0;
  double peak_x = 0;     ///< where the peak's plumb cut stands
  double near_peak = 0;  ///< where a seat must have ended: the peak cut, or the ridge beam's near face
  bool over_beam = false;
  double beam_seat = 0;  ///< may be negative on a right side that follows
  TailCut tail = TailCut::kPlumb;
  double tail_plumb = 0;

  [[nodiscard]] double top(double x) const { return heel + x * tan; }
  [[nodiscard]] double bottom(double x) const { return (x - seat) * tan; }
  /// Where the bottom edge ends on the square.
  [[nodiscard]] double square_bottom_x() const { return depth * sin - overhang; }
  /// Where the level cut of the tail leaves the bottom edge.
  [[nodiscard]] double level_x() const { return seat + (top(-overhang) - tail_plumb) / tan; }
};

[[nodiscard]] Shape make_shape(const RafterInput& input, const RafterSide& side, const SidePlan& plan,
                               double beam_seat);
void draw_outline(Rafter& r, const Shape& s);
void add_marks(Rafter& r, const Shape& s);
void add_cuts(Rafter& r, const Shape& s);
/// Extent of the outline along the rafter.
[[nodiscard]] double longest_of(const Rafter& r, const Shape& s);

}  // namespace bentbook
