// Elevations of frames.
#include "frame/drawings/plan_drawing.h"

#include <algorithm>
#include <array>
#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"
#include "model/book_model.h"
#include "plans.h"

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

TEST_CASE("what the layout's drawing measures ends on the timbers themselves", "[plan_drawing]") {
  Random random(31);
  int ties = 0, collars = 0;
  for (int round = 0; round < 60; ++round) {
    const FramePlan plan = random_plan(random);
    const auto frame = solve_frame(plan);
    if (!frame || !plan.overrides.empty()) continue;
    // Of the timbers of that kind: the level of a side as it is designed.
    const auto level = [&](TimberKind kind, double side) {
      for (const Timber& t : frame->timbers)
        if (t.kind == kind && std::abs(t.at.x.z) < 1e-9) return t.at.origin.z + side * t.wood.design.depth.in() / 2;
      return -1.0;
    };
    for (const draw::Dimension& d : options_drawing(plan, *frame).dimensions) {
      CAPTURE(round, d.key);
      if (d.key == "tie_drop" && level(TimberKind::kTie, 1) > 0) {
        CHECK(std::abs(d.a.y - level(TimberKind::kTie, 1)) < 1e-6);
        ++ties;
      }
      if (d.key == "collar_rise" && level(TimberKind::kCollar, -1) > 0) {
        CHECK(std::abs(d.b.y - level(TimberKind::kCollar, -1)) < 1e-6);
        ++collars;
      }
    }
  }
  CHECK(ties > 5);
  CHECK(collars > 2);
}

TEST_CASE("a rise in 12 is drawn as its triangle, along the roof and over it; an angle as its arc", "[plan_drawing]") {
  for (const int rise : {4, 9, 12}) {
    FramePlan plan =
        default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(rise)));
    const auto frame = solve_frame(plan);
    REQUIRE(frame);
    const draw::Drawing drawing = bent_drawing(plan, *frame, 1);
    CHECK(drawing.angles.empty());
    const auto figure = [&](std::string_view key) {
      return *std::find_if(drawing.dimensions.begin(), drawing.dimensions.end(),
                           [&](const draw::Dimension& one) { return one.key == key; });
    };
    const draw::Dimension up = figure("pitch_left"), level = figure("in_12_left");
    CHECK(up.meaning == draw::Meaning::kGiven);
    CHECK(level.meaning == draw::Meaning::kFact);
    CHECK((up.b.y - up.a.y) / (level.b.x - level.a.x) == Catch::Approx(rise / 12.0));
    CHECK(up.b == level.a);
    // Its foot clears the rafters' upper side by a hand.
    REQUIRE(drawing.notes.size() == 1);
    const draw::Point peak = drawing.notes[0].at;
    const double roof = peak.y - (peak.x - up.a.x) * rise / 12.0;
    CHECK(up.a.y > roof);
    CHECK(up.a.y < roof + 12);
    plan.pitch_left = plan.pitch_right = Slope::of_angle(Angle::degrees(40));
    const auto other = solve_frame(plan);
    REQUIRE(other);
    CHECK(bent_drawing(plan, *other, 1).angles.size() == 1);
  }
}

TEST_CASE("totals name the wood that all timbers are of, and none where they differ", "[plan_drawing]") {
  Book book;
  book.frame = default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  auto frame = solve_frame(book.frame);
  REQUIRE(frame);
  CHECK(totals_of(*frame).species == book.frame.species.name);
  CHECK(totals_of(*frame).moisture == book.frame.moisture);
  frame->timbers.back().moisture += 1;
  CHECK(totals_of(*frame).species == book.frame.species.name);
  CHECK_FALSE(totals_of(*frame).moisture);
}
