#include "raising/drawings/crane_drawing.h"

#include <algorithm>
#include <string>
#include <vector>

#include "draw/sketch.h"
#include "raising/lifting/crane.h"

namespace bentbook {
namespace {

using draw::Fill;
using draw::Meaning;
using draw::Point;
using draw::Sketch;
using draw::Stroke;

constexpr double kNoChart = 240;  // inches of radius that a crane without a chart is drawn with

/// In shares of the longest radius.
struct Scaled {
  Sketch& sketch;
  double unit;
  [[nodiscard]] Point at(double x, double y) const { return {x * unit, y * unit}; }
  void wheel(double x, double radius) const {
    sketch.drawing.arcs.push_back({at(x, radius), radius * unit, 0, 360, Stroke::kVisible});
    sketch.drawing.arcs.push_back({at(x, radius), radius * unit * 0.4, 0, 360, Stroke::kThin});
  }
  void box(double x0, double y0, double x1, double y1, Fill fill) const {
    sketch.rectangle(at(x0, y0), at(x1, y1), fill);
  }
  /// Tapered, its axis from one point to the other.
  void beam(Point from, Point to, double from_thick, double to_thick) const {
    const double whole = libm::hypot(to.x - from.x, to.y - from.y);
    const Point up{-(to.y - from.y) / whole / 2, (to.x - from.x) / whole / 2};
    const auto off = [&](Point p, double thick) { return at(p.x + up.x * thick, p.y + up.y * thick); };
    sketch.shape({off(from, -from_thick), off(to, -to_thick), off(to, to_thick), off(from, from_thick)}, Fill::kShade);
  }
};

/// The hook's line, block, sling and a timber, plumb under `tip`, and where the block's weight is told.
void hang(const Scaled& s, double tip, const ChartRoom& room) {
  const double block = tip * 0.72, timber = 0.1;
  s.sketch.line(s.at(1, tip), s.at(1, block));
  s.box(1 - 0.018, block - 0.05, 1 + 0.018, block, Fill::kInk);
  for (const double side : {-1.0, 1.0})
    s.sketch.line(s.at(1, block - 0.05), s.at(1 + side * 0.07, timber), Stroke::kThin);
  s.box(1 - 0.1, timber - 0.04, 1 + 0.08, timber, Fill::kSection);
  const Point hook = s.at(1, block - 0.02), sling = s.at(1 + 0.045, timber + 0.06);
  if (room.aside <= 0) {
    s.sketch.given_aside(hook, "hook_block");
    s.sketch.given_aside(sling, "rigging");
    return;
  }
  const auto in_column = [&](double y, const char* key) {
    s.sketch.drawing.notes.push_back({s.at(room.aside, y), key, Meaning::kGiven});
  };
  in_column(timber + 1.1 * room.row, "hook_block");
  in_column(timber, "rigging");
}

void stand_crane(const Scaled& s, const ChartRoom& room) {
  s.box(-0.15, 0.05, 0.16, 0.1, Fill::kShade);
  s.sketch.shape({s.at(-0.24, 0.05), s.at(-0.15, 0.05), s.at(-0.15, 0.18), s.at(-0.2, 0.18), s.at(-0.24, 0.11)},
                 Fill::kPaper);
  for (const double x : {-0.19, -0.05, 0.05}) s.wheel(x, 0.035);
  // Outriggers, and the part that swings.
  for (const double x : {-0.12, 0.13}) {
    s.box(x - 0.03, 0, x + 0.03, 0.02, Fill::kInk);
    s.box(x - 0.008, 0, x + 0.008, 0.05, Fill::kInk);
  }
  s.box(-0.1, 0.1, 0.06, 0.18, Fill::kPaper);
  s.beam({-0.05, 0.18}, {1, 0.62}, 0.06, 0.025);
  hang(s, 0.62, room);
}

void stand_telehandler(const Scaled& s, const ChartRoom& room) {
  s.box(-0.2, 0.06, 0.2, 0.14, Fill::kShade);
  s.box(-0.04, 0.14, 0.08, 0.26, Fill::kPaper);
  for (const double x : {-0.13, 0.13}) s.wheel(x, 0.065);
  s.beam({-0.18, 0.22}, {1, 0.52}, 0.07, 0.035);
  hang(s, 0.52, room);
}

std::vector<std::size_t> by_radius(const std::vector<ChartRow>& chart) {
  std::vector<std::size_t> order(chart.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return chart[a].radius < chart[b].radius; });
  return order;
}

}  // namespace

draw::Drawing crane_drawing(const Crane& crane, Machine machine, const ChartRoom& room) {
  Sketch sketch;
  const double longest = longest_radius(crane), unit = longest > 0 ? longest : kNoChart;
  const Scaled s{sketch, unit};
  if (machine == Machine::kCrane)
    stand_crane(s, room);
  else
    stand_telehandler(s, room);
  sketch.line(s.at(-0.26, 0), s.at(1.1, 0));
  double y = 0;
  for (const std::size_t i : by_radius(crane.chart)) {
    y -= room.row * unit;
    const double radius = crane.chart[i].radius.in();
    const std::string row = "chart." + std::to_string(i);
    sketch.line({radius, -0.02 * unit}, {radius, y - 0.02 * unit}, Stroke::kThin);
    sketch.given({0, y}, {radius, y}, 0, row + ".radius", {1, 0});
    sketch.drawing.notes.push_back(
        {{room.aside * unit, y + 0.2 * room.row * unit}, row + ".capacity", Meaning::kGiven});
  }
  sketch.line(s.at(0, 0.24), {0, y - 0.06 * unit}, Stroke::kCentre);
  return sketch.drawing;
}

draw::Drawing gin_pole_drawing() {
  Sketch sketch;
  const Scaled s{sketch, 240};
  sketch.line(s.at(-0.9, 0), s.at(1, 0));
  s.beam({0, 0}, {0.36, 0.92}, 0.035, 0.03);
  for (const double foot : {-0.85, -0.55}) sketch.line(s.at(0.355, 0.905), s.at(foot, 0), Stroke::kThin);
  sketch.line(s.at(0.36, 0.91), s.at(0.36, 0.42));
  s.box(0.34, 0.37, 0.38, 0.42, Fill::kInk);
  for (const double side : {-1.0, 1.0}) sketch.line(s.at(0.36, 0.37), s.at(0.36 + side * 0.1, 0.2), Stroke::kThin);
  s.box(0.16, 0.14, 0.56, 0.2, Fill::kSection);
  sketch.given_aside(s.at(0.38, 0.4), "rated");
  return sketch.drawing;
}

}  // namespace bentbook
