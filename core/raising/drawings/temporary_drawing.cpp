#include "raising/drawings/temporary_drawing.h"

#include <algorithm>

#include "draw/sketch.h"
#include "frame/facts.h"
#include "numeric/index.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Sketch;
using draw::Stroke;

/// How far from the brace a timber may lie and still be drawn with it, square to the elevation.
constexpr double kBeside = 12;

double depth_of(Vec3 p, Elevation elevation) { return elevation == Elevation::kAcross ? p.y : p.x; }

/// What stands in the plane that the brace runs in.
void draw_beside(Sketch& sketch, const Frame& frame, const TemporaryLine& line, Elevation elevation) {
  const double a = depth_of(line.from, elevation), b = depth_of(line.to, elevation);
  const double low = std::min(a, b) - kBeside, high = std::max(a, b) + kBeside;
  for (const TimberKind kind : kDrawnInOrder)
    for (const Timber& timber : frame.timbers) {
      if (timber.kind != kind || !timber.placed) continue;
      const double end = depth_of(timber.at.origin, elevation);
      const double other = end + timber.length * depth_of(timber.at.x, elevation);
      if (std::max(end, other) < low || std::min(end, other) > high) continue;
      const bool seen_at_end = libm::fabs(end - other) > 0.9 * timber.length;
      sketch.drawing.polygons.push_back(
          elevation_of(corners_of(timber), elevation, seen_at_end ? Fill::kSection : Fill::kPaper));
    }
}

/// The stick on its way; a rope is a line.
void draw_stick(Sketch& sketch, const Temporary& temporary, Point a, Point b) {
  if (temporary.kind == TemporaryKind::kGuy) return sketch.line(a, b, Stroke::kCut);
  const double breadth = 3.5, length = libm::hypot(b.x - a.x, b.y - a.y);
  if (length <= 0) return;
  const Point side{-(b.y - a.y) / length * breadth / 2, (b.x - a.x) / length * breadth / 2};
  sketch.shape({{a.x + side.x, a.y + side.y},
                {a.x - side.x, a.y - side.y},
                {b.x - side.x, b.y - side.y},
                {b.x + side.x, b.y + side.y}},
               Fill::kShade, Stroke::kCut);
}

/// How far up or along a timber the end is, on the side where the brace is not.
void draw_station(Sketch& sketch, const Frame& frame, const TimberPoint& point, Point here, Point other,
                  Elevation elevation, const char* key) {
  const Timber& timber = frame.timbers[at(timber_by_mark(frame, point.mark))];
  const Point end = seen(timber.at.origin, elevation);
  const double turned = (here.x - end.x) * (other.y - end.y) - (here.y - end.y) * (other.x - end.x);
  sketch.given(end, here, turned > 0 ? -1 : 1, key);
}

}  // namespace

Elevation elevation_of(const TemporaryLine& line) {
  return libm::fabs(line.to.x - line.from.x) >= libm::fabs(line.to.y - line.from.y) ? Elevation::kAcross
                                                                                    : Elevation::kAlong;
}

draw::Drawing temporary_drawing(const Frame& frame, const Temporary& temporary) {
  const auto line = temporary_line(frame, temporary);
  if (!line) return {};
  const Elevation elevation = elevation_of(*line);
  Sketch sketch;
  draw_beside(sketch, frame, *line, elevation);
  const Point a = seen(line->from, elevation), b = seen(line->to, elevation);
  draw_stick(sketch, temporary, a, b);
  draw_station(sketch, frame, temporary.from, a, b, elevation, "from.station");
  sketch.given_aside(a, "from.mark");
  sketch.given_aside(b, "to.mark");
  if (!temporary.to.mark.empty()) {
    draw_station(sketch, frame, temporary.to, b, a, elevation, "to.station");
  } else {
    const char* key = elevation == Elevation::kAcross ? "ground_x" : "ground_y";
    const Point zero{0, b.y};
    if (b.x < 0)
      sketch.given(b, zero, -1.2, key, {1, 0});
    else
      sketch.given(zero, b, -1.2, key, {1, 0});
    sketch.line({0, b.y - 12}, {0, std::max(a.y, b.y)}, Stroke::kCentre);
    sketch.line({std::min({a.x, b.x, 0.0}) - 18, b.y}, {std::max({a.x, b.x, 0.0}) + 18, b.y}, Stroke::kThin);
  }
  sketch.told(a, b, b.x < a.x ? -1 : 1, "length");
  return sketch.drawing;
}

}  // namespace bentbook
