#pragma once
/// The pattern: the rafter as it lies on the horses, drawn true. Timber axes: x from the foot's end toward the peak
/// along the length, y up through the depth (0 bottom edge, `depth` top edge); inches.

#include "draw/drawing.h"
#include "roof/rafter.h"

namespace bentbook {

/// A point of the outline (Rafter::outline) in timber axes.
[[nodiscard]] XY to_timber(const Rafter& rafter, XY roof_point);

/// The whole outline with the waste at the cuts hatched, and its dimensions: "marks_top_<i>_left",
/// "marks_bottom_<i>_left"
/// (_right; answers, i counts Rafter::marks_…), "depth" (given).
[[nodiscard]] draw::Drawing pattern_drawing(const RafterInput& input, const Rafter& rafter, Side side);

/// The ends at a larger scale, cut off by thin lines: the peak, the bird's mouth, the tail. Keys as in
/// rafter_drawing.h, with _left or _right: peak_setback, plumb_depth, beam_notch_depth; seat, heel, birdsmouth_depth;
/// tail_along, and tail_plumb.
enum class PatternPart : std::uint8_t { kPeak, kBirdsmouth, kTail };
[[nodiscard]] draw::Drawing pattern_part(const RafterInput& input, const Rafter& rafter, Side side, PatternPart part);

}  // namespace bentbook
