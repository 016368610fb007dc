// What is drawn of a corner is where it is: measured on the drawing itself.
#include "roof/corner/corner_drawing.h"

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cmath>

#include "random.h"

using namespace bentbook;

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180;

CornerInput drawn_corner(CornerKind kind, int eaves, int rise, int other) {
  CornerInput input;
  input.kind = kind;
  input.eave_angle = Angle::degrees(eaves);
  input.pitch = Slope::in_12(Length::inches(rise));
  input.pitch_other = Slope::in_12(Length::inches(other));
  input.seat = Length::inches(2);
  return input;
}

double length_of(const draw::Line& line) { return std::hypot(line.b.x - line.a.x, line.b.y - line.a.y); }

}  // namespace

TEST_CASE("in plan jacks run square from their eave to the hip's line, as long as they are level",
          "[corner][drawing]") {
  for (const CornerKind kind : {CornerKind::kHip, CornerKind::kValley})
    for (const auto& [eaves, rise, other] : {std::tuple{90, 8, 8}, {120, 9, 6}, {75, 6, 12}}) {
      CAPTURE(eaves, rise, other, static_cast<int>(kind));
      const CornerInput input = drawn_corner(kind, eaves, rise, other);
      const auto corner = solve_corner(input);
      REQUIRE(corner);
      const draw::Drawing drawing = corner_plan_drawing(input, *corner);
      const double plan = corner->roof(0).plan.rad();
      int on_line = 0;
      for (const draw::Line& line : drawing.lines) {
        if (line.stroke != draw::Stroke::kThin) continue;
        for (const draw::Point p : {line.a, line.b})
          on_line += std::abs(p.x * std::sin(plan) - p.y * std::cos(plan)) < 1e-6 ? 1 : 0;
      }
      // Each jack once, the last common of a hip (and of a valley the rafter at the corner) of both roofs.
      CHECK(on_line == corner->roof(0).jacks + corner->roof(1).jacks + 2);
      const Jack first = jack_of(input, *corner, 0, 1);
      const double level = first.line.in() * std::cos(corner->roof(0).slope.rad());
      CHECK(std::any_of(drawing.lines.begin(), drawing.lines.end(), [&](const draw::Line& line) {
        return line.stroke == draw::Stroke::kThin && std::abs(length_of(line) - level) < 1e-6;
      }));
    }
}

TEST_CASE("the angles that a plan tells are those between its own lines", "[corner][drawing]") {
  const CornerInput input = drawn_corner(CornerKind::kHip, 105, 10, 6);
  const auto corner = solve_corner(input);
  REQUIRE(corner);
  const draw::Drawing drawing = corner_plan_drawing(input, *corner);
  const auto angle = [&](std::string_view key) {
    return *std::find_if(drawing.angles.begin(), drawing.angles.end(), [&](const auto& one) { return one.key == key; });
  };
  CHECK(angle("eave_angle").to_deg - angle("eave_angle").from_deg == Catch::Approx(105));
  CHECK(angle("plan").to_deg == Catch::Approx(corner->roof(0).plan.deg()));
  CHECK(angle("plan_other").from_deg == Catch::Approx(corner->roof(0).plan.deg()));
  CHECK(angle("plan_other").to_deg - angle("plan_other").from_deg == Catch::Approx(corner->roof(1).plan.deg()));
}

TEST_CASE("across it an unbacked hip touches both roofs with its arrises and stands under them", "[corner][drawing]") {
  Random random(3);
  for (int round = 0; round < 200; ++round) {
    CornerInput input = drawn_corner(CornerKind::kHip, static_cast<int>(random.whole(60, 110)),
                                     static_cast<int>(random.whole(4, 14)), static_cast<int>(random.whole(4, 14)));
    const auto corner = solve_corner(input);
    if (!corner || !corner->roof(0).meets || !corner->roof(1).meets) continue;
    const draw::Drawing drawing = corner_across_drawing(input, *corner);
    REQUIRE(drawing.polygons.size() == 1);
    const auto& box = drawing.polygons[0].points;
    double top = -1e300, left = 1e300, right = -1e300;
    for (const draw::Point p : box) top = std::max(top, p.y), left = std::min(left, p.x), right = std::max(right, p.x);
    // The first roof falls to the right.
    CHECK(std::abs(top + right * std::tan(corner->roof(0).backing.deg() * kDegree)) < 1e-6);
    CHECK(std::abs(top - left * std::tan(corner->roof(1).backing.deg() * kDegree)) < 1e-6);
  }
}

TEST_CASE("a cut laid flat leaves each arris where its mark says, its angle between line and timber",
          "[corner][drawing]") {
  const CornerInput input = drawn_corner(CornerKind::kHip, 90, 8, 8);
  const auto corner = solve_corner(input);
  REQUIRE(corner);
  for (const CornerCut& cut : corner_cuts(input, *corner)) {
    if (cut.name != CornerCutName::kJack) continue;
    const draw::Drawing drawing = corner_cut_drawing(cut);
    std::vector<draw::Line> across;
    for (const draw::Line& line : drawing.lines)
      if (line.stroke == draw::Stroke::kCut) across.push_back(line);
    REQUIRE(across.size() == 4);
    const auto marks = arris_marks(cut);
    for (std::size_t i = 0; i < 4; ++i) CHECK(-across[i].a.x == Catch::Approx(marks[i].in()).margin(1e-9));
    // 8 in 12: 39.76° off the length on the top, 33.69° off square on the side (plane geometry).
    const auto span = [&](const draw::Line& line) {
      return std::atan2(std::abs(line.b.x - line.a.x), std::abs(line.b.y - line.a.y)) / kDegree;
    };
    CHECK(span(across[0]) == Catch::Approx(90 - 39.76).margin(5e-3));
    CHECK(span(across[1]) == Catch::Approx(33.69).margin(5e-3));
    for (const draw::AngleDimension& angle : drawing.angles)
      CHECK(angle.to_deg - angle.from_deg == Catch::Approx(angle.key == "from_length" ? 39.76 : 33.69).margin(5e-3));
  }
}
