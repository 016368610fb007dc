#include "frame/drawings/hand_drawing.h"

#include <algorithm>

#include "draw/sketch.h"

namespace bentbook {

using draw::Fill;
using draw::Point;
using draw::Stroke;

namespace {

bool on_top_or_bottom(Face face) { return face == Face::kTop || face == Face::kBottom; }

/// How far it reaches along the timber.
struct Along {
  double from = 0, to = 0;
  [[nodiscard]] double middle() const { return (from + to) / 2; }
};
Along along_of(const HandTimber& timber, const HandFeature& f) {
  const double size = (f.kind == FeatureKind::kHole ? f.diameter : f.along).in();
  const bool end_kind = f.kind == FeatureKind::kSlot || f.kind == FeatureKind::kTenon || f.kind == FeatureKind::kLap;
  if (end_kind && f.station == Length{}) return {0, size};
  if (end_kind && f.station == timber.length) return {timber.length.in() - size, timber.length.in()};
  return {f.station.in() - size / 2, f.station.in() + size / 2};
}

/// What a cut off square moves a corner of the side view by.
double past(Angle angle, double up) { return libm::tan(angle.rad()) * up; }

struct EndCut {
  Angle angle;
  const char* key;
};
/// The outline between two cuts, whose tips stand `length` apart: plus where the upper side is longer.
void draw_between_ends(draw::Sketch& sketch, double length, double wide, EndCut at_a, EndCut at_b) {
  const double a = past(at_a.angle, wide), b = past(at_b.angle, wide);
  const double low_a = a > 0 ? a : 0, top_a = a < 0 ? -a : 0;
  const double low_b = length - (b > 0 ? b : 0), top_b = length - (b < 0 ? -b : 0);
  sketch.shape({{low_a, 0}, {low_b, 0}, {top_b, wide}, {top_a, wide}}, Fill::kShade);
  sketch.given_aside({(low_a + top_a) / 2, wide / 2}, at_a.key);
  sketch.given_aside({(low_b + top_b) / 2, wide / 2}, at_b.key);
}

}  // namespace

draw::Drawing hand_top_drawing(const HandTimber& timber) {
  draw::Sketch sketch;
  draw_between_ends(sketch, timber.length.in(), timber.wood.nominal.breadth.in(), {timber.a.tilt, "end_a.tilt"},
                    {timber.b.tilt, "end_b.tilt"});
  return sketch.drawing;
}

draw::Drawing hand_drawing(const HandTimber& timber) {
  draw::Sketch sketch;
  const double length = timber.length.in(), depth = timber.wood.nominal.depth.in();
  draw_between_ends(sketch, length, depth, {timber.a.angle, "end_a.angle"}, {timber.b.angle, "end_b.angle"});
  for (const HandFeature& f : timber.features) {
    const Along along = along_of(timber, f);
    const bool hole = f.kind == FeatureKind::kHole;
    const double wide = (hole ? f.diameter : f.across).in(), middle = f.offset.in();
    const double deep = f.depth == Length{} ? depth : std::min(f.depth.in(), depth);
    double from = middle - wide / 2, to = middle + wide / 2;
    if (f.kind == FeatureKind::kTenon) {
      from = 0.25 * depth, to = 0.75 * depth;
    } else if (f.face == Face::kTop) {
      from = depth - deep, to = depth;
    } else if (f.face == Face::kBottom) {
      from = 0, to = deep;
    }
    const bool seen = f.face == Face::kNear && f.kind != FeatureKind::kTenon;
    if (hole && !on_top_or_bottom(f.face))
      sketch.drawing.arcs.push_back(
          {{along.middle(), middle}, wide / 2, 0, 360, seen ? Stroke::kVisible : Stroke::kHidden});
    else
      sketch.rectangle({along.from, std::max(from, 0.0)}, {along.to, std::min(to, depth)}, Fill::kNone,
                       seen ? Stroke::kVisible : Stroke::kHidden);
  }
  sketch.given({0, 0}, {length, 0}, -1, "length", {1, 0});
  return sketch.drawing;
}

draw::Drawing hand_section_drawing(const HandTimber& timber) {
  draw::Sketch sketch;
  const double breadth = timber.wood.nominal.breadth.in(), depth = timber.wood.nominal.depth.in();
  sketch.rectangle({0, 0}, {breadth, depth}, Fill::kSection);
  sketch.given({0, 0}, {breadth, 0}, -1, "wood.nominal.breadth", {1, 0});
  sketch.given({0, 0}, {0, depth}, 1, "wood.nominal.depth", {0, 1});
  // The page is wider than a timber.
  for (const double side : {-1.0, 1.0})
    sketch.line({breadth / 2 + side * 1.6 * depth, 0}, {breadth / 2 + side * 1.6 * depth, 0.01}, Stroke::kThin);
  return sketch.drawing;
}

draw::Drawing hand_feature_drawing(const HandTimber& timber, const HandFeature& f) {
  draw::Sketch sketch;
  const Section& section = timber.wood.nominal;
  const double length = timber.length.in();
  const double wide = (on_top_or_bottom(f.face) ? section.breadth : section.depth).in();
  const Along along = along_of(timber, f);
  const bool hole = f.kind == FeatureKind::kHole;
  const double room = std::max(0.9 * wide, 0.7 * (along.to - along.from));
  const double left = std::max(0.0, along.from - room), right = std::min(length, along.to + room);
  const double across = (hole ? f.diameter : f.across).in(), middle = f.offset.in();
  sketch.line({left, 0}, {right, 0});
  sketch.line({left, wide}, {right, wide});
  const auto end = [&](double x, bool torn) {
    if (torn)
      sketch.torn({x, wide}, {x, 0});
    else
      sketch.line({x, 0}, {x, wide});
  };
  end(left, left > 0);
  end(right, right < length);
  if (hole)
    sketch.bore({along.middle(), middle}, across);
  else
    sketch.rectangle({along.from, middle - across / 2}, {along.to, middle + across / 2}, Fill::kPaper, Stroke::kCut);
  const double station = f.station.in();
  if (station - left > 0.5)
    sketch.given({left, wide}, {station, wide}, 1, "station", {1, 0});
  else
    sketch.given_aside({std::max(left, 0.0), wide}, "station");
  sketch.given({left, 0}, {left, middle}, 1, "offset", {0, 1});
  if (hole) {
    sketch.given_aside({along.middle() + across / 2, middle}, "diameter");
  } else {
    sketch.given({along.from, 0}, {along.to, 0}, -1, "along", {1, 0});
    sketch.given({right, middle - across / 2}, {right, middle + across / 2}, -1, "across", {0, 1});
  }
  if (f.kind != FeatureKind::kTenon) sketch.given_aside({along.to, middle - across / 4}, "depth");
  return sketch.drawing;
}

}  // namespace bentbook
