#include "frame/drawings/sketch.h"

#include <utility>

#include "frame/joints/pins.h"
#include "numeric/libm.h"

namespace bentbook {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

namespace {

constexpr double kPastMember = 0.3;  // of the member's height: how far the receiver is drawn past it

Point between(Point a, Point b, double part) { return {a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part}; }

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
    const Point at = between(a, b, part);
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
  drawing.notes.push_back({at, std::move(key), Meaning::kGiven, draw::Stands::kAside});
}
void Sketch::told_aside(Point at, std::string key) {
  drawing.notes.push_back({at, std::move(key), Meaning::kAnswer, draw::Stands::kAside});
}

EndSketch::EndSketch(const JointWood& of) : wood(of) {
  cos = 1 / libm::hypot(1, wood.lean);
  tall = wood.high / cos;
  above = kPastMember * tall;
}

void EndSketch::draw_timbers(Sketch& sketch, double housing, double length) const {
  const double low = -above, high = tall + above, back = housing - wood.receiver;
  sketch.line({housing, low}, {housing, high});
  sketch.line({back, low}, {back, high});
  sketch.torn({back, high}, {housing, high});
  sketch.torn({back, low}, {housing, low});
  for (const double edge : {0.0, tall}) {
    if (housing > 0) sketch.line(on(0, edge), on(housing, edge), Stroke::kHidden);
    sketch.line(on(housing, edge), on(length, edge));
  }
  sketch.torn(on(length, tall), on(length, 0));
}

void EndSketch::draw_housing(Sketch& sketch, Length housing) const {
  const double deep = housing.in();
  if (deep > 0)
    sketch.given({0, tall + above}, {deep, tall + above}, 2.1, "housing", {1, 0});
  else
    sketch.given_aside({0, tall * 0.9}, "housing");
}

PegPlace place_of(const EndSketch& end, const PinPattern& peg, int pegs, double drawbore, double low, double high,
                  double length) {
  const double deep = peg_row(peg, length, drawbore);
  const double middle = (low + end.wood.lean * deep + high) / 2;
  const double step = pegs > 1 ? peg.spacing.in() : 0;
  return {{-deep, middle - (pegs - 1) / 2.0 * step}, step};
}

void draw_pegs(Sketch& sketch, const EndSketch& end, const PinPattern& peg, int pegs, double drawbore, double low,
               double high, double length) {
  const PegPlace place = place_of(end, peg, pegs, drawbore, low, high, length);
  const double d = peg.diameter.in();
  const auto at = [&](int i) { return Point{place.first.x, place.first.y + i * place.step}; };
  const Point last = at(pegs > 0 ? pegs - 1 : 0);
  sketch.given_aside(last, "pegs");
  if (pegs == 0) return;
  for (int i = 0; i < pegs; ++i) {
    sketch.bore(at(i), d);
    // The tenon's own hole, nearer to its shoulder.
    if (drawbore > 0) sketch.drawing.arcs.push_back({{at(i).x + drawbore, at(i).y}, d / 2, 0, 360, Stroke::kThin});
  }
  sketch.given_aside(at(0), "peg.diameter");
  sketch.given({at(0).x, -end.above}, {0, -end.above}, -1, "peg.from_shoulder", {1, 0});
  if (pegs > 1) sketch.given(at(0), at(1), 1, "peg.spacing", {0, 1});
  if (end.wood.lean == 0) sketch.told(last, {last.x, end.tall}, 1, "first_peg", {0, 1});
}

draw::Drawing turned(draw::Drawing drawing, MemberFrom from) {
  const int quarters = static_cast<int>(from);
  const auto turn = [&](Point& p) {
    for (int i = 0; i < quarters; ++i) p = {-p.y, p.x};
  };
  for (draw::Polygon& polygon : drawing.polygons)
    for (Point& p : polygon.points) turn(p);
  for (draw::Line& line : drawing.lines) {
    turn(line.a);
    turn(line.b);
  }
  for (draw::Arc& arc : drawing.arcs) {
    turn(arc.centre);
    arc.from_deg += 90 * quarters;
    arc.to_deg += 90 * quarters;
  }
  for (draw::Dimension& dimension : drawing.dimensions) {
    turn(dimension.a);
    turn(dimension.b);
    turn(dimension.along);
  }
  for (draw::Note& note : drawing.notes) turn(note.at);
  return drawing;
}

}  // namespace bentbook
