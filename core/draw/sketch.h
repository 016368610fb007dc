#pragma once
/// What drawings are put together from: strokes, shapes and figures, in inches of the drawing's own plane.

#include <string>
#include <vector>

#include "draw/drawing.h"

namespace bentbook::draw {

struct Sketch {
  Drawing drawing;

  void line(Point a, Point b, Stroke stroke = Stroke::kVisible);
  void shape(std::vector<Point> points, Fill fill, Stroke stroke = Stroke::kVisible);
  void rectangle(Point low, Point high, Fill fill, Stroke stroke = Stroke::kVisible);
  /// Where the drawing stops and the timber goes on.
  void torn(Point a, Point b);
  /// A bored hole seen along its axis, with its centre lines.
  void bore(Point centre, double diameter);

  /// Figures: a measure that is tapped, one that is told. `offset`, `along`: as in Dimension.
  void given(Point a, Point b, double offset, std::string key, Point along = {});
  void told(Point a, Point b, double offset, std::string key, Point along = {});
  void given_aside(Point at, std::string key);
  void told_aside(Point at, std::string key);
};

/// Turns all of it about the origin, so many quarters anticlockwise.
void turn_quarters(Drawing& drawing, int quarters);

}  // namespace bentbook::draw
