#include "cut/angle_drawing.h"

#include <algorithm>
#include <initializer_list>

#include "numeric/libm.h"

namespace bentbook {
namespace {

using draw::Drawing;
using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

constexpr double kDegree = libm::kPi / 180;

Meaning meaning_if(bool given) { return given ? Meaning::kGiven : Meaning::kAnswer; }

Point polar(Point from, double length, double deg) {
  return {from.x + length * libm::cos(deg * kDegree), from.y + length * libm::sin(deg * kDegree)};
}

void add_line(Drawing& d, Point a, Point b, Stroke stroke) { d.lines.push_back({a, b, stroke}); }

void add_area(Drawing& d, std::initializer_list<Point> points, Fill fill, bool outlined = false) {
  d.polygons.push_back({points, Stroke::kVisible, fill, outlined});
}

/// A rule that no triangle is drawn flatter than: its figures need room.
constexpr double kFlattest = 0.12;

}  // namespace

Drawing triangle_drawing(const TriangleInput& input, const Triangle& triangle) {
  double run = triangle.run.in(), rise = triangle.rise.in();
  const double most = std::max({run, rise, 1e-6});
  run = std::max(run, kFlattest * most);
  rise = std::max(rise, kFlattest * most);
  const Point foot{0, 0}, corner{run, 0}, peak{run, rise};
  Drawing d;
  d.polygons.push_back({{foot, corner, peak}, Stroke::kVisible, Fill::kNone, true});
  const auto given = [&](TrianglePart part) { return meaning_if(input.given(part)); };
  d.dimensions.push_back({foot, corner, -1, {}, "run", given(TrianglePart::kRun)});
  d.dimensions.push_back({corner, peak, -1, {}, "rise", given(TrianglePart::kRise)});
  d.dimensions.push_back({foot, peak, 1, {}, "slope_length", given(TrianglePart::kSlopeLength)});
  d.angles.push_back({foot, 0, libm::atan2(rise, run) / kDegree, 3, "slope", given(TrianglePart::kSlope)});
  return d;
}

Drawing cut_on_timber_drawing(const Setting& setting, const Section& section) {
  // A cut past this angle would run off the sheet; the figure tells the true one.
  constexpr double kSteepestDrawn = 72;
  const double depth = section.depth.in(), breadth = section.breadth.in();
  const double deg = std::min(setting.exact.deg(), kSteepestDrawn);
  const double across = depth * libm::tan(deg * kDegree);
  const double kept = depth * 1.4, waste = depth * 0.9;
  const Point near{kept, 0}, far{kept + across, depth};
  const double end = far.x + waste;
  Drawing d;
  add_area(d, {near, {end, 0}, {end, depth}, far}, Fill::kWaste);
  add_line(d, {0, 0}, {end, 0}, Stroke::kVisible);
  add_line(d, {0, depth}, {end, depth}, Stroke::kVisible);
  add_line(d, {0, 0}, {0, depth}, Stroke::kThin);
  add_line(d, {end, 0}, {end, depth}, Stroke::kThin);
  add_line(d, near, {near.x, depth}, Stroke::kThin);
  add_line(d, near, far, Stroke::kCut);
  const double left = -depth * 0.7 - breadth;
  add_area(d, {{left, 0}, {left + breadth, 0}, {left + breadth, depth}, {left, depth}}, Fill::kSection, true);
  d.dimensions.push_back({{left, 0}, {left, depth}, 1, {}, "depth", Meaning::kGiven});
  d.dimensions.push_back({{left, 0}, {left + breadth, 0}, -1, {}, "breadth", Meaning::kGiven});
  d.dimensions.push_back({near, far, -1, {}, "travel", Meaning::kFact});
  d.angles.push_back({near, 90 - deg, 90, 2, "set_to", Meaning::kAnswer});
  return d;
}

Drawing scale_drawing(const Saw& saw, const Graduation& set) {
  constexpr double kRadius = 10, kLong = 1.6, kShort = 0.8, kUsual = 60, kClosest = 2;
  const double blade = set.off_square.deg();
  const double most = std::max(kUsual, libm::ceil(blade / 10) * 10);
  // Square stands upright; what is off it leans to the left, as the page has its words there.
  const auto at = [](double radius, double off) { return polar({0, 0}, radius, 90 + off); };
  Drawing d;
  d.arcs.push_back({{0, 0}, kRadius, 90, 90 + most, Stroke::kScale});
  const double step = std::max(saw.step.deg(), kClosest);
  for (double off = 0; off <= most + 1e-9; off += step)
    add_line(d, at(kRadius, off), at(kRadius - kShort, off), Stroke::kScale);
  for (int off = 0; off <= static_cast<int>(most); off += 10) {
    add_line(d, at(kRadius, off), at(kRadius - kLong, off), Stroke::kScale);
    const Angle reads = in_scale(saw.square_reads, Angle::degrees(off));
    if (off % 20 == 0)
      d.notes.push_back(
          {at(kRadius + 1.6, off), "scale_" + std::to_string(static_cast<int>(reads.deg())), Meaning::kFact});
  }
  add_line(d, {0, 0}, at(kRadius, 0), Stroke::kCentre);
  add_line(d, {0, 0}, at(kRadius, blade), Stroke::kCut);
  return d;
}

Drawing ride_drawing(const Setting& setting, const Section& section, Ride ride) {
  constexpr double kSteepestDrawn = 60, kReceding = 0.35;
  const double depth = section.depth.in(), back = kReceding * section.breadth.in();
  const double lean = depth * libm::tan(std::min(setting.exact.deg(), kSteepestDrawn) * kDegree);
  const double kept = 0.55 * depth, end = kept + lean + 0.65 * depth;
  const Point foot{kept, 0}, arris{kept + lean, depth}, behind{arris.x + back, depth + back};
  const Point low{end, 0}, high{end, depth}, far{end + back, depth + back};
  Drawing d;
  if (ride == Ride::kSide)
    add_area(d, {foot, low, high, arris}, Fill::kWaste);
  else
    add_area(d, {arris, high, far, behind}, Fill::kWaste);
  add_area(d, {{0, 0}, low, high, {0, depth}}, Fill::kNone, true);
  add_area(d, {{0, depth}, high, far, {back, depth + back}}, Fill::kNone, true);
  add_area(d, {low, {end + back, back}, far, high}, Fill::kNone, true);
  add_line(d, foot, arris, ride == Ride::kSide ? Stroke::kCut : Stroke::kThin);
  add_line(d, arris, behind, ride == Ride::kTop ? Stroke::kCut : Stroke::kThin);
  return d;
}

Drawing mitre_drawing(Angle between, Length depth_a, Length depth_b, const Mitre& mitre) {
  // The inner corner at the origin; a runs to the left, b rises from it by the angle between them.
  const double a = depth_a.in(), b = depth_b.in();
  const double to_b = 180 - between.deg(), alpha = mitre.from_length_a.deg();
  const Point inner{0, 0};
  const Point outer = polar(inner, mitre.line.in(), -alpha);
  const double length = 1.6 * std::max({a, b, std::min(mitre.line.in(), 3 * std::max(a, b))});
  const Point a_in = polar(inner, length, 180), a_out{a_in.x, -a};
  const Point b_in = polar(inner, length, to_b), b_out = polar(b_in, b, to_b - 90);
  Drawing d;
  add_line(d, inner, a_in, Stroke::kVisible);
  add_line(d, outer, a_out, Stroke::kVisible);
  add_line(d, a_in, a_out, Stroke::kThin);
  add_line(d, inner, b_in, Stroke::kVisible);
  add_line(d, outer, b_out, Stroke::kVisible);
  add_line(d, b_in, b_out, Stroke::kThin);
  add_line(d, inner, {0, -a}, Stroke::kThin);
  add_line(d, inner, polar(inner, b, to_b - 90), Stroke::kThin);
  add_line(d, inner, outer, Stroke::kCut);
  d.dimensions.push_back({a_in, a_out, -1, {}, "depth_a", Meaning::kGiven});
  d.dimensions.push_back({b_in, b_out, 1, {}, "depth_b", Meaning::kGiven});
  d.dimensions.push_back({inner, outer, 0, {}, "line", Meaning::kFact});
  d.angles.push_back({inner, to_b, 180, 2, "between", Meaning::kGiven});
  const auto off_square = [&](double from, double to, double row, const char* key) {
    d.angles.push_back({inner, std::min(from, to), std::max(from, to), row, key, Meaning::kAnswer});
  };
  off_square(-90, -alpha, 2, "off_square_a");
  off_square(-alpha, to_b - 90, 3, "off_square_b");
  return d;
}

Drawing flip_drawing(Length gap, Length depth, Angle error) {
  constexpr double kDrawnLean = 7;  // degrees: the true error is too small to see
  const double height = depth.in(), length = 1.8 * height;
  const double lean = error == Angle{} ? 0 : height * libm::tan(kDrawnLean * kDegree);
  const bool opens_above = gap >= Length{};
  const double foot = opens_above ? 0 : height, head = opens_above ? height : 0;
  Drawing d;
  for (const double side : {-1.0, 1.0}) {
    const Point touch{0, foot}, open{side * lean, head};
    add_line(d, touch, {side * length, foot}, Stroke::kVisible);
    add_line(d, open, {side * length, head}, Stroke::kVisible);
    add_line(d, {side * length, 0}, {side * length, height}, Stroke::kThin);
    add_line(d, touch, open, Stroke::kCut);
  }
  d.dimensions.push_back({{-length, 0}, {-length, height}, 1, {}, "flip_depth", Meaning::kGiven});
  const Point left{-lean, head}, right{lean, head};
  d.dimensions.push_back({left, right, opens_above ? 1.0 : -1.0, {}, "flip_gap", Meaning::kGiven});
  if (lean > 0) {
    add_line(d, {0, 0}, {0, height}, Stroke::kCentre);
    const double to = opens_above ? 90 : -90, from = to - (opens_above ? kDrawnLean : -kDrawnLean);
    d.angles.push_back({{0, foot}, std::min(from, to), std::max(from, to), 3, "scale_error", Meaning::kAnswer});
  }
  return d;
}

}  // namespace bentbook
