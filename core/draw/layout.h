#pragma once
/// Where everything of a Drawing goes in a rectangle: a pure function of the drawing, the sizes of its figures' texts
/// and the rectangle. Output is in the rectangle's own px, x right, y DOWN from its top left.
///
/// Dimensions by ISO 129: a thin line off the thing measured, extension lines, an oblique stroke at each end, the
/// figure off the line at its middle and upright, whichever way the line runs. A figure that has no room there stands
/// on the other side, beside, or set aside with a leader: wherever it crosses least and lies on no other figure.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "draw/box.h"
#include "draw/drawing.h"

namespace bentbook::draw {

/// A change of the fitted view: zoom about the layout's middle, then shift in px.
struct View {
  double zoom = 1, dx = 0, dy = 0;
  friend constexpr bool operator==(const View&, const View&) = default;
};

struct LayoutOptions {
  Size rect;
  double padding = 8;      ///< kept free along the rectangle's sides
  double row = 32;         ///< distance of dimension rows
  double target = 48;      ///< least side of what a finger presses; given figures stand so far apart where they can
  double max_scale = 1e9;  ///< px per inch, at most (a small part is not blown up past this)
  View view;
};

/// A stroke in px. `ordinary`: part of the thing drawn; else it belongs to a dimension or figure.
struct PlacedLine {
  Point a, b;
  Stroke stroke = Stroke::kThin;
  bool ordinary = true;
  bool oblique = false;  ///< the stroke at a dimension's end (drawn thick)
  bool leader = false;   ///< joins a figure that was set aside to what it tells of
};
/// Radians, clockwise on screen, from < to.
struct PlacedArc {
  Point centre;
  double radius = 0, from = 0, to = 0;
  Stroke stroke = Stroke::kThin;
  bool ordinary = true;
};
struct PlacedFigure {
  std::size_t index = 0;  ///< among dimensions, then angles, then notes
  std::string key;
  Meaning meaning = Meaning::kFact;
  Box box;              ///< of the text
  Box target;           ///< upright; what a finger presses
  bool visible = true;  ///< false: not in the rectangle (a zoomed view)
};

struct Layout {
  Size size;         ///< what of the rectangle it takes: its whole width, and no more height than is needed
  double scale = 1;  ///< px per inch
  Point origin;      ///< where the drawing's (0, 0) lies
  std::vector<PlacedLine> lines;
  std::vector<PlacedArc> arcs;
  std::vector<PlacedFigure> figures;  ///< those that have a text
  [[nodiscard]] Point to_px(Point p) const { return {origin.x + p.x * scale, origin.y - p.y * scale}; }
};

/// `sizes` holds one text size for each dimension, angle and note in this order; {0, 0} leaves that figure's text out.
/// Without a view, everything lies in the layout's size; figures do not overlap as long as the rectangle has room for
/// them. A view zooms about the middle of that size.
[[nodiscard]] Layout lay_out(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& options);

}  // namespace bentbook::draw
