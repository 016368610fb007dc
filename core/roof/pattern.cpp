#include "roof/pattern.h"

#include <algorithm>

#include "numeric/libm.h"
#include "roof/sketch.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Stroke;

constexpr double kTouching = 1e-6;

std::vector<XY> timber_outline(const Rafter& rafter) {
  std::vector<XY> out;
  for (const XY& p : rafter.outline) out.push_back(to_timber(rafter, p));
  return out;
}

/// The outline's cuts and edges; edges lie along x here.
void add_outline(Sketch& s, const std::vector<XY>& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const XY a = outline[i], b = outline[(i + 1) % outline.size()];
    s.line(a, b, libm::fabs(a.y - b.y) < kTouching ? Stroke::kVisible : Stroke::kCut);
  }
}

/// What is cut away from the plain stick: from each place where the outline leaves the bottom edge until it is back.
void add_waste(Sketch& s, const std::vector<XY>& outline, double depth, double length) {
  std::vector<XY> piece{{0, 0}, {0, depth}};
  for (std::size_t i = 1; i < outline.size(); ++i) {
    piece.push_back(outline[i]);
    if (outline[i].y > kTouching) continue;
    if (piece.size() > 2) s.area(piece, Fill::kWaste, Stroke::kThin, false);
    piece = {outline[i]};
  }
  piece.push_back(outline[0]);
  piece.push_back({length, depth});
  piece.push_back({length, 0});
  s.area(piece, Fill::kWaste, Stroke::kThin, false);
}

void add_marks(Sketch& s, const FixedList<Mark, 6>& marks, XY corner, double offset, const char* stem, Side side) {
  for (int i = 0; i < marks.count; ++i) {
    const XY at{corner.x - marks[i].from_peak.in(), corner.y};
    s.dimension(at, corner, offset * (i + 1), with_side((stem + std::to_string(i)).c_str(), side), Meaning::kAnswer);
  }
}

struct Window {
  double from = 0, to = 0;
};

/// The named x of a roof point's plumb line on the top and on the bottom edge.
double top_x(const Rafter& r, double x) { return to_timber(r, {x, r.heel.in() + x * r.tan}).x; }
double bottom_x(const Rafter& r, double x) { return to_timber(r, {x, (x - r.seat.in()) * r.tan}).x; }

Window window_of(const RafterInput& input, const Rafter& r, PatternPart part) {
  const double depth = input.section.depth.in(), length = r.longest.in();
  if (part == PatternPart::kPeak) {
    const double notch = input.peak == PeakKind::kOverBeam ? input.beam_breadth.in() / 2 / r.cos : 0;
    return {length - r.peak_setback.in() - notch - 1.3 * depth, length};
  }
  if (part == PatternPart::kBirdsmouth) {
    const double from = std::min(bottom_x(r, 0), top_x(r, 0)) - depth;
    return {from, std::max(bottom_x(r, r.seat.in()), top_x(r, 0)) + depth};
  }
  return {0, std::max(top_x(r, 0), bottom_x(r, 0)) + 0.8 * depth};
}

void add_peak_figures(Sketch& s, const RafterInput& input, const Rafter& r, Side side) {
  const double depth = input.section.depth.in(), length = r.longest.in(), back = r.peak_setback.in();
  s.dimension({length - back, 0}, {length, 0}, -1, with_side("peak_setback", side), Meaning::kAnswer);
  s.dimension({length - back, 0}, {length, depth}, 1, with_side("plumb_depth", side), Meaning::kFact);
  if (input.peak != PeakKind::kOverBeam || !(r.beam_seat > Length{})) return;
  const double notch = r.beam_notch_depth.in(), x = bottom_x(r, r.run.in() - input.beam_breadth.in() / 2);
  s.dimension_along({x, 0}, {x + notch * r.tan, notch}, {0, 1}, 2, with_side("beam_notch_depth", side),
                    Meaning::kAnswer);
}

void add_mouth_figures(Sketch& s, const RafterInput& input, const Rafter& r, Side side) {
  const RafterSide& given = side == Side::kLeft || input.alike ? input.left : input.right;
  const bool by_seat = given.heel_by == HeelBy::kSeat;
  const XY corner = to_timber(r, {0, 0}), top = to_timber(r, {0, r.heel.in()});
  s.line(corner, top, Stroke::kThin);
  s.dimension(corner, top, 1, with_side("heel", side), by_seat ? Meaning::kAnswer : Meaning::kGiven);
  if (!(r.seat > Length{})) return;
  const XY end = to_timber(r, {r.seat.in(), 0});
  s.dimension(corner, end, -1, with_side("seat", side), by_seat ? Meaning::kGiven : Meaning::kAnswer);
  s.dimension_along({bottom_x(r, 0), 0}, corner, {0, 1}, 2, with_side("birdsmouth_depth", side), Meaning::kAnswer);
}

void add_tail_figures(Sketch& s, const RafterInput& input, const Rafter& r, Side side) {
  const double depth = input.section.depth.in();
  if (!(r.overhang > Length{})) return;
  const XY tip = to_timber(r, r.outline[1]);
  s.dimension(tip, {top_x(r, 0), depth}, 1, with_side("tail_along", side), Meaning::kAnswer);
  s.line({top_x(r, 0), depth}, {bottom_x(r, 0), 0}, Stroke::kThin);
  const XY low = to_timber(r, r.outline[2]);
  if (input.tail == TailCut::kLevelAndPlumb)
    s.dimension(tip, low, -1, "tail_plumb", Meaning::kGiven);
  else if (input.tail == TailCut::kPlumb)
    s.dimension(tip, low, -1, with_side("plumb_depth", side), Meaning::kFact);
}

}  // namespace

XY to_timber(const Rafter& rafter, XY roof_point) {
  const auto along = [&](XY p) { return p.x * rafter.cos + p.y * rafter.sin; };
  double foot = along(rafter.outline[0]);
  for (const XY& p : rafter.outline) foot = std::min(foot, along(p));
  const double up = roof_point.y * rafter.cos - roof_point.x * rafter.sin + rafter.seat.in() * rafter.sin;
  return {along(roof_point) - foot, up};
}

draw::Drawing pattern_drawing(const RafterInput& input, const Rafter& rafter, Side side) {
  Sketch s(Side::kLeft, {0, 0});
  const double depth = input.section.depth.in(), length = rafter.longest.in();
  const std::vector<XY> outline = timber_outline(rafter);
  add_waste(s, outline, depth, length);
  add_outline(s, outline);
  s.dimension({0, 0}, {0, depth}, 1, "depth", Meaning::kGiven);
  add_marks(s, rafter.marks_top, {length, depth}, 1, "marks_top_", side);
  add_marks(s, rafter.marks_bottom, {length - rafter.peak_setback.in(), 0}, -1, "marks_bottom_", side);
  return std::move(s.drawing);
}

draw::Drawing pattern_part(const RafterInput& input, const Rafter& rafter, Side side, PatternPart part) {
  Sketch s(Side::kLeft, {0, 0});
  const double depth = input.section.depth.in(), length = rafter.longest.in();
  const Window window = window_of(input, rafter, part);
  const auto cut_off = [&](const std::vector<XY>& points) {
    return clipped(clipped(points, {1, 0}, std::min(window.to, length)), {-1, 0}, -std::max(window.from, 0.0));
  };
  Sketch whole(Side::kLeft, {0, 0});
  const std::vector<XY> outline = timber_outline(rafter);
  add_waste(whole, outline, depth, length);
  for (const draw::Polygon& waste : whole.drawing.polygons) {
    std::vector<XY> points;
    for (const draw::Point& p : waste.points) points.push_back({p.x, p.y});
    points = cut_off(points);
    if (points.size() > 2) s.area(points, Fill::kWaste, Stroke::kThin, false);
  }
  const std::vector<XY> shown = cut_off(outline);
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const XY a = shown[i], b = shown[(i + 1) % shown.size()];
    const bool at_end = libm::fabs(a.x - b.x) < kTouching &&
                        (libm::fabs(a.x - window.from) < kTouching || libm::fabs(a.x - window.to) < kTouching);
    const bool edge = libm::fabs(a.y - b.y) < kTouching;
    s.line(a, b, at_end ? Stroke::kThin : edge ? Stroke::kVisible : Stroke::kCut);
  }
  if (part == PatternPart::kPeak) add_peak_figures(s, input, rafter, side);
  if (part == PatternPart::kBirdsmouth) add_mouth_figures(s, input, rafter, side);
  if (part == PatternPart::kTail) add_tail_figures(s, input, rafter, side);
  return std::move(s.drawing);
}

}  // namespace bentbook
