#include "frame/drawings/lap_sketch.h"

#include "frame/drawings/sketch.h"
#include "numeric/libm.h"

namespace bentbook {

using draw::Fill;
using draw::Point;
using draw::Stroke;

namespace {

/// A hole seen from its side, plumb.
void bore_down(Sketch& sketch, double x, double low, double high, double diameter) {
  for (const double side : {x - diameter / 2, x + diameter / 2})
    sketch.line({side, low}, {side, high}, Stroke::kHidden);
  sketch.line({x, low - diameter / 2}, {x, high + diameter / 2}, Stroke::kCentre);
}

}  // namespace

draw::Drawing lap_from_side(const HalfLap& lap, const JointWood& wood) {
  Sketch sketch;
  const double high = wood.wide, half = high / 2, far = -wood.receiver, length = wood.receiver * 0.9;
  sketch.rectangle({far, 0}, {0, half}, Fill::kSection);
  sketch.line({far, high}, {length, high});
  sketch.line({far, half}, {far, high});
  sketch.line({0, 0}, {length, 0});
  sketch.torn({length, high}, {length, 0});
  sketch.line({far, half}, {0, half}, Stroke::kCut);
  sketch.line({0, 0}, {0, half}, Stroke::kCut);
  const double middle = far / 2;
  if (lap.pegs > 0) {
    bore_down(sketch, middle, 0, high, lap.peg.diameter.in());
    sketch.given_aside({middle + lap.peg.diameter.in() / 2, half * 0.6}, "peg.diameter");
  }
  sketch.given_aside({middle, half * 1.5}, "pegs");
  sketch.told({length, half}, {length, high}, -1, "lap_depth", {0, 1});
  return std::move(sketch.drawing);
}

draw::Drawing scarf_from_side(const Scarf& scarf, const JointWood& wood) {
  Sketch sketch;
  const double half = scarf.length.in() / 2, high = wood.high, middle = high / 2, out = half + high;
  for (const double y : {0.0, high}) sketch.line({-out, y}, {out, y});
  sketch.line({-half, middle}, {half, middle}, Stroke::kCut);
  sketch.line({-half, middle}, {-half, high}, Stroke::kCut);
  sketch.line({half, 0}, {half, middle}, Stroke::kCut);
  sketch.torn({-out, high}, {-out, 0});
  sketch.torn({out, high}, {out, 0});
  const auto at = [&](int i) { return peg_from_middle(scarf, i); };
  for (int i = 0; i < scarf.pegs; ++i) bore_down(sketch, at(i), 0, high, scarf.peg.diameter.in());
  sketch.given({-half, high}, {half, high}, 1, "length", {1, 0});
  const double last = scarf.pegs > 0 ? at(scarf.pegs - 1) : 0;
  sketch.given_aside({last, high * 0.3}, "pegs");
  if (scarf.pegs > 0) sketch.given_aside({at(0) + scarf.peg.diameter.in() / 2, high * 0.7}, "peg.diameter");
  if (scarf.pegs > 1) sketch.given({-half, 0}, {at(0), 0}, -1, "peg.from_shoulder", {1, 0});
  return std::move(sketch.drawing);
}

draw::Drawing mouth_from_side(const BirdsMouth& mouth, const JointWood& wood) {
  Sketch sketch;
  const double seat = mouth.seat.in(), plumb = wood.high * libm::hypot(1, wood.lean);
  const double left = -0.9 * wood.across, right = 1.9 * wood.across;
  const auto under = [&](double x) { return Point{x, wood.lean * (x - seat)}; };
  const auto over = [&](double x) { return Point{x, wood.lean * (x - seat) + plumb}; };
  sketch.rectangle({0, -wood.receiver}, {wood.across, 0}, Fill::kSection);
  sketch.line(over(left), over(right));
  sketch.line(under(left), under(0));
  sketch.line(under(seat), under(right));
  sketch.line({0, 0}, {seat, 0}, Stroke::kCut);
  sketch.line(under(0), {0, 0}, Stroke::kCut);
  sketch.torn(over(left), under(left));
  sketch.torn(over(right), under(right));
  sketch.given({0, -wood.receiver}, {seat, -wood.receiver}, -1, "seat", {1, 0});
  if (seat * wood.lean > 0) {
    sketch.told(under(0), {0, 0}, 1, "heel", {0, 1});
    // Square to the rafter's bottom edge, at the notch's corner.
    const double slope = wood.lean / libm::hypot(1, wood.lean), out = seat * slope;
    sketch.line({0, 0}, {out * slope, -out / libm::hypot(1, wood.lean)}, Stroke::kThin);
    sketch.told_aside({out * slope / 2, -out / libm::hypot(1, wood.lean) / 2}, "mouth_depth");
  }
  sketch.told({0, 0}, over(0), 1, "stand", {0, 1});
  sketch.drawing.angles.push_back(
      {under(seat), 0, libm::atan(wood.lean) * 180 / libm::kPi, 2, "slope", draw::Meaning::kAnswer});
  return std::move(sketch.drawing);
}

draw::Drawing peak_from_side(const RafterPeak& peak, const JointWood& wood) {
  Sketch sketch;
  const double plumb = wood.high * libm::hypot(1, wood.lean), out = 1.6 * wood.high;
  for (const double way : {-1.0, 1.0}) {
    const Point high{way * out, -wood.lean * out}, low{way * out, -wood.lean * out - plumb};
    sketch.line({0, 0}, high);
    sketch.line({0, -plumb}, low);
    sketch.torn(high, low);
  }
  sketch.line({0, 0}, {0, -plumb}, Stroke::kCut);
  if (!peak.tongue_and_fork || wood.lean <= 0) return std::move(sketch.drawing);
  // The tongue's floor is the left rafter's bottom edge, drawn on to the right one's top.
  const double tip = plumb / (2 * wood.lean);
  const Point end{tip, -wood.lean * tip};
  sketch.line({0, -plumb}, end, Stroke::kHidden);
  const Point middle{tip / 3, (-plumb + end.y) / 3};
  sketch.bore(middle, peak.peg.diameter.in());
  sketch.given_aside(middle, "peg.diameter");
  sketch.given_aside({tip * 0.75, -plumb + (end.y + plumb) * 0.75}, "clearance");
  return std::move(sketch.drawing);
}

draw::Drawing peak_from_end(const RafterPeak& peak, const JointWood& wood) {
  Sketch sketch;
  const double plumb = wood.high * libm::hypot(1, wood.lean), thick = peak.thickness.in();
  const double near = (wood.wide - thick) / 2;
  sketch.rectangle({0, 0}, {wood.wide, plumb}, Fill::kNone);
  sketch.rectangle({near, 0}, {near + thick, plumb}, Fill::kShade, Stroke::kCut);
  sketch.given({near, plumb}, {near + thick, plumb}, 1, "thickness", {1, 0});
  return std::move(sketch.drawing);
}

}  // namespace bentbook
