#include "roof/corner/corner_drawing.h"

#include <algorithm>

#include "draw/sketch.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Stroke;

constexpr double kInDegrees = 180 / libm::kPi;

Point flat(Vec3 p) { return {p.x, p.y}; }
Point between(Point a, Point b, double part) { return {a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part}; }
std::string of_roof(const char* key, int roof) { return roof == 0 ? key : std::string(key) + "_other"; }

/// The plan: where its lines end, as multiples of what they are measured by.
struct Plan {
  const CornerInput& input;
  const RoofCorner& corner;
  CornerPlanes planes = corner_planes(input);
  double away = input.kind == CornerKind::kHip ? 1 : -1;  ///< an eave leaves the corner along its direction, or against
  Vec3 peak = corner.run.in() * planes.level;

  [[nodiscard]] Vec3 on_eave(int roof, double from_corner) const {
    return from_corner * planes.eave[static_cast<std::size_t>(roof)];
  }
  /// Where the rafter that runs into the peak stands on the eave, from the corner.
  [[nodiscard]] double last(int roof) const { return dot(peak, planes.eave[static_cast<std::size_t>(roof)]); }
  /// How much of an eave is drawn, from the corner.
  [[nodiscard]] double shown(int roof) const {
    const double room = 0.45 * std::min(corner.roof(0).run.in(), corner.roof(1).run.in());
    return away > 0 ? std::max(last(roof), 0.0) + room : std::min(last(roof), 0.0) - 0.8 * room;
  }
};

void add_jacks(draw::Sketch& s, const Plan& plan, int roof) {
  const auto i = static_cast<std::size_t>(roof);
  const CornerRoof& r = plan.corner.roof(roof);
  if (!r.meets) return;
  const double run = r.run.in(), spacing = plan.input.spacing.in(), last = plan.last(roof);
  const auto rafter = [&](double at, double from, double to, Stroke stroke) {
    const Vec3 foot = plan.on_eave(roof, at);
    s.line(flat(foot + from * plan.planes.inward[i]), flat(foot + to * plan.planes.inward[i]), stroke);
  };
  constexpr int kMostDrawn = 40;
  const bool valley = plan.away < 0;
  for (int n = 1; n <= std::min(r.jacks, kMostDrawn); ++n) {
    const double meets = run * n * spacing / last;
    rafter(n * spacing, valley ? meets : 0, valley ? run : meets, Stroke::kThin);
  }
  if (valley)
    rafter(0, 0, run, Stroke::kThin);  // from the corner of the eaves up
  else
    rafter(last, 0, run, Stroke::kThin);
}

void add_hip(draw::Sketch& s, const Plan& plan) {
  const Vec3 side = (plan.input.hip_breadth.in() / 2) * plan.planes.toward(0);
  const Vec3 tip = (plan.corner.run - plan.corner.shortening_level).in() * plan.planes.level;
  s.shape({flat(side), flat(tip + side), flat(tip - side), flat(-1.0 * side)}, Fill::kShade);
  s.line({0, 0}, flat(plan.peak), Stroke::kCentre);
}

void add_plan_angles(draw::Drawing& d, const Plan& plan) {
  const double eaves = plan.input.eave_angle.deg(), first = plan.corner.roof(0).plan.deg();
  const double from = plan.away > 0 ? 0 : 180;
  d.angles.push_back({{0, 0}, from, from + eaves, 2, "eave_angle", Meaning::kGiven});
  d.angles.push_back({{0, 0}, 0, first, 4, "plan", Meaning::kAnswer});
  d.angles.push_back({{0, 0}, first, eaves, 4, "plan_other", Meaning::kAnswer});
}

void add_pitch(draw::Sketch& s, const Plan& plan, int roof) {
  const auto i = static_cast<std::size_t>(roof);
  // On the roof, clear of its jacks: toward the end of what is drawn, half way up.
  const Vec3 at =
      plan.on_eave(roof, plan.away > 0 ? 0.5 * (plan.last(roof) + plan.shown(roof)) : 0.6 * plan.shown(roof)) +
      (0.5 * plan.corner.roof(roof).run.in()) * plan.planes.inward[i];
  s.given_aside(flat(at), of_roof("pitch", roof));
}

// ── From its side ─────────────────────────────────────────────────────────────────────────────────────────────────

constexpr double kPlate = 3.5;

/// The hip's outline: plumb at both ends, its seat cut out.
struct FromSide {
  const RoofCorner& corner;
  double tan = corner.tan, heel = corner.heel.in(), plumb = corner.plumb_depth.in(), seat = corner.seat.in();
  double tail = corner.tail.in() * corner.cos, end = corner.to_cut.in() * corner.cos;

  [[nodiscard]] double top(double x) const { return heel + x * tan; }
  [[nodiscard]] double bottom(double x) const { return top(x) - plumb; }
};

void add_plumb_timber(draw::Sketch& s, const FromSide& side, double from, double to) {
  s.rectangle({0, -kPlate}, {std::max(side.seat, kPlate), 0}, Fill::kSection);
  s.line({from, side.top(from)}, {to, side.top(to)});
  const bool seated = side.seat > 0;
  s.line({to, side.bottom(to)}, {seated ? side.seat : from, side.bottom(seated ? side.seat : from)});
  if (!seated) return;
  s.line({side.seat, 0}, {0, 0}, Stroke::kCut);
  if (!(from < 0)) return;
  s.line({0, 0}, {0, side.bottom(0)}, Stroke::kCut);
  s.line({0, side.bottom(0)}, {from, side.bottom(from)});
}
/// The plumb cut of its tail.
void add_tail(draw::Sketch& s, const FromSide& side) {
  const double low = side.tail > 0 ? side.bottom(-side.tail) : std::max(side.bottom(0), 0.0);
  s.line({-side.tail, side.top(-side.tail)}, {-side.tail, low}, Stroke::kCut);
}

}  // namespace

draw::Drawing corner_plan_drawing(const CornerInput& input, const RoofCorner& corner) {
  const Plan plan{input, corner};
  draw::Sketch s;
  for (const int roof : {0, 1}) {
    const auto i = static_cast<std::size_t>(roof);
    const Vec3 end = plan.on_eave(roof, plan.shown(roof));
    s.line({0, 0}, flat(end));
    const Vec3 ridge_end = end + corner.roof(roof).run.in() * plan.planes.inward[i];
    s.line(flat(plan.peak), flat(ridge_end));
    if (plan.away < 0) s.line({0, 0}, between({0, 0}, flat(plan.on_eave(roof, plan.last(roof))), 0.5), Stroke::kCentre);
    add_jacks(s, plan, roof);
  }
  add_hip(s, plan);
  add_plan_angles(s.drawing, plan);
  for (const int roof : {0, 1}) add_pitch(s, plan, roof);
  const Vec3 end = plan.on_eave(0, plan.shown(0));
  s.given(flat(end), flat(end + input.run.in() * plan.planes.inward[0]), plan.away > 0 ? -1 : 1, "run");
  if (corner.roof(0).jacks > 0) {
    const double high = plan.away > 0 ? 0 : input.run.in();
    s.given({0, high}, {input.spacing.in(), high}, plan.away > 0 ? -1 : 1, "spacing");
  }
  return std::move(s.drawing);
}

draw::Drawing corner_along_drawing(const CornerInput&, const RoofCorner& corner) {
  const FromSide side{corner};
  draw::Sketch s;
  const double run = corner.run.in();
  add_plumb_timber(s, side, -side.tail, side.end);
  s.line({side.end, side.top(side.end)}, {side.end, side.bottom(side.end)}, Stroke::kCut);
  add_tail(s, side);
  s.line({0, 0}, {0, side.top(0)}, Stroke::kThin);
  s.line({run, -kPlate}, {run, side.top(run) + 3}, Stroke::kCentre);
  s.told({0, side.top(0)}, {side.end, side.top(side.end)}, 1, "to_cut");
  if (corner.shortening > Length{}) s.told({0, side.top(0)}, {run, side.top(run)}, 2, "hip_length");
  s.told({run, side.top(0)}, {run, side.top(run)}, -1, "rise", {0, 1});
  s.drawing.dimensions.push_back({{0, -kPlate}, {run, -kPlate}, -1, {}, "hip_run", Meaning::kFact});
  s.drawing.angles.push_back({{side.seat, 0}, 0, corner.slope.deg(), 3, "hip_slope", Meaning::kAnswer});
  return std::move(s.drawing);
}

draw::Drawing corner_foot_drawing(const CornerInput& input, const RoofCorner& corner) {
  const FromSide side{corner};
  draw::Sketch s;
  const double depth = input.hip_depth.in();
  const double end = std::min(std::max(side.seat, kPlate) + 1.8 * depth, std::max(side.end, side.seat));
  const double from = -std::min(side.tail, 3 * depth);
  add_plumb_timber(s, side, from, end);
  s.torn({end, side.bottom(end)}, {end, side.top(end)});
  if (-from < side.tail)
    s.torn({from, side.bottom(from)}, {from, side.top(from)});
  else
    add_tail(s, side);
  s.line({0, 0}, {0, side.heel}, Stroke::kThin);
  s.told({0, 0}, {0, side.heel}, 1, "hip_heel");
  if (side.seat > 0) s.told({0, -kPlate}, {side.seat, -kPlate}, -1, "hip_seat");
  const double x = std::max(side.seat, kPlate) + 0.8 * depth, y = side.top(x);
  s.given({x + depth * corner.sin, y - depth * corner.cos}, {x, y}, 0, "hip_depth");
  s.drawing.angles.push_back({{side.seat, 0}, 0, corner.slope.deg(), 2, "hip_slope", Meaning::kAnswer});
  return std::move(s.drawing);
}

draw::Drawing corner_across_drawing(const CornerInput& input, const RoofCorner& corner) {
  draw::Sketch s;
  const double half = input.hip_breadth.in() / 2, deep = std::min(input.hip_depth.in(), 3.2 * half);
  const bool hip = input.kind == CornerKind::kHip, backed = hip && input.backed;
  // Looking up it, a hip has the first roof on its right, a valley on its left; 0 is the roofs' line.
  const double first = hip ? 1 : -1;
  const double middle = corner.shift.in() * (corner.shift_to == 0 ? first : -first);
  const double top = -corner.drop.in() * corner.cos, reach = 2.3 * half;
  const auto lean = [&](int roof) { return (hip ? -1 : 1) * libm::tan(corner.roof(roof).backing.rad()); };
  const auto side_of = [&](int roof) { return roof == 0 ? first : -first; };
  const double left = middle - half, right = middle + half, low = top - deep;
  const auto roof_at = [&](double x) { return libm::fabs(x) * lean(x * first > 0 ? 0 : 1); };
  // Its top from the left: planed, or as it comes.
  std::vector<Point> outline{{left, low}, {left, backed ? roof_at(left) : top}};
  if (backed) outline.push_back({0, 0});
  outline.push_back({right, backed ? roof_at(right) : top});
  outline.push_back({right, low});
  for (std::size_t i = 0; i + 1 < outline.size(); ++i) {
    const bool planed = backed && i > 0 && i + 2 < outline.size();
    s.line(outline[i], outline[i + 1], planed ? Stroke::kCut : Stroke::kVisible);
  }
  s.drawing.polygons.push_back({std::move(outline), Stroke::kVisible, Fill::kSection, false});
  for (const double x : {left, right})
    if (backed && roof_at(x) < 0)  // nothing comes off on the side of a roof that rises away
      s.shape({{0, 0}, {x, roof_at(x)}, {x, 0}}, Fill::kWaste, Stroke::kThin);
  s.torn({left, low}, {right, low});
  for (const int roof : {0, 1}) {
    const double x = side_of(roof) * reach, rise = reach * lean(roof),
                 turn = libm::fabs(corner.roof(roof).backing.deg());
    s.line({0, 0}, {x, rise}, backed ? Stroke::kThin : Stroke::kVisible);
    s.line({0, 0}, {x, 0}, Stroke::kCentre);
    if (corner.roof(roof).backing == Angle{}) continue;
    // Between level and the roof, whichever way it leans.
    const double level = x > 0 ? 0 : 180, ray = level + (x > 0 ? 1 : -1) * (rise > 0 ? turn : -turn);
    s.drawing.angles.push_back(
        {{0, 0}, std::min(level, ray), std::max(level, ray), 3, of_roof("backing", roof), Meaning::kAnswer});
  }
  s.given({left, low}, {right, low}, -1, "hip_breadth");
  if (corner.drop > Length{}) s.told_aside({middle, top}, "drop");
  if (corner.shift > Length{}) s.told({0, top}, {middle, top}, middle > 0 ? 2 : -2, "shift");
  return std::move(s.drawing);
}

draw::Drawing corner_cut_drawing(const CornerCut& cut) {
  const bool timber = cut.section.depth > Length{};
  draw::Sketch s;
  constexpr double kBoard = 8;  // of boards nothing but the line's angle is told
  const double b = timber ? cut.section.breadth.in() : kBoard, d = timber ? cut.section.depth.in() : 0;
  // Round the timber from the arris between top and +y side; where the cut crosses, behind its long point. Past these
  // many times the section the line is cut short: the figures tell the true one.
  std::array<double, 5> behind{};
  if (timber) {
    const auto marks = arris_marks(cut);
    for (std::size_t i = 0; i < 5; ++i) behind[i] = marks[i % 4].in();
  } else {
    behind[1] = kBoard * libm::tan(cut_line(cut, first_face(cut.name)).off_square.rad());
  }
  const double most = *std::max_element(behind.begin(), behind.end()), drawn = std::min(most, 1.6 * (b + d));
  if (most > drawn)
    for (double& at : behind) at *= drawn / most;
  const std::array<double, 5> across{0, -b, -b - d, -2 * b - d, -2 * b - 2 * d};
  const std::size_t strips = timber ? 4 : 1;
  const double from = -drawn - 0.5 * (b + d), to = 0.15 * (b + d);
  for (std::size_t i = 0; i <= strips; ++i) s.line({from, across[i]}, {to, across[i]});
  for (std::size_t i = 0; i < strips; ++i) {
    const Point p{-behind[i], across[i]}, q{-behind[i + 1], across[i + 1]};
    s.drawing.polygons.push_back({{p, {to, p.y}, {to, q.y}, q}, Stroke::kThin, Fill::kWaste, false});
    s.line(p, q, Stroke::kCut);
    if (i < 2) {
      // The angle between the line and the timber's length, or square, at the lower end of the line.
      const double ray = libm::atan2(p.y - q.y, p.x - q.x) * kInDegrees;
      const bool lengthwise = i == 0;
      const double rest = lengthwise ? (ray > 90 ? 180 : 0) : 90;
      if (libm::fabs(ray - rest) > 0.05)
        s.drawing.angles.push_back({q, std::min(ray, rest), std::max(ray, rest), 2.0,
                                    lengthwise ? "from_length" : "off_square", Meaning::kAnswer});
    }
    if (timber) {
      constexpr const char* kFaceNames[] = {"face_top", "face_side", "face_bottom", "face_far"};
      s.drawing.notes.push_back({{from, (p.y + q.y) / 2}, kFaceNames[i], Meaning::kFact, draw::Stands::kAt});
    }
  }
  if (timber) {
    s.line({0, across[0]}, {0, across[4]}, Stroke::kThin);
    for (std::size_t i = 0; i < 4; ++i)
      if (behind[i] > 1.0 / 64) s.told({-behind[i], across[i]}, {0, across[i]}, 0, "arris_" + std::to_string(i));
  }
  return std::move(s.drawing);
}

}  // namespace bentbook
