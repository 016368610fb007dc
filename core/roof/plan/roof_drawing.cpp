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
    if (timber.line < 0)
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

draw::Drawing roof_plan_drawing(const RoofPlan& plan, const RoofSolution* roof, int chosen, int most_measured) {
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
  return sketch.drawing;
}

}  // namespace bentbook
