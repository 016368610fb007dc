#include "roof/rafter_shape.h"

namespace bentbook {
namespace {

void add_tail(Rafter& r, const Shape& s) {
  const double x = -s.overhang, y = s.top(x);
  r.outline.add({x, y});
  if (s.overhang == 0) return;  // ends flush with the wall: the seat's own outer corner closes it
  if (s.tail == TailCut::kPlumb) {
    r.outline.add({x, s.bottom(x)});
  } else if (s.tail == TailCut::kSquare) {
    r.outline.add({s.square_bottom_x(), y - s.depth * s.cos});
  } else {
    r.outline.add({x, y - s.tail_plumb});
    r.outline.add({s.level_x(), y - s.tail_plumb});
  }
}

void add_mouth(Rafter& r, const Shape& s) {
  if (s.seat == 0) {
    if (s.overhang == 0) r.outline.add({0, 0});
    return;
  }
  if (s.overhang > 0) r.outline.add({0, s.bottom(0)});
  r.outline.add({0, 0});
  r.outline.add({s.seat, 0});
}

void add_peak(Rafter& r, const Shape& s) {
  if (!s.over_beam || s.beam_seat <= 0) {
    r.outline.add({s.peak_x, s.bottom(s.peak_x)});
    return;
  }
  const double y = s.bottom(s.near_peak + s.beam_seat), end = s.near_peak + s.beam_seat;
  r.outline.add({s.near_peak, s.bottom(s.near_peak)});
  r.outline.add({s.near_peak, y});
  if (end < s.peak_x - 1e-9) {
    r.outline.add({end, y});
    r.outline.add({s.peak_x, s.bottom(s.peak_x)});
  } else {
    r.outline.add({s.peak_x, y});
  }
}

}  // namespace

Shape make_shape(const RafterInput& input, const RafterSide& side, const SidePlan& plan, double beam_seat) {
  Shape s;
  s.tan = plan.tan, s.cos = plan.cos, s.sin = plan.sin;
  s.depth = input.section.depth.in();
  s.run = plan.run, s.seat = plan.seat, s.heel = plan.heel;
  s.overhang = side.overhang.in();
  s.over_beam = input.peak == PeakKind::kOverBeam;
  s.peak_x = s.near_peak = input.peak == PeakKind::kRidgeBoard ? s.run - input.ridge_thickness.in() / 2 : s.run;
  if (s.over_beam) {
    s.near_peak = s.run - input.beam_breadth.in() / 2;
    s.beam_seat = beam_seat;
  }
  s.tail = s.overhang == 0 ? TailCut::kPlumb : input.tail;
  s.tail_plumb = input.tail_plumb.in();
  return s;
}

void draw_outline(Rafter& r, const Shape& s) {
  r.outline.add({s.peak_x, s.top(s.peak_x)});
  add_tail(r, s);
  add_mouth(r, s);
  add_peak(r, s);
}

void add_marks(Rafter& r, const Shape& s) {
  // Plumb lines cross both edges at one x: a mark lies (peak_x − x) / cos θ from the peak cut's corner on its edge.
  const auto mark = [&](MarkName name, double x) { return Mark{name, Length::from_inches((s.peak_x - x) / s.cos)}; };
  if (s.over_beam) {
    r.marks_top.add(mark(MarkName::kBeamPlumb, s.near_peak));
    const double seat_end = s.near_peak + s.beam_seat;
    if (s.beam_seat > 0 && seat_end < s.peak_x - 1e-9) r.marks_bottom.add(mark(MarkName::kBeamSeat, seat_end));
    r.marks_bottom.add(mark(MarkName::kBeamPlumb, s.near_peak));
  }
  r.marks_top.add(mark(MarkName::kWallLine, 0));
  if (s.seat > 0) r.marks_bottom.add(mark(MarkName::kSeatEnd, s.seat));
  r.marks_bottom.add(mark(MarkName::kWallLine, 0));
  if (s.overhang == 0) return;
  r.marks_top.add(mark(MarkName::kTail, -s.overhang));
  if (s.tail == TailCut::kLevelAndPlumb) r.marks_bottom.add(mark(MarkName::kTailLevel, s.level_x()));
  r.marks_bottom.add(mark(MarkName::kTail, s.tail == TailCut::kSquare ? s.square_bottom_x() : -s.overhang));
}

void add_cuts(Rafter& r, const Shape& s) {
  const Angle plumb = r.slope, level = Angle::degrees(90) - r.slope;
  r.cuts.add({CutName::kPeakPlumb, plumb});
  if (s.over_beam && s.beam_seat > 0) r.cuts.add({CutName::kBeamSeat, level});
  if (s.seat > 0) r.cuts.add({CutName::kSeat, level});
  if (s.seat > 0 && s.overhang > 0) r.cuts.add({CutName::kHeelPlumb, plumb});
  if (s.tail == TailCut::kSquare) {
    r.cuts.add({CutName::kTailSquare, {}});
    return;
  }
  r.cuts.add({CutName::kTailPlumb, plumb});
  if (s.tail == TailCut::kLevelAndPlumb) r.cuts.add({CutName::kTailLevel, level});
}

double longest_of(const Rafter& r, const Shape& s) {
  double low = 0, high = 0;
  bool first = true;
  for (const XY& p : r.outline) {
    const double along = p.x * s.cos + p.y * s.sin;
    low = first || along < low ? along : low;
    high = first || along > high ? along : high;
    first = false;
  }
  return high - low;
}

}  // namespace bentbook
