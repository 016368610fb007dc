#include "ui/drawing/line_pen.h"

#include <algorithm>

#include "draw/fill.h"
#include "numeric/libm.h"

namespace bentbook::screens {
namespace {

/// Line types by ISO 128, in the order of draw::Stroke: width in CSS px, and dashes and gaps in turn (none:
/// continuous).
struct LineType {
  float width;
  std::size_t parts;
  float pattern[4];
};
constexpr LineType kLineTypes[] = {
    {2, 0, {}},             // visible
    {1, 2, {8, 4}},         // hidden
    {1, 4, {20, 4, 2, 4}},  // centre
    {1, 0, {}},             // thin
    {3, 0, {}},             // cut
    {1.5F, 0, {}},          // scale
};

}  // namespace

void LinePen::path(const std::vector<ImVec2>& points, draw::Stroke stroke, bool closed) {
  const LineType& type = kLineTypes[static_cast<std::size_t>(stroke)];
  const ImU32 colour = stroke == draw::Stroke::kCut ? theme_.cut : theme_.ink;
  if (type.parts == 0) {
    list_.AddPolyline(points.data(), static_cast<int>(points.size()), colour, closed ? ImDrawFlags_Closed : 0,
                      type.width);
    return;
  }
  std::size_t part = 0;
  float left = type.pattern[0];
  const std::size_t segments = closed ? points.size() : points.size() - 1;
  for (std::size_t i = 0; i < segments; ++i)
    dash(points[i], points[(i + 1) % points.size()], {type.pattern, type.parts}, type.width, colour, part, left);
}

void LinePen::dash(ImVec2 a, ImVec2 b, std::span<const float> pattern, float width, ImU32 colour, std::size_t& part,
                   float& left) {
  const float dx = b.x - a.x, dy = b.y - a.y;
  const float length = static_cast<float>(libm::hypot(dx, dy));
  // Off the canvas there may be miles of it in a zoomed view.
  if (!(length > 0) || length > 20000) return;
  for (float run = 0; run < length;) {
    const float step = std::min(left, length - run);
    if (part % 2 == 0)
      list_.AddLine({a.x + dx * run / length, a.y + dy * run / length},
                    {a.x + dx * (run + step) / length, a.y + dy * (run + step) / length}, colour, width);
    run += step;
    left -= step;
    if (left <= 0) {
      part = (part + 1) % pattern.size();
      left = pattern[part];
    }
  }
}

void LinePen::arc(const draw::PlacedArc& arc) {
  const double turn = arc.to - arc.from;
  const int parts = std::clamp(static_cast<int>(libm::fabs(turn) * libm::sqrt(std::max(arc.radius, 1.0)) * 2), 2, 200);
  std::vector<ImVec2> points;
  points.reserve(static_cast<std::size_t>(parts) + 1);
  for (int i = 0; i <= parts; ++i) {
    const double a = arc.from + turn * i / parts;
    points.push_back(at({arc.centre.x + arc.radius * libm::cos(a), arc.centre.y + arc.radius * libm::sin(a)}));
  }
  path(points, arc.stroke, false);
}

void LinePen::triangles(std::span<const draw::Point> px, ImU32 colour) {
  const std::vector<std::uint16_t> t = draw::triangles(px);
  for (std::size_t i = 0; i + 2 < t.size(); i += 3)
    list_.AddTriangleFilled(at(px[t[i]]), at(px[t[i + 1]]), at(px[t[i + 2]]), colour);
}

void LinePen::polygon(std::span<const draw::Point> px, const draw::Polygon& polygon) {
  const auto strokes = [&](bool down, ImU32 colour) {
    constexpr double kApart = 9;
    for (const draw::Segment& s : draw::hatch(px, kApart, down)) list_.AddLine(at(s.a), at(s.b), colour, 1);
  };
  const ImU32 faint = mix(theme_.ground, theme_.ink, 0.62F);
  switch (polygon.fill) {
    case draw::Fill::kNone:
      break;
    case draw::Fill::kPaper:
      triangles(px, theme_.ground);
      break;
    case draw::Fill::kShade:
      triangles(px, mix(theme_.ground, theme_.ink, 0.1F));
      break;
    case draw::Fill::kInk:
      triangles(px, theme_.ink);
      break;
    case draw::Fill::kWaste:
      strokes(true, faint);
      [[fallthrough]];
    case draw::Fill::kSection:
      strokes(false, faint);
      break;
  }
  if (!polygon.outlined || px.size() < 2) return;
  std::vector<ImVec2> points;
  points.reserve(px.size());
  for (const draw::Point& p : px) points.push_back(at(p));
  path(points, polygon.stroke, true);
}

}  // namespace bentbook::screens
