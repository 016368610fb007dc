// Elevations of frames.
#include "frame/drawings/plan_drawing.h"

#include <algorithm>
#include <array>
#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"

using namespace bentbook;

namespace {

/// Of a polygon, by its corners (the surveyor's formula).
double area(const draw::Polygon& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.points.size(); ++i) {
    const draw::Point a = polygon.points[i], b = polygon.points[(i + 1) % polygon.points.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

double middle_x(const draw::Polygon& polygon) {
  const auto [low, high] = std::minmax_element(polygon.points.begin(), polygon.points.end(),
                                               [](draw::Point a, draw::Point b) { return a.x < b.x; });
  return (low->x + high->x) / 2;
}

}  // namespace

TEST_CASE("a bent alike on both sides is drawn alike on both sides", "[plan_drawing]") {
  for (const int span : {12, 14, 16, 20, 24, 26, 30})
    for (const int rise : {4, 6, 7, 8, 9, 10, 12, 14}) {
      const FramePlan plan =
          default_plan(Length::feet(span), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(rise)));
      const auto frame = solve_frame(plan);
      REQUIRE(frame);
      const draw::Drawing drawing = bent_drawing(plan, *frame, 1);
      CAPTURE(span, rise);
      for (const draw::Polygon& one : drawing.polygons) {
        const double x = middle_x(one), size = area(one);
        CAPTURE(x, size);
        CHECK(std::any_of(drawing.polygons.begin(), drawing.polygons.end(), [&](const draw::Polygon& other) {
          return std::abs(middle_x(other) + x) < 1e-3 && std::abs(area(other) - size) < 1e-3 * size;
        }));
      }
    }
}
