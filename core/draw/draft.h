#pragma once
/// A drawing at one scale with its dimension lines and figures. Inside draw/ only; layout.h is what others use.

#include <span>
#include <vector>

#include "draw/figures.h"
#include "draw/layout.h"

namespace bentbook::draw {

struct Draft {
  Layout layout;
  std::vector<PlacedLine> obstacles;  ///< what figures keep off: the lines, and arcs in straight parts
  std::vector<FigureRequest> requests;
  std::vector<Place> places;
};

/// Everything placed with (0, 0) at `origin`, whether it fits in options.rect or not. `zoomed`: figures of what lies
/// outside the rectangle are not visible, those of what is partly seen move into it.
[[nodiscard]] Draft make_draft(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& options,
                               double scale, Point origin, bool zoomed);

/// Upright bounds of all strokes and visible figures.
[[nodiscard]] Bounds bounds_of(const Draft& draft);

}  // namespace bentbook::draw
