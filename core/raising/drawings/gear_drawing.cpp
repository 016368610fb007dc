#include "raising/drawings/gear_drawing.h"

#include <algorithm>

#include "draw/sketch.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Point;
using draw::Sketch;
using draw::Stroke;

/// A hook over its line, its bowl's lowest point at (x, y).
void draw_hook(Sketch& sketch, double x, double y) {
  sketch.line({x, y + 26}, {x, y + 14});
  sketch.rectangle({x - 3, y + 10}, {x + 3, y + 16}, Fill::kInk);
  sketch.drawing.arcs.push_back({{x, y + 5}, 5, 180, 420, Stroke::kVisible});
}

void draw_sling(Sketch& sketch) {
  // Straight: eye to eye between hook and load.
  const double high = 60, apart = 78, timber = 8;
  draw_hook(sketch, 0, high);
  sketch.line({-1, 0}, {-1, high});
  sketch.line({1, 0}, {1, high});
  sketch.rectangle({-5, -12}, {5, -2}, Fill::kShade);
  sketch.drawing.arcs.push_back({{0, -1}, 3, 0, 360, Stroke::kVisible});
  sketch.given({0, 0}, {0, high}, 1, "length", {0, 1});
  sketch.given_aside({1, high * 0.45}, "rated");
  // As a choker round a timber seen at its end.
  draw_hook(sketch, apart, high);
  sketch.line({apart - 1, timber}, {apart - 1, high});
  sketch.line({apart + 1, timber}, {apart + 1, high});
  sketch.rectangle({apart - timber, -timber}, {apart + timber, timber}, Fill::kSection);
  sketch.shape({{apart - timber - 1, -timber - 1},
                {apart + timber + 1, -timber - 1},
                {apart + timber + 1, timber + 1},
                {apart, timber + 8},
                {apart - timber - 1, timber + 1}},
               Fill::kNone);
  sketch.given_aside({apart + 1, high * 0.45}, "choked");
  sketch.given_aside({-1, high * 0.8}, "count");
}

/// Between the hook and two sling legs.
void draw_shackle(Sketch& sketch) {
  const double high = 40, pin = 12;
  draw_hook(sketch, 0, high - 4);
  for (const double radius : {8.0, 12.0}) {
    sketch.drawing.arcs.push_back({{0, high - 12}, radius, 0, 180, Stroke::kVisible});
    for (const double side : {-1.0, 1.0}) sketch.line({side * radius, high - 12}, {side * radius, pin});
  }
  sketch.rectangle({-16, pin - 5}, {17, pin}, Fill::kInk);
  for (const double side : {-1.0, 1.0}) sketch.line({side * 3, pin - 5}, {side * 66, -40});
  sketch.rectangle({-90, -50}, {90, -40}, Fill::kSection);
  sketch.drawing.notes.push_back({{54, 24}, "rated", draw::Meaning::kGiven});
  sketch.drawing.notes.push_back({{-54, 24}, "count", draw::Meaning::kGiven});
}

void draw_spreader(Sketch& sketch) {
  const double half = 60, high = 46;
  draw_hook(sketch, 0, high);
  for (const double side : {-1.0, 1.0}) {
    sketch.line({0, high}, {side * half, 3});
    sketch.line({side * half, -3}, {side * half, -34});
    sketch.drawing.arcs.push_back({{side * half, 0}, 3, 0, 360, Stroke::kVisible});
  }
  sketch.rectangle({-half - 5, -3}, {half + 5, 3}, Fill::kShade);
  sketch.rectangle({-half - 20, -44}, {half + 20, -34}, Fill::kSection);
  sketch.given({-half, -3}, {half, -3}, -0.7, "length", {1, 0});
  sketch.given_aside({half * 0.5, high * 0.5}, "rated");
  sketch.given_aside({-half * 0.5, high * 0.5}, "count");
}

}  // namespace

draw::Drawing gear_drawing(const LiftingGear& gear) {
  Sketch sketch;
  switch (gear.kind) {
    case GearKind::kSling:
      draw_sling(sketch);
      break;
    case GearKind::kShackle:
      draw_shackle(sketch);
      break;
    case GearKind::kSpreader:
      draw_spreader(sketch);
      break;
  }
  return sketch.drawing;
}

draw::Drawing truck_drawing(const Truck& truck, double longest) {
  Sketch sketch;
  const double length = std::max(truck.length.in(), 1.0), bed = 44, thick = 8, wheel = 20;
  sketch.rectangle({0, bed - thick}, {length, bed}, Fill::kShade);
  sketch.line({0, bed}, {0, bed + 30});
  // The cab stands to the left.
  sketch.shape({{-84, 16}, {-6, 16}, {-6, 96}, {-58, 96}, {-84, 58}}, Fill::kPaper);
  sketch.rectangle({-6, bed - thick - 8}, {length, bed - thick}, Fill::kPaper, Stroke::kThin);
  for (const double x : {-60.0, length * 0.68, length * 0.68 + 46})
    sketch.drawing.arcs.push_back({{x, wheel}, wheel, 0, 360, Stroke::kVisible});
  sketch.line({-100, 0}, {std::max(length, longest) + 20, 0}, Stroke::kThin);
  for (const double x : {0.12, 0.5, 0.88}) sketch.rectangle({length * x, bed}, {length * x + 6, bed + 5}, Fill::kInk);
  if (longest > 0) {
    sketch.rectangle({2, bed + 5}, {2 + longest, bed + 17}, Fill::kSection);
    sketch.told({2, bed + 17}, {2 + longest, bed + 17}, 2.2, "longest", {1, 0});
  }
  sketch.given({0, 0}, {length, 0}, -1, "length", {1, 0});
  sketch.given_aside({length * 0.62, bed - thick / 2}, "carries");
  return sketch.drawing;
}

}  // namespace bentbook
