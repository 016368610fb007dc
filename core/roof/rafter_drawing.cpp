#include "roof/rafter_drawing.h"

#include <algorithm>

#include "draw/pitch_mark.h"
#include "roof/sketch.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Stroke;

constexpr double kPlateThick = 3.5;

const RafterSide& given_side(const RafterInput& input, Side side) {
  return side == Side::kLeft || input.alike ? input.left : input.right;
}
const Rafter& rafter_of(const RafterPair& pair, Side side) { return side == Side::kLeft ? pair.left : pair.right; }

Meaning meaning_if(bool given) { return given ? Meaning::kGiven : Meaning::kAnswer; }

/// Where the side's own axes stand on the roof.
draw::Point origin_of(const RafterPair& pair, Side side) {
  if (side == Side::kLeft) return {0, 0};
  return {pair.span.in(), (pair.right.plate_height - pair.left.plate_height).in()};
}

double top_at(const Rafter& r, double x) { return r.heel.in() + x * r.tan; }
double bottom_at(const Rafter& r, double x) { return (x - r.seat.in()) * r.tan; }

void add_plate(Sketch& s, const RafterInput& input, const Rafter& r) {
  const double breadth = input.plate_breadth > Length{} ? input.plate_breadth.in() : std::max(r.seat.in(), 1.0);
  s.box(0, -std::min(kPlateThick, breadth), breadth, 0, Fill::kSection);
}

/// Ridge board or beam, in the axes of one side.
void add_ridge(Sketch& s, const RafterInput& input, const Rafter& r) {
  const double x = r.run.in(), top = r.ridge_top.in();
  if (input.peak == PeakKind::kRidgeBoard) {
    const double half = input.ridge_thickness.in() / 2;
    s.box(x - half, top - r.plumb_depth.in(), x + half, top, Fill::kSection);
  } else if (input.peak == PeakKind::kOverBeam) {
    const double half = input.beam_breadth.in() / 2;
    s.box(x - half, top - 3 * half, x + half, top, Fill::kSection);
  }
}

double lowest(const Rafter& r) {
  double low = 0;
  for (const XY& p : r.outline) low = std::min(low, p.y);
  return low;
}

bool runs_given(const RafterInput& input) { return input.plan_by != PlanBy::kSpan; }

void add_plan_dimensions(Sketch& s, const RafterInput& input, const RafterPair& pair, double low) {
  const double run = pair.left.run.in(), span = pair.span.in();
  const bool show_run = runs_given(input) || !input.alike;
  if (show_run) {
    s.dimension({0, low}, {run, low}, -1, runs_given(input) ? "run" : "run_left",
                runs_given(input) ? Meaning::kGiven : Meaning::kFact);
  }
  s.dimension({0, low}, {span, low}, show_run ? -2 : -1, "span", meaning_if(input.plan_by != PlanBy::kRun));
}

void add_side_dimensions(Sketch& s, const RafterInput& input, const RafterPair& pair, Side side, bool triangle) {
  const Rafter& r = rafter_of(pair, side);
  const RafterSide& given = given_side(input, side);
  const double low = lowest(r), overhang = r.overhang.in(), run = r.run.in();
  if (triangle && !given.measured && draw::has_triangle(given.pitch)) {
    const double x = r.seat.in() + 0.1 * run;
    const auto mark = draw::pitch_mark({x, bottom_at(r, x) - 0.04 * run}, 0.4 * run, r.tan, false);
    s.line({mark.low.x, mark.low.y}, {mark.high.x, mark.high.y}, Stroke::kThin);
    s.dimension_along({mark.corner.x, mark.corner.y}, {mark.high.x, mark.high.y}, {0, 1}, 0, with_side("pitch", side),
                      Meaning::kGiven);
    s.dimension_along({mark.low.x, mark.low.y}, {mark.corner.x, mark.corner.y}, {1, 0}, 0, with_side("in_12", side),
                      Meaning::kFact);
    for (std::size_t i = s.drawing.dimensions.size() - 2; i < s.drawing.dimensions.size(); ++i)
      s.drawing.dimensions[i].bare = true;
  } else {
    // Clear of the plate, which would hide the arc's start.
    s.angle({r.seat.in(), 0}, 0, r.slope.deg(), 3, with_side(given.measured ? "slope" : "pitch", side),
            meaning_if(!given.measured));
  }
  if (overhang > 0) s.dimension({-overhang, low}, {0, low}, -1, with_side("overhang", side), Meaning::kGiven);
  s.dimension({0, r.heel.in()}, {run, top_at(r, run)}, 1, with_side("line_length", side), Meaning::kAnswer);
}

}  // namespace

draw::Drawing roof_drawing(const RafterInput& input, const RafterPair& pair, bool triangle) {
  Sketch s(Side::kLeft, {0, 0});
  add_ridge(s, input, pair.left);
  for (const Side side : {Side::kLeft, Side::kRight}) {
    s.stand(side, origin_of(pair, side));
    add_plate(s, input, rafter_of(pair, side));
    s.timber(outline_of(rafter_of(pair, side)), rafter_of(pair, side), Stroke::kVisible);
  }
  if (!input.alike) {
    add_side_dimensions(s, input, pair, Side::kRight, triangle);
    s.note({0, -kPlateThick}, "plate_height_right", meaning_if(input.held != Held::kRidgeAndHeels));
  }
  s.stand(Side::kLeft, {0, 0});
  add_side_dimensions(s, input, pair, Side::kLeft, triangle);
  const double run = pair.left.run.in(), peak = pair.left.peak_height.in();
  s.line({run, -kPlateThick}, {run, peak + 3}, Stroke::kCentre);
  s.dimension({run, 0}, {run, peak}, -1, "peak_height_left", Meaning::kAnswer);
  const double right_low = origin_of(pair, Side::kRight).y + lowest(pair.right);
  add_plan_dimensions(s, input, pair, std::min({lowest(pair.left), right_low, -kPlateThick}));
  return std::move(s.drawing);
}

void name_parts(draw::Drawing& roof, const RafterPair& pair) {
  const Rafter &left = pair.left, &right = pair.right;
  const draw::Point feet = origin_of(pair, Side::kRight);
  const auto name = [&](draw::Point at, const char* key) {
    roof.notes.push_back({at, key, Meaning::kGiven, draw::Stands::kAside});
  };
  name({left.run.in(), left.peak_height.in() - left.plumb_depth.in() / 2}, "part.peak");
  name({feet.x - right.seat.in() / 2, feet.y}, "part.foot");
  const double out = right.overhang.in();
  name({feet.x + out, feet.y + top_at(right, -out) - right.plumb_depth.in() / 2}, "part.tail");
}

draw::Drawing foot_drawing(const RafterInput& input, const RafterPair& pair, Side side) {
  const Rafter& r = rafter_of(pair, side);
  const RafterSide& given = given_side(input, side);
  const double depth = input.section.depth.in(), seat = r.seat.in(), overhang = r.overhang.in();
  const double end = std::max(seat, input.plate_breadth.in()) + 1.6 * depth;
  const double shown_tail = std::min(overhang, 4 * depth);
  const double broken_at = std::min(end, 0.9 * r.run.in() + 0.1 * seat);
  const std::vector<XY> outline = clipped(clipped(outline_of(r), {1, 0}, broken_at), {-1, 0}, shown_tail);
  const double tail_broken_at = shown_tail < overhang ? -shown_tail : broken_at;
  Sketch s(side, {0, 0});
  add_plate(s, input, r);
  s.timber(outline, r, Stroke::kCut, {broken_at, tail_broken_at});
  s.line({0, 0}, {0, r.heel.in()}, Stroke::kThin);
  s.dimension({0, 0}, {0, r.heel.in()}, 1, with_side("heel", side), meaning_if(given.heel_by == HeelBy::kHeel));
  const double low = std::min(lowest(r), -kPlateThick);
  if (seat > 0 || given.heel_by == HeelBy::kSeat)
    s.dimension({0, -kPlateThick}, {std::max(seat, 0.01), -kPlateThick}, -1, with_side("seat", side),
                meaning_if(given.heel_by == HeelBy::kSeat));
  if (input.plate_breadth > Length{})
    s.dimension({0, -kPlateThick}, {input.plate_breadth.in(), -kPlateThick}, -2, "plate", Meaning::kGiven);
  if (shown_tail >= overhang) s.dimension({-overhang, low}, {0, low}, -1, with_side("overhang", side), Meaning::kGiven);
  const double x = std::max(seat, input.plate_breadth.in()) + 0.8 * depth;
  const double y = top_at(r, x);
  s.dimension({x + depth * r.sin, y - depth * r.cos}, {x, y}, 0, "depth", Meaning::kGiven);
  s.angle({seat, 0}, 0, r.slope.deg(), 2, with_side(given.measured ? "slope" : "pitch", side),
          meaning_if(!given.measured));
  return std::move(s.drawing);
}

draw::Drawing peak_drawing(const RafterInput& input, const RafterPair& pair, Side side) {
  const Side other_side = side == Side::kLeft ? Side::kRight : Side::kLeft;
  const Rafter &r = rafter_of(pair, side), &other = rafter_of(pair, other_side);
  const double depth = input.section.depth.in(), run = r.run.in();
  const bool over_beam = input.peak == PeakKind::kOverBeam;
  const double near = over_beam ? run - input.beam_breadth.in() / 2 : run - r.ridge_deduction.in() * r.cos;
  const double reach = (run - near) + 2 * depth * std::max(r.cos, 0.35);
  Sketch s(side, {0, 0});
  add_ridge(s, input, r);
  // The other side meets this one at the ridge line, whatever plates they stand on.
  s.stand(other_side, {side == Side::kLeft ? run + other.run.in() : -(run + other.run.in()),
                       r.peak_height.in() - other.peak_height.in()});
  s.timber(clipped(outline_of(other), {-1, 0}, reach - other.run.in()), other, Stroke::kThin);
  s.stand(side, {0, 0});
  s.timber(clipped(outline_of(r), {-1, 0}, reach - run), r, Stroke::kCut, {run - reach});
  const double top = top_at(r, run);
  s.line({run, bottom_at(r, run) - 0.6 * depth}, {run, top + 0.5 * depth}, Stroke::kCentre);
  const double beam_low = over_beam ? r.ridge_top.in() - 1.5 * input.beam_breadth.in() : 0;
  if (input.peak == PeakKind::kRidgeBoard) {
    const double low = r.ridge_top.in() - r.plumb_depth.in();
    s.dimension({near, low}, {2 * run - near, low}, -1, "ridge", Meaning::kGiven);
    s.dimension({near, top_at(r, near)}, {run, top}, 1, with_side("ridge_deduction", side), Meaning::kAnswer);
  } else if (over_beam) {
    s.dimension({near, beam_low}, {2 * run - near, beam_low}, -2, "ridge_beam", Meaning::kGiven);
    const bool left_or_alike = side == Side::kLeft || input.alike;
    s.dimension({near, beam_low}, {near + std::max(r.beam_seat.in(), 0.01), beam_low}, -1,
                left_or_alike ? "ridge_seat" : "beam_seat_right", meaning_if(left_or_alike));
  }
  const double x = run - reach * 0.85;
  s.angle({x, bottom_at(r, x)}, 0, r.slope.deg(), 2, with_side("slope", side), Meaning::kAnswer);
  return std::move(s.drawing);
}

}  // namespace bentbook
