#pragma once
/// What a hand checks on a full-size pattern: its dimensions, as a drawing to be laid out at 1:1. Stations run from the
/// pattern's zero, offsets from the reference edge; cuts off square have their length, holes their diameter, recesses
/// their depth.

#include <vector>

#include "draw/drawing.h"
#include "frame/sheet/full_size.h"

namespace bentbook {

/// kOffset: from the reference edge to a line along the timber or a hole, what a marking gauge is set to.
enum class PatternMeasure : std::uint8_t { kLength, kOffset, kDiameter, kDepth };
struct PatternFigure {
  PatternMeasure measure = PatternMeasure::kLength;
  double inches = 0;
};

/// The key of a dimension or note is its index in `figures`. Lines and polygons are those that figures keep off.
struct PatternDrawing {
  draw::Drawing drawing;
  std::vector<PatternFigure> figures;
};
[[nodiscard]] PatternDrawing pattern_dimensions(const FullSizePattern& pattern);

}  // namespace bentbook
