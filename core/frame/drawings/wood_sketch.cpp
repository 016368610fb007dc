#include "frame/drawings/wood_sketch.h"

#include <algorithm>

#include "frame/drawings/sketch.h"

namespace bentbook {

using draw::Fill;
using draw::Point;
using draw::Stroke;

namespace {

double length_shown(const EndSketch& end, double housing) { return housing + std::max(0.9 * end.tall, 5.0); }

/// The tenon's own face on the member's end, the reference face at the left.
void draw_tenon_end(Sketch& sketch, const JointWood& wood, Length thickness, double low, double high) {
  const double near = near_side(wood, thickness), far = near + thickness.in();
  sketch.rectangle({0, 0}, {wood.wide, wood.high}, Fill::kNone);
  sketch.rectangle({near, low}, {far, high}, Fill::kShade, Stroke::kCut);
  sketch.given({near, wood.high}, {far, wood.high}, 1, "thickness", {1, 0});
  sketch.told({0, 0}, {near, 0}, -1, "fence", {1, 0});
}

/// A shoulder's height, or a place to tap where there is none.
void draw_shoulder(Sketch& sketch, double from, double to, const char* key, double wide) {
  if (to > from)
    sketch.given({0, from}, {0, to}, 1, key, {0, 1});
  else
    sketch.given_aside({wide * 0.2, from}, key);
}

}  // namespace

namespace {

/// Of the lowest peg's hole in the tenon, the edge toward the shoulder.
Point peg_edge(const EndSketch& end, const MortiseTenon& tenon, double low, double high) {
  const PegPlace place = place_of(end, tenon.peg, tenon.pegs, tenon.drawbore.in(), low, high, tenon.length.in());
  return {place.first.x + tenon.drawbore.in() + tenon.peg.diameter.in() / 2, place.first.y};
}

}  // namespace

draw::Drawing butt_from_side(const HousedButt& butt, const JointWood& wood) {
  const EndSketch end(wood);
  Sketch sketch;
  const double housing = butt.housing.in();
  end.draw_timbers(sketch, housing, length_shown(end, housing));
  sketch.line({0, 0}, {0, end.tall}, Stroke::kCut);
  end.draw_housing(sketch, butt.housing);
  return turned(std::move(sketch.drawing), wood.from);
}

draw::Drawing tenon_from_side(const MortiseTenon& tenon, const JointWood& wood) {
  const EndSketch end(wood);
  Sketch sketch;
  const double housing = tenon.housing.in(), length = tenon.length.in(), play = tenon.depth_clearance.in();
  end.draw_timbers(sketch, housing, length_shown(end, housing));
  const bool over = wood.top_is_low;
  const Length low_shoulder = over ? tenon.shoulder_top : tenon.shoulder_bottom;
  const Length high_shoulder = over ? tenon.shoulder_bottom : tenon.shoulder_top;
  const double low = low_shoulder.in() / end.cos, high = end.tall - high_shoulder.in() / end.cos;
  // A leaning tenon's lower edge runs on as the member's, its upper one goes in square (joints/mortise_tenon.cpp).
  const auto lower = [&](double deep) { return Point{-deep, low + wood.lean * deep}; };
  sketch.line(lower(0), lower(length), Stroke::kHidden);
  sketch.line({0, high}, {-length, high}, Stroke::kHidden);
  sketch.line(lower(length), {-length, high}, Stroke::kHidden);
  const double deep = std::min(length + play, wood.receiver - housing);
  sketch.line(lower(deep), {-deep, high}, Stroke::kThin);
  sketch.line({0, 0}, {0, end.tall}, Stroke::kCut);
  const double top = end.tall + end.above;
  sketch.given({-length, top}, {0, top}, 1, "length", {1, 0});
  end.draw_housing(sketch, tenon.housing);
  sketch.given_aside({-(length + deep) / 2, (lower(deep).y + 3 * high) / 4}, "depth_clearance");
  draw_pegs(sketch, end, tenon.peg, tenon.pegs, tenon.drawbore.in(), low, high, length);
  if (tenon.pegs > 0) sketch.given_aside(peg_edge(end, tenon, low, high), "drawbore");
  return turned(std::move(sketch.drawing), wood.from);
}

draw::Drawing tenon_from_end(const MortiseTenon& tenon, const JointWood& wood) {
  Sketch sketch;
  const double low = tenon.shoulder_bottom.in(), high = wood.high - tenon.shoulder_top.in();
  draw_tenon_end(sketch, wood, tenon.thickness, low, high);
  draw_shoulder(sketch, high, wood.high, "shoulder_top", wood.wide);
  draw_shoulder(sketch, 0, low, "shoulder_bottom", wood.wide);
  return std::move(sketch.drawing);
}

double dovetail_length(const HalfDovetail& joint, const JointWood& wood) {
  const double behind = wood.receiver - joint.housing.in();
  return joint.through ? behind : std::min(joint.length.in(), behind);
}

draw::Drawing dovetail_from_side(const HalfDovetail& joint, const JointWood& wood) {
  const EndSketch end(wood);
  Sketch sketch;
  const double housing = joint.housing.in(), length = dovetail_length(joint, wood);
  end.draw_timbers(sketch, housing, length_shown(end, housing));
  const double fall = length / joint.one_in, high = end.tall, top = high + fall + joint.play.in();
  sketch.line({0, 0}, {0, end.tall}, Stroke::kCut);
  sketch.line({0, fall}, {-length, 0}, Stroke::kHidden);
  sketch.line({0, high}, {-length, high}, Stroke::kHidden);
  sketch.line({-length, 0}, {-length, high}, joint.through ? Stroke::kThin : Stroke::kHidden);
  sketch.rectangle({-length, high}, {0, top}, Fill::kShade, Stroke::kHidden);
  const double above = end.tall + end.above;
  if (!joint.through) {
    sketch.given({-length, above}, {0, above}, 1, "length", {1, 0});
    const double play = joint.depth_clearance.in();
    sketch.line({-length - play, 0}, {-length - play, high}, Stroke::kThin);
    sketch.given_aside({-length - play / 2, high / 4}, "depth_clearance");
  }
  end.draw_housing(sketch, joint.housing);
  sketch.given_aside({-length * 0.7, fall * 0.3}, "one_in");
  sketch.given_aside({-length * 0.6, (high + top) / 2}, "play");
  draw_pegs(sketch, end, joint.peg, joint.pegs, 0, fall, high, length);
  return turned(std::move(sketch.drawing), wood.from);
}

draw::Drawing dovetail_from_end(const HalfDovetail& joint, const JointWood& wood) {
  Sketch sketch;
  draw_tenon_end(sketch, wood, joint.thickness, 0, wood.high);
  return std::move(sketch.drawing);
}

}  // namespace bentbook
