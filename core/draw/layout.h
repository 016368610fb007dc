#pragma once
/// Where everything of a Drawing goes in a rectangle: a pure function of the drawing, the sizes of its figures' texts
/// and the rectangle. Output is in the rectangle's own px, x right, y DOWN from its top left.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "draw/drawing.h"

namespace bentbook::draw {

struct Size {
  double w = 0, h = 0;
};

/// Rectangle with its centre at `centre`, its sides w and h, turned by `angle` (radians, clockwise on screen).
struct Box {
  Point centre;
  double w = 0, h = 0;
  double angle = 0;
};
/// True if the two have a point in common that is inside both (touching edges do not count).
[[nodiscard]] bool overlap(const Box& a, const Box& b);
/// The upright box around it.
[[nodiscard]] Box upright(const Box& box);

/// A change of the fitted view: zoom about the rectangle's middle, then shift in px.
struct View {
  double zoom = 1, dx = 0, dy = 0;
  friend constexpr bool operator==(const View&, const View&) = default;
};

struct LayoutOptions {
  Size rect;
  double padding = 8;  ///< kept free along the rectangle's sides
  double row = 32;     ///< distance of dimension rows
  double target = 48;  ///< least side of what a finger presses; targets of given figures do not overlap if avoidable
  double max_scale = 1e9;  ///< px per inch, at most (a small part is not blown up past this)
  View view;
};

/// A stroke in px.
struct PlacedLine {
  Point a, b;
  Stroke stroke = Stroke::kThin;
  Meaning meaning = Meaning::kFact;  ///< of the dimension that it belongs to
  bool slash = false;                ///< the slash at a dimension's end
  bool ordinary = true;              ///< part of the thing drawn, not of a dimension
};
struct PlacedArc {
  Point centre;
  double radius = 0, from = 0, to = 0;  ///< radians, clockwise on screen, from < to
  Stroke stroke = Stroke::kThin;
  Meaning meaning = Meaning::kFact;
  bool ordinary = true;
};
struct PlacedFigure {
  std::size_t index = 0;  ///< among dimensions, then angles, then notes
  std::string key;
  Meaning meaning = Meaning::kFact;
  Box box;              ///< of the text
  Box target;           ///< upright; what a finger presses
  bool visible = true;  ///< false: outside the rectangle in a zoomed view
};

struct Layout {
  double scale = 1;  ///< px per inch
  Point origin;      ///< where the drawing's (0, 0) lies
  std::vector<PlacedLine> lines;
  std::vector<PlacedArc> arcs;
  std::vector<PlacedFigure> figures;
  [[nodiscard]] Point to_px(Point p) const { return {origin.x + p.x * scale, origin.y - p.y * scale}; }
};

/// `sizes` holds one text size for each dimension, angle and note in this order; {0, 0} leaves that figure's text out.
[[nodiscard]] Layout lay_out(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& options);

/// The parallel strokes at 45° that fill a polygon (px), `spacing` apart; `down` = true falls to the right.
struct Segment {
  Point a, b;
};
[[nodiscard]] std::vector<Segment> hatch(std::span<const Point> polygon, double spacing, bool down);
/// Triangles (index triples) of a simple polygon, either sense of rotation.
[[nodiscard]] std::vector<std::uint16_t> triangles(std::span<const Point> polygon);

}  // namespace bentbook::draw
