#pragma once
/// The slope's small triangle on a roof: twelve level, the rise plumb. Inches.

#include <string>

#include "draw/drawing.h"
#include "measure/slope.h"

namespace bentbook::draw {

/// Whether a slope was entered so that the triangle says it: a rise in 12.
[[nodiscard]] constexpr bool has_triangle(const Slope& slope) {
  return slope.form == SlopeForm::kRatio && slope.run == Length::inches(12);
}

/// Its corners: both ends of the rafter's side and the right angle.
struct PitchMark {
  Point low, high, corner;
};
/// From `low`, `run` long (negative: rising to the left), its right angle over the slope or under it.
[[nodiscard]] constexpr PitchMark pitch_mark(Point low, double run, double tan, bool over) {
  const double rise = (run < 0 ? -run : run) * tan;
  const Point high{low.x + run, low.y + rise};
  return {low, high, over ? Point{low.x, high.y} : Point{high.x, low.y}};
}

/// Adds one to a drawing: `rise` is the key of the pitch (given), `run` that of its level side (quiet).
void add_pitch_mark(Drawing& drawing, const PitchMark& mark, std::string rise, std::string run);

}  // namespace bentbook::draw
