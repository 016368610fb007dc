#pragma once
/// What drawings are painted with: ISO 128's line types, and fills. px, as the list has them.

#include <imgui.h>

#include <span>
#include <vector>

#include "draw/drawing.h"
#include "draw/layout.h"
#include "ui/input.h"
#include "ui/theme.h"

namespace bentbook::screens {

class LinePen {
 public:
  LinePen(ImDrawList& list, const Theme& theme, const Rect& rect) : list_(list), theme_(theme), rect_(rect) {}

  /// A point of the rectangle, from its top left.
  [[nodiscard]] ImVec2 at(draw::Point p) const {
    return {rect_.x + static_cast<float>(p.x), rect_.y + static_cast<float>(p.y)};
  }
  /// A polyline with the stroke's pattern running on round its corners.
  void path(const std::vector<ImVec2>& points, draw::Stroke stroke, bool closed);
  void arc(const draw::PlacedArc& arc);
  /// Filled, and outlined where it says so; `px`: its corners.
  void polygon(std::span<const draw::Point> px, const draw::Polygon& polygon);

 private:
  void dash(ImVec2 a, ImVec2 b, std::span<const float> pattern, float width, ImU32 colour, std::size_t& part,
            float& left);
  void triangles(std::span<const draw::Point> px, ImU32 colour);

  ImDrawList& list_;
  const Theme& theme_;
  const Rect& rect_;
};

}  // namespace bentbook::screens
