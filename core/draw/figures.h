#pragma once
/// Finding a place for each figure of a drawing. Inside draw/ only; layout.h is what others use.

#include <vector>

#include "draw/layout.h"

namespace bentbook::draw {

/// What a figure's text may be set to: a line (dimension), an arc (angle), a point (note), somewhere off a point.
enum class Seat : std::uint8_t { kLine, kArc, kPoint, kAside };

/// A figure to be placed.
struct FigureRequest {
  std::size_t index = 0;
  Seat seat = Seat::kPoint;
  Meaning meaning = Meaning::kFact;
  Size size;
  Point a, b;               ///< kLine: ends of the dimension line (its visible part). kPoint, kAside: a
  double radius = 0;        ///< kArc: about a
  double from = 0, to = 0;  ///< kArc: radians on screen, from < to
  bool visible = true;
};

/// Where it went, with what had to be drawn for it.
struct Place {
  std::size_t index = 0;
  Meaning meaning = Meaning::kFact;
  Box box, target;
  std::vector<PlacedLine> strokes;  ///< the line carried on under the figure, or a leader
  bool visible = true;
};

/// Angle at which text along a–b is read from the bottom or from the right: [−90°, 90°), as radians on screen.
[[nodiscard]] double reading_angle(Point a, Point b);

/// `lines` are what figures should not stand on; `target` as in LayoutOptions. Order of the result is that of
/// `requests`.
[[nodiscard]] std::vector<Place> place_figures(const std::vector<FigureRequest>& requests,
                                               const std::vector<PlacedLine>& lines, double target);

/// Moves what stands outside `rect` (0, 0 to w, h) or on another figure to the nearest free spot inside.
void keep_inside(std::vector<Place>& places, const std::vector<FigureRequest>& requests, Size rect, double padding);

}  // namespace bentbook::draw
