#include "frame/drawings/sketch.h"

#include "frame/joints/pins.h"
#include "numeric/libm.h"

namespace bentbook {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

namespace {

constexpr double kPastMember = 0.3;  // of the member's height: how far the receiver is drawn past it

}  // namespace

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
  draw::turn_quarters(drawing, static_cast<int>(from));
  return drawing;
}

}  // namespace bentbook
