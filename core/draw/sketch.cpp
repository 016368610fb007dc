#include "draw/sketch.h"

#include <utility>

namespace bentbook::draw {
namespace {

Point on_way(Point a, Point b, double part) { return {a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part}; }

}  // namespace

void Sketch::line(Point a, Point b, Stroke stroke) { drawing.lines.push_back({a, b, stroke}); }

void Sketch::shape(std::vector<Point> points, Fill fill, Stroke stroke) {
  drawing.polygons.push_back({std::move(points), stroke, fill});
}

void Sketch::rectangle(Point low, Point high, Fill fill, Stroke stroke) {
  shape({low, {high.x, low.y}, high, {low.x, high.y}}, fill, stroke);
}

void Sketch::torn(Point a, Point b) {
  const Point side{(b.y - a.y) * 0.06, (a.x - b.x) * 0.06};
  const auto off = [&](double part, double way) {
    const Point at = on_way(a, b, part);
    return Point{at.x + way * side.x, at.y + way * side.y};
  };
  const Point points[] = {a, off(0.42, 0), off(0.46, 1), off(0.54, -1), off(0.58, 0), b};
  for (std::size_t i = 0; i + 1 < std::size(points); ++i) line(points[i], points[i + 1], Stroke::kThin);
}

void Sketch::bore(Point centre, double diameter) {
  drawing.arcs.push_back({centre, diameter / 2, 0, 360, Stroke::kVisible});
  line({centre.x - diameter, centre.y}, {centre.x + diameter, centre.y}, Stroke::kCentre);
  line({centre.x, centre.y - diameter}, {centre.x, centre.y + diameter}, Stroke::kCentre);
}

void Sketch::given(Point a, Point b, double offset, std::string key, Point along) {
  drawing.dimensions.push_back({a, b, offset, along, std::move(key), Meaning::kGiven});
}
void Sketch::told(Point a, Point b, double offset, std::string key, Point along) {
  drawing.dimensions.push_back({a, b, offset, along, std::move(key), Meaning::kAnswer});
}
void Sketch::given_aside(Point at, std::string key) {
  drawing.notes.push_back({at, std::move(key), Meaning::kGiven, Stands::kAside});
}
void Sketch::told_aside(Point at, std::string key) {
  drawing.notes.push_back({at, std::move(key), Meaning::kAnswer, Stands::kAside});
}

void turn_quarters(Drawing& drawing, int quarters) {
  const auto turn = [&](Point& p) {
    for (int i = 0; i < quarters; ++i) p = {-p.y, p.x};
  };
  for (Polygon& polygon : drawing.polygons)
    for (Point& p : polygon.points) turn(p);
  for (Line& line : drawing.lines) {
    turn(line.a);
    turn(line.b);
  }
  for (Arc& arc : drawing.arcs) {
    turn(arc.centre);
    arc.from_deg += 90 * quarters;
    arc.to_deg += 90 * quarters;
  }
  for (Dimension& dimension : drawing.dimensions) {
    turn(dimension.a);
    turn(dimension.b);
    turn(dimension.along);
  }
  for (AngleDimension& angle : drawing.angles) {
    turn(angle.vertex);
    angle.from_deg += 90 * quarters;
    angle.to_deg += 90 * quarters;
  }
  for (Note& note : drawing.notes) turn(note.at);
}

}  // namespace bentbook::draw
