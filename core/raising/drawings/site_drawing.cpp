#include "raising/drawings/site_drawing.h"

#include <algorithm>
#include <string>

#include "draw/sketch.h"
#include "raising/lifting/crane.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Sketch;
using draw::Stroke;

struct Standing {
  InYard is;
  const char* name;
  Crane RaisingPlan::*crane;
};
constexpr Standing kMachines[] = {{InYard::kCrane, "crane", &RaisingPlan::crane},
                                  {InYard::kCraneTwo, "crane_two", &RaisingPlan::crane_two},
                                  {InYard::kTelehandler, "telehandler", &RaisingPlan::telehandler}};

/// The machine that the drawing tells of; nullptr: none is there.
const Crane* told_of(const RaisingPlan& plan, InYard shown) {
  for (const Standing& one : kMachines) {
    const Crane& crane = plan.*one.crane;
    if (crane.present && (one.is == shown || shown == InYard::kStack)) return &crane;
  }
  return nullptr;
}

Point stack_at(const RaisingPlan& plan) { return {plan.stack_x.in(), plan.stack_y.in()}; }
Point stands_at(const Crane& crane) { return {crane.x.in(), crane.y.in()}; }

struct Footprint {
  double left = 0, right = 0, low = 0, high = 0;
};

/// Posts, the outline around them and the middle line.
Footprint draw_building(Sketch& sketch, const Frame& frame) {
  Footprint box;
  bool any = false;
  for (const Timber& timber : frame.timbers) {
    if (timber.kind != TimberKind::kPost || !timber.placed) continue;
    const double half = std::max(timber.wood.actual.breadth.in(), timber.wood.actual.depth.in()) / 2;
    const Point at{timber.at.origin.x, timber.at.origin.y};
    sketch.rectangle({at.x - half, at.y - half}, {at.x + half, at.y + half}, Fill::kInk);
    if (!any) box = {at.x - half, at.x + half, at.y - half, at.y + half};
    any = true;
    box = {std::min(box.left, at.x - half), std::max(box.right, at.x + half), std::min(box.low, at.y - half),
           std::max(box.high, at.y + half)};
  }
  if (any) sketch.rectangle({box.left, box.low}, {box.right, box.high}, Fill::kShade, Stroke::kThin);
  std::rotate(sketch.drawing.polygons.begin(), sketch.drawing.polygons.end() - (any ? 1 : 0),
              sketch.drawing.polygons.end());
  const double past = 24;
  sketch.line({0, box.low - past}, {0, box.high + past}, Stroke::kCentre);
  return box;
}

/// Timbers in a heap, about as large as one.
void draw_stack(Sketch& sketch, Point at, double size) {
  const double across = size * 0.5, along = size * 1.3;
  for (int i = 0; i < 3; ++i) {
    const double x = at.x + (i - 1.5) * across * 2 / 3;
    sketch.rectangle({x, at.y - along}, {x + across * 2 / 3, at.y + along}, Fill::kSection, Stroke::kThin);
  }
}

void draw_machine(Sketch& sketch, Point at, double size) {
  sketch.drawing.arcs.push_back({at, size / 2, 0, 360, Stroke::kVisible});
  sketch.line({at.x - size, at.y}, {at.x + size, at.y}, Stroke::kCentre);
  sketch.line({at.x, at.y - size}, {at.x, at.y + size}, Stroke::kCentre);
}

/// Where the chart ends, as far round as the building and the stack are seen from the machine.
void draw_reach(Sketch& sketch, const Crane& crane, const Footprint& building, Point stack, bool told) {
  const double reach = longest_radius(crane);
  if (reach <= 0) return;
  const Point at = stands_at(crane);
  const Point middle{(building.left + building.right) / 2, (building.low + building.high) / 2};
  const auto way = [&](Point p) { return libm::atan2(p.y - at.y, p.x - at.x) * 180 / libm::kPi; };
  const double ahead = way(middle);
  double from = -12, to = 12;
  for (const Point p : {Point{building.left, building.low}, Point{building.left, building.high},
                        Point{building.right, building.low}, Point{building.right, building.high}, stack}) {
    double turn = way(p) - ahead;
    while (turn > 180) turn -= 360;
    while (turn < -180) turn += 360;
    from = std::min(from, turn);
    to = std::max(to, turn);
  }
  const bool round = to - from > 300;
  sketch.drawing.arcs.push_back({at, reach, ahead + (round ? 0 : from), ahead + (round ? 360 : to), Stroke::kCentre});
  if (!told) return;
  const double edge = (ahead + (round ? 0 : to)) * libm::kPi / 180;
  sketch.drawing.notes.push_back({{at.x + reach * libm::cos(edge), at.y + reach * libm::sin(edge)},
                                  "reach",
                                  Meaning::kFact,
                                  draw::Stands::kAside});
}

/// Across from the middle line, along from the first bent, outside the building.
void draw_place(Sketch& sketch, Point at, const Footprint& building, const std::string& x, const std::string& y) {
  const bool right = at.x >= 0;
  const double side = right ? building.right : building.left;
  const Point middle{0, building.low}, corner{side, 0};
  if (right)
    sketch.given(middle, at, -1.2, x, {1, 0});
  else
    sketch.given(at, middle, -1.2, x, {1, 0});
  const double row = right ? -1 : 1;
  if (at.y >= 0)
    sketch.given(corner, at, row, y, {0, 1});
  else
    sketch.given(at, corner, row, y, {0, 1});
}

}  // namespace

draw::Drawing site_drawing(const Frame& frame, const RaisingPlan& plan, InYard shown) {
  Sketch sketch;
  const Footprint building = draw_building(sketch, frame);
  const double size = std::max(36.0, 0.16 * std::max(building.right - building.left, building.high - building.low));
  const Point stack = stack_at(plan);
  const Crane* told = told_of(plan, shown);
  draw_stack(sketch, stack, size);
  const Point at = told != nullptr ? stands_at(*told) : stack;
  if (libm::hypot(at.x - stack.x, at.y - stack.y) > 1) {
    sketch.line(at, stack, Stroke::kThin);
    sketch.told_aside(stack, "radius_stack");
  } else if (shown != InYard::kStack) {
    sketch.drawing.notes.push_back({stack, "stack", Meaning::kFact, draw::Stands::kAside});
  }
  for (const Standing& one : kMachines) {
    const Crane& crane = plan.*one.crane;
    if (!crane.present) continue;
    draw_machine(sketch, stands_at(crane), size);
    if (one.is != shown)
      sketch.drawing.notes.push_back({stands_at(crane), one.name, Meaning::kFact, draw::Stands::kAside});
    if (&crane == told || shown == InYard::kStack) draw_reach(sketch, crane, building, stack, &crane == told);
    if (one.is == shown)
      draw_place(sketch, stands_at(crane), building, std::string(one.name) + ".x", std::string(one.name) + ".y");
  }
  if (shown == InYard::kStack) draw_place(sketch, stack, building, "stack_x", "stack_y");
  if (building.right > building.left)
    sketch.drawing.notes.push_back(
        {{(building.left + building.right) / 2, building.low + size * 0.3}, "bent:1", Meaning::kFact});
  return sketch.drawing;
}

void place_in_yard(RaisingPlan& plan, InYard what, Length x, Length y) {
  for (const Standing& one : kMachines) {
    if (one.is != what) continue;
    (plan.*one.crane).x = x;
    (plan.*one.crane).y = y;
  }
  if (what != InYard::kStack) return;
  plan.stack_x = x;
  plan.stack_y = y;
}

std::optional<double> site_answer(const RaisingPlan& plan, InYard shown, std::string_view key) {
  const Crane* told = told_of(plan, shown);
  if (told == nullptr) return std::nullopt;
  if (key == "reach") return longest_radius(*told);
  if (key == "radius_stack") return crane_radius(*told, {plan.stack_x.in(), plan.stack_y.in(), 0});
  return std::nullopt;
}

}  // namespace bentbook
