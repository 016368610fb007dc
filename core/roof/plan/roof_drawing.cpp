#include "roof/plan/roof_drawing.h"

#include <algorithm>
#include <string>

#include "draw/sketch.h"
#include "numeric/index.h"
#include "roof/plan/flat.h"
#include "roof/plan/limits.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Sketch;
using draw::Stroke;

Point point(Vec2 p) { return {p.x, p.y}; }

Vec2 wall_corner(const RoofPlan& plan, std::size_t i) {
  const PlanSide& side = plan.sides[i % plan.sides.size()];
  return {side.x.in(), side.y.in()};
}

void draw_roof(Sketch& sketch, const RoofSolution& roof) {
  std::vector<Point> eaves;
  eaves.reserve(roof.shape.eaves.size());
  for (const Vec2 p : roof.shape.eaves) eaves.push_back(point(p));
  sketch.shape(std::move(eaves), Fill::kPaper);
  for (const RoofTimber& timber : roof.timbers)
    if (timber.line < 0 && timber.kind != RoofTimberKind::kPost)
      sketch.line(point(flat(timber.at.origin)), point(flat(timber.at.origin + timber.length * timber.at.x)),
                  Stroke::kThin);
  for (const RoofLine& line : roof.shape.lines)
    if (line.kind != RoofLineKind::kEave && line.kind != RoofLineKind::kFlush)
      sketch.line(point(flat(line.a)), point(flat(line.b)));
}

/// Where a side is named: over its plane, or inside its wall where it has none.
Vec2 named_at(const RoofPlan& plan, const RoofSolution* roof, std::size_t i, double size) {
  const Vec2 a = wall_corner(plan, i), b = wall_corner(plan, i + 1);
  const Vec2 middle = 0.5 * (a + b), in = left_of(unit(b - a));
  double deep = 0.12 * size;
  if (roof != nullptr && !roof->shape.faces[i].outline.empty()) {
    // As deep as the plane is over the wall's middle, half of it.
    double reach = 0;
    for (const Vec2 p : roof->shape.faces[i].outline) reach = std::max(reach, dot(in, p - middle));
    deep = 0.42 * reach;
  } else if (plan.sides[i].kind == SideKind::kGable) {
    deep = 0.06 * size;
  }
  return middle + deep * in;
}

}  // namespace

draw::Drawing roof_plan_drawing(const RoofPlan& plan, const RoofSolution* roof, int chosen, int most_measured,
                                int dormer) {
  Sketch sketch;
  const std::size_t n = plan.sides.size();
  if (n < 3) return {};
  if (roof != nullptr) draw_roof(sketch, *roof);
  Vec2 low = wall_corner(plan, 0), high = low;
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = wall_corner(plan, i);
    low = {std::min(low.x, a.x), std::min(low.y, a.y)};
    high = {std::max(high.x, a.x), std::max(high.y, a.y)};
    const bool own = static_cast<int>(i) == chosen;
    sketch.line(point(a), point(wall_corner(plan, i + 1)),
                own               ? Stroke::kCut
                : roof == nullptr ? Stroke::kVisible
                                  : Stroke::kHidden);
  }
  const double size = std::max(high.x - low.x, high.y - low.y);
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = wall_corner(plan, i), b = wall_corner(plan, i + 1), along = unit(b - a);
    const double out = std::max(0.0, plan.sides[i].overhang.in());
    const Vec2 away = -out * left_of(along);
    if (n <= static_cast<std::size_t>(most_measured) || static_cast<int>(i) == chosen)
      sketch.given(point(a + away), point(b + away), -1, "length." + std::to_string(i), point(along));
    sketch.drawing.notes.push_back(
        {point(named_at(plan, roof, i, size)), "side." + std::to_string(i), Meaning::kGiven});
  }
  for (std::size_t i = 0; roof != nullptr && dormer > kDormersUnnamed && i < roof->dormers.size(); ++i) {
    const DormerShape& d = roof->dormers[i];
    const RoofPlane& side = roof->shape.planes[at(d.side)];
    const Vec2 foot = side.from + d.middle * side.along;
    const std::string key = "dormer." + std::to_string(i);
    sketch.drawing.notes.push_back({point(foot + (0.5 * (d.face + d.meets)) * side.in), key, Meaning::kGiven});
    if (static_cast<int>(i) != dormer) continue;
    const Vec2 away = side.overhang * side.in;
    sketch.given(point(side.from - away), point(foot - away), -2, key + ".centre", point(side.along));
  }
  return sketch.drawing;
}

namespace {

/// From the front: walls on the roof, the plates, its roof over them.
void draw_front(Sketch& sketch, const DormerShape& d, const RoofPlane& side) {
  const double zero = side.plate, ground = side.height(side.from + d.face * side.in) - zero;
  const double plate = d.plate - zero, over = d.base - zero, top = d.top - zero;
  const double out = d.half + d.overhang, eave = over - d.tan * d.overhang;
  sketch.line({-1.4 * d.half, 0}, {1.4 * d.half, 0}, Stroke::kCentre);  // the plate below
  sketch.rectangle({-d.half, ground}, {d.half, plate}, Fill::kPaper);
  if (d.gable)
    sketch.shape({{-out, eave}, {out, eave}, {0, top}}, Fill::kPaper);
  else
    sketch.rectangle({-d.half, eave}, {d.half, top}, Fill::kPaper);
  sketch.given({-d.half, ground}, {d.half, ground}, -1, "width", {1, 0});
  sketch.given({d.half, 0}, {d.half, plate}, -1, "plate_height", {0, 1});
  if (d.gable) sketch.given_aside({-out, eave}, "overhang");
  if (d.gable) sketch.given_aside({-d.half / 2, (over + top) / 2}, "pitch");
}

/// From the side: the roof, the face on it, and its ridge or its plane running into the roof. `x`: where v is 0.
void draw_side(Sketch& sketch, const DormerShape& d, const RoofPlane& side, double x) {
  const double zero = side.plate, front = d.face - d.overhang;
  const auto spot = [&](double v, double z) { return Point{x + v, z - zero}; };
  const auto on_roof = [&](double v) { return spot(v, side.base + side.tan * v); };
  sketch.line(on_roof(-side.overhang), on_roof(1.15 * d.past));
  sketch.line(spot(d.face, side.base + side.tan * d.face), spot(d.face, d.plate));
  sketch.line(spot(-side.overhang, zero), spot(1.15 * d.past, zero), Stroke::kCentre);
  if (d.gable) {
    sketch.line(spot(front, d.plate), spot(d.plate_end, d.plate), Stroke::kThin);
    sketch.line(spot(front, d.top), spot(d.meets, d.top));
    sketch.line(spot(front, d.plate), spot(front, d.top));
  } else {
    const Point tail = spot(front, d.base - d.tan * d.overhang), end = spot(d.meets, d.top);
    sketch.line(tail, end);
    sketch.given_aside(tail, "overhang");
    sketch.given_aside({(tail.x + end.x) / 2, (tail.y + end.y) / 2}, "pitch");
  }
  if (d.flush)
    sketch.given_aside(on_roof(0), "face");
  else
    sketch.given(spot(0, zero), spot(d.face, zero), -1, "face", {1, 0});
}

}  // namespace

draw::Drawing dormer_drawing(const RoofSolution& roof, int dormer) {
  Sketch sketch;
  const DormerShape& d = roof.dormers[at(dormer)];
  const RoofPlane& side = roof.shape.planes[at(d.side)];
  draw_front(sketch, d, side);
  constexpr double kBetween = 1.5;  // widths of the dormer's half
  draw_side(sketch, d, side, (1 + kBetween) * d.half + d.overhang + side.overhang);
  return sketch.drawing;
}

}  // namespace bentbook
