#include "paper/clip.h"

#include <algorithm>
#include <utility>

#include "numeric/libm.h"
#include "numeric/sorting.h"
#include "paper/page_part.h"

namespace bentbook::paper {
namespace {

using draw::Point;

constexpr double kRadian = libm::kPi / 180;

/// Angles within the arc at which its circle comes to x = at (or y = at).
void add_crossings(std::vector<double>& out, const PageArc& arc, double at, bool upright) {
  const double away = upright ? at - arc.centre.x : arc.centre.y - at;
  if (libm::fabs(away) >= arc.radius) return;
  const double half = libm::acos(away / arc.radius) / kRadian;
  for (const double crossing : {half, -half}) {
    const double deg = upright ? crossing : 90 - crossing;
    const double turns = libm::floor((arc.from_deg - deg) / 360) + 1;
    for (double found = deg + 360 * turns; found < arc.to_deg; found += 360) out.push_back(found);
  }
}

}  // namespace

std::optional<PageLine> clipped_line(const PageLine& line, const Window& window) {
  const double dx = line.b.x - line.a.x, dy = line.b.y - line.a.y;
  double from = 0, to = 1;
  const auto narrow = [&](double step, double room) {  // inside where t · step <= room
    if (step == 0) return room >= 0;
    if (step > 0)
      to = std::min(to, room / step);
    else
      from = std::max(from, room / step);
    return from <= to;
  };
  if (!narrow(-dx, line.a.x - window.left) || !narrow(dx, window.right - line.a.x)) return std::nullopt;
  if (!narrow(-dy, line.a.y - window.top) || !narrow(dy, window.bottom - line.a.y)) return std::nullopt;
  PageLine out = line;
  if (from > 0) out.a = {line.a.x + from * dx, line.a.y + from * dy};
  if (to < 1) out.b = {line.a.x + to * dx, line.a.y + to * dy};
  return out;
}

std::vector<PageArc> clipped_arc(const PageArc& arc, const Window& window) {
  std::vector<double> ends{arc.from_deg};
  add_crossings(ends, arc, window.left, true);
  add_crossings(ends, arc, window.right, true);
  add_crossings(ends, arc, window.top, false);
  add_crossings(ends, arc, window.bottom, false);
  ends.push_back(arc.to_deg);
  sort_up(ends);
  std::vector<PageArc> out;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    if (ends[i + 1] - ends[i] < 1e-9 || !window.holds(on_arc(arc, (ends[i] + ends[i + 1]) / 2))) continue;
    if (!out.empty() && out.back().to_deg >= ends[i] - 1e-9) {
      out.back().to_deg = ends[i + 1];
      continue;
    }
    PageArc part = arc;
    part.from_deg = ends[i];
    part.to_deg = ends[i + 1];
    out.push_back(part);
  }
  return out;
}

std::vector<Point> clipped_area(std::vector<Point> polygon, const Window& window) {
  // Inside where a·x + b·y <= c.
  const auto keep = [&](double a, double b, double c) {
    std::vector<Point> out;
    out.reserve(polygon.size() + 4);
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point p = polygon[i], q = polygon[i + 1 == polygon.size() ? 0 : i + 1];
      const double dp = a * p.x + b * p.y - c, dq = a * q.x + b * q.y - c;
      if (dp <= 0) out.push_back(p);
      if ((dp <= 0) == (dq <= 0)) continue;
      const double t = dp / (dp - dq);
      out.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
    }
    polygon = std::move(out);
  };
  keep(-1, 0, -window.left);
  keep(1, 0, window.right);
  keep(0, -1, -window.top);
  keep(0, 1, window.bottom);
  return polygon;
}

}  // namespace bentbook::paper
