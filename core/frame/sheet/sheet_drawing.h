#pragma once
/// Drawings of a timber's sheet: its four faces unrolled, one below the other as they follow each other around the
/// timber, end A left. x: station; face 1 lies on top, then 2, 3, 4; where two strips touch is their arris.

#include <string>
#include <vector>

#include "draw/drawing.h"
#include "frame/sheet/sheet.h"
#include "measure/slope.h"

namespace bentbook {

/// What a figure of the drawing says.
struct SheetFigure {
  enum class Kind : std::uint8_t { kLength, kAngle, kNumber, kMate };
  std::string key;
  Kind kind = Kind::kLength;
  Length length;   ///< kLength
  Angle angle;     ///< kAngle
  int number = 0;  ///< kNumber: a step, counted from 1; kMate: index in Frame::timbers
};
struct SheetDrawing {
  draw::Drawing drawing;
  std::vector<SheetFigure> figures;
};

/// Point of a face in the drawing.
[[nodiscard]] draw::Point unrolled(Face face, Vec2 p, const Sides& sides);

/// The whole timber: outlines, waste, recesses, where mates land. Keys: dimension "overall" (answer), note "step_<n>"
/// at each step's first line, note "mate_<joint>_<face>".
[[nodiscard]] SheetDrawing whole_drawing(const Timber& timber, const Sheet& sheet);

/// A stretch of it with every measure. Keys: note "arris_<1-4>_cut_<i>" (station of end cut i on an arris, answer),
/// "line_<pocket>_<face>_<n>" (station of a line at its low end, answer), angles "angle_<cut>_<face>" between square
/// and line where it is off square (answer).
[[nodiscard]] SheetDrawing stretch_drawing(const Timber& timber, const Sheet& sheet, double from, double to);

/// The text of figures is made from these alone; nullptr: no such key.
[[nodiscard]] const SheetFigure* find_figure(const SheetDrawing& drawing, std::string_view key);

}  // namespace bentbook
