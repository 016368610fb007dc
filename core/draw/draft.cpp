#include "draw/draft.h"

#include <algorithm>

#include "numeric/libm.h"

namespace bentbook::draw {
namespace {

constexpr double kExtensionGap = 3;   // px between the thing and its extension line
constexpr double kExtensionPast = 5;  // px that it runs past the dimension line
constexpr double kOblique = 5;        // half of an end stroke's length
constexpr double kOvershoot = 4;      // px that the dimension line runs past its ends
constexpr double kTight = 14;         // a dimension shorter than this is drawn from outside
constexpr double kTightTail = 14;
constexpr double kDot = 1.5;  // radius of a leader's end, drawn thick
constexpr double kRadians = libm::kPi / 180;

bool finite(double v) { return v - v == 0; }

/// Part of a–b inside the rectangle; false if none is.
bool clip_to(Size rect, Point& a, Point& b) {
  double from = 0, to = 1;
  const auto clip = [&](double start, double step, double high) {
    if (step == 0) return start >= 0 && start <= high;
    const double t0 = -start / step, t1 = (high - start) / step;
    from = std::max(from, std::min(t0, t1));
    to = std::min(to, std::max(t0, t1));
    return from < to;
  };
  if (!clip(a.x, b.x - a.x, rect.w) || !clip(a.y, b.y - a.y, rect.h)) return false;
  const Point p = a;
  const Point step{b.x - a.x, b.y - a.y};
  a = {p.x + step.x * from, p.y + step.y * from};
  b = {p.x + step.x * to, p.y + step.y * to};
  return true;
}

class Drafting {
 public:
  Drafting(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& options)
      : drawing_(drawing), sizes_(sizes), options_(options) {}

  [[nodiscard]] Draft draft(double scale, Point origin, bool zoomed) const {
    Draft d;
    d.layout.scale = scale;
    d.layout.origin = origin;
    add_outlines(d);
    std::size_t index = 0;
    for (const Dimension& dimension : drawing_.dimensions) add_dimension(d, dimension, index++, zoomed);
    for (const AngleDimension& angle : drawing_.angles) add_angle(d, angle, index++);
    for (const Note& note : drawing_.notes) add_note(d, note, index++, zoomed);
    d.obstacles.insert(d.obstacles.end(), d.layout.lines.begin(), d.layout.lines.end());
    d.places = place_figures(d.requests, d.obstacles, options_.target);
    return d;
  }

 private:
  [[nodiscard]] Size size_of(std::size_t index) const { return index < sizes_.size() ? sizes_[index] : Size{}; }
  [[nodiscard]] bool seen(Point p, bool zoomed) const {
    return !zoomed || (p.x >= 0 && p.y >= 0 && p.x <= options_.rect.w && p.y <= options_.rect.h);
  }

  static void add_line(Draft& d, Point a, Point b, Stroke stroke, bool ordinary) {
    if (finite(a) && finite(b)) d.layout.lines.push_back({a, b, stroke, ordinary, false});
  }

  void add_outlines(Draft& d) const {
    for (const Polygon& polygon : drawing_.polygons) {
      if (!polygon.outlined) continue;
      for (std::size_t i = 0; i < polygon.points.size(); ++i)
        add_line(d, d.layout.to_px(polygon.points[i]), d.layout.to_px(polygon.points[(i + 1) % polygon.points.size()]),
                 polygon.stroke, true);
    }
    for (const Line& line : drawing_.lines)
      add_line(d, d.layout.to_px(line.a), d.layout.to_px(line.b), line.stroke, true);
    for (const Arc& arc : drawing_.arcs) {
      if (!finite(arc.centre) || !finite(arc.radius)) continue;
      const double from = std::min(-arc.from_deg, -arc.to_deg), to = std::max(-arc.from_deg, -arc.to_deg);
      d.layout.arcs.push_back(
          {d.layout.to_px(arc.centre), arc.radius * d.layout.scale, from * kRadians, to * kRadians, arc.stroke, true});
    }
  }

  void add_dimension(Draft& d, const Dimension& dimension, std::size_t index, bool zoomed) const {
    const Size size = size_of(index);
    const Point a = d.layout.to_px(dimension.a), b = d.layout.to_px(dimension.b);
    if (!finite(a) || !finite(b) || !finite(dimension.offset)) return;
    Point along{dimension.along.x, -dimension.along.y};
    if (dimension.along == Point{}) along = {b.x - a.x, b.y - a.y};
    const double length = libm::hypot(along.x, along.y);
    along = length > 1e-9 ? Point{along.x / length, along.y / length} : Point{1, 0};
    if ((b.x - a.x) * along.x + (b.y - a.y) * along.y < 0) along = {-along.x, -along.y};
    // Left of a→b with y down.
    const Point left{along.y, -along.x};
    const double la = a.x * left.x + a.y * left.y, lb = b.x * left.x + b.y * left.y;
    const double row = (dimension.offset >= 0 ? std::max(la, lb) : std::min(la, lb)) + dimension.offset * options_.row;
    const Point p = moved(a, left, row - la), q = moved(b, left, row - lb);
    add_extension(d, a, left, row - la);
    add_extension(d, b, left, row - lb);
    if (dimension.bare)
      add_line(d, p, q, Stroke::kThin, false);
    else
      add_dimension_line(d, p, q, along);
    if (!(size.w > 0)) return;
    FigureRequest request{index, Seat::kLine, dimension.meaning, size, p, q};
    if (zoomed) request.visible = clip_to(options_.rect, request.a, request.b);
    d.requests.push_back(request);
  }

  static void add_extension(Draft& d, Point from, Point direction, double by) {
    if (libm::fabs(by) <= kExtensionGap + 2) return;
    const double sign = by < 0 ? -1 : 1;
    add_line(d, moved(from, direction, sign * kExtensionGap), moved(from, direction, by + sign * kExtensionPast),
             Stroke::kThin, false);
  }

  static void add_dimension_line(Draft& d, Point p, Point q, Point along) {
    const bool tight = libm::hypot(q.x - p.x, q.y - p.y) < kTight;
    const double past = tight ? kTightTail : kOvershoot;
    add_line(d, moved(p, along, -past), moved(q, along, past), Stroke::kThin, false);
    // The end strokes rise to the right as the figure is read.
    const double angle = reading_angle(p, moved(p, along, 1)) - libm::kPi / 4;
    const Point slant{libm::cos(angle), libm::sin(angle)};
    for (const Point end : {p, q})
      d.layout.lines.push_back(
          {moved(end, slant, -kOblique), moved(end, slant, kOblique), Stroke::kVisible, false, true});
  }

  void add_angle(Draft& d, const AngleDimension& angle, std::size_t index) const {
    const Size size = size_of(index);
    const Point vertex = d.layout.to_px(angle.vertex);
    if (!finite(vertex) || !finite(angle.row) || !finite(angle.from_deg) || !finite(angle.to_deg)) return;
    const double from = -std::max(angle.from_deg, angle.to_deg) * kRadians;
    const double to = -std::min(angle.from_deg, angle.to_deg) * kRadians;
    const double radius = angle.row * options_.row;
    d.layout.arcs.push_back({vertex, radius, from, to, Stroke::kThin, false});
    // As lines too, so that figures keep off them; and the end strokes across the arc's ends.
    add_arc_obstacle(d, vertex, radius, from, to);
    for (const double end : {from, to}) {
      const Point at{vertex.x + radius * libm::cos(end), vertex.y + radius * libm::sin(end)};
      const Point slant{libm::cos(end + libm::kPi / 4), libm::sin(end + libm::kPi / 4)};
      d.layout.lines.push_back(
          {moved(at, slant, -kOblique), moved(at, slant, kOblique), Stroke::kVisible, false, true});
    }
    if (!(size.w > 0)) return;
    const Point middle{vertex.x + radius * libm::cos((from + to) / 2), vertex.y + radius * libm::sin((from + to) / 2)};
    const bool visible = options_.view == View{} || seen(middle, true);
    d.requests.push_back({index, Seat::kArc, angle.meaning, size, vertex, vertex, radius, from, to, visible});
  }

  void add_note(Draft& d, const Note& note, std::size_t index, bool zoomed) const {
    const Point at = d.layout.to_px(note.at);
    if (!finite(at) || !(size_of(index).w > 0)) return;
    const bool aside = note.stands == Stands::kAside;
    if (aside) d.layout.arcs.push_back({at, kDot, 0, 2 * libm::kPi, Stroke::kVisible, false});
    d.requests.push_back(
        {index, aside ? Seat::kAside : Seat::kPoint, note.meaning, size_of(index), at, at, 0, 0, 0, seen(at, zoomed)});
  }

  static void add_arc_obstacle(Draft& d, Point vertex, double radius, double from, double to) {
    constexpr int kParts = 6;
    const auto at = [&](int i) {
      const double angle = from + (to - from) * i / kParts;
      return Point{vertex.x + radius * libm::cos(angle), vertex.y + radius * libm::sin(angle)};
    };
    for (int i = 0; i < kParts; ++i) d.obstacles.push_back({at(i), at(i + 1), Stroke::kThin, false, false});
  }

  const Drawing& drawing_;
  std::span<const Size> sizes_;
  const LayoutOptions& options_;
};

}  // namespace

Draft make_draft(const Drawing& drawing, std::span<const Size> sizes, const LayoutOptions& options, double scale,
                 Point origin, bool zoomed) {
  return Drafting(drawing, sizes, options).draft(scale, origin, zoomed);
}

Bounds bounds_of(const Draft& draft) {
  Bounds bounds;
  for (const PlacedLine& line : draft.obstacles) {
    bounds.add(line.a);
    bounds.add(line.b);
  }
  for (const PlacedArc& arc : draft.layout.arcs) {
    constexpr int kParts = 12;
    for (int i = 0; i <= kParts; ++i) {
      const double angle = arc.from + (arc.to - arc.from) * i / kParts;
      bounds.add(Point{arc.centre.x + arc.radius * libm::cos(angle), arc.centre.y + arc.radius * libm::sin(angle)});
    }
  }
  for (const Place& place : draft.places) {
    if (!place.visible) continue;
    bounds.add(place.box);
    for (const PlacedLine& stroke : place.strokes) {
      bounds.add(stroke.a);
      bounds.add(stroke.b);
    }
  }
  return bounds;
}

}  // namespace bentbook::draw
