// Changes of a roof's outline, and its drawing: what is asked for on it are its sides, each once.
#include "roof/plan/roof_edits.h"

#include <catch_amalgamated.hpp>
#include <set>
#include <string>

#include "frame/metric_sizes.h"
#include "frame/roofs/roof_shapes.h"
#include "plans.h"
#include "random.h"
#include "roof/plan/roof_drawing.h"
#include "roof_plans.h"

using namespace bentbook;

namespace {

const Slope kEight = Slope::in_12(Length::inches(8));

std::vector<Length> lengths_of_sides(const RoofPlan& plan) {
  std::vector<Length> lengths;
  lengths.reserve(plan.sides.size());
  for (int i = 0; i < static_cast<int>(plan.sides.size()); ++i) lengths.push_back(length_of_side(plan, i));
  return lengths;
}

std::vector<Length> feet(std::initializer_list<int> all) {
  std::vector<Length> lengths;
  lengths.reserve(all.size());
  for (const int n : all) lengths.push_back(Length::feet(n));
  return lengths;
}

}  // namespace

TEST_CASE("a wall made longer moves the next one along, to the last bit where walls are square", "[roof]") {
  RoofPlan plan = rectangle_roof(Length::feet(36), Length::feet(24), kEight);
  const Length odd = Length::feet(40) + Length::inches(3, 64);
  plan = with_side_length(plan, 0, odd);
  CHECK(lengths_of_sides(plan) == std::vector<Length>{odd, Length::feet(24), odd, Length::feet(24)});
  plan = with_side_length(plan, 3, Length::feet(20));
  CHECK(length_of_side(plan, 1) == Length::feet(20));
  CHECK(length_of_side(plan, 0) == odd);

  const RoofPlan l = l_roof(Length::feet(36), Length::feet(24), Length::feet(14), Length::feet(12), kEight);
  CHECK(lengths_of_sides(l) == feet({36, 36, 14, 12, 22, 24}));
  CHECK(lengths_of_sides(with_side_length(l, 2, Length::feet(16))) == feet({36, 36, 16, 12, 20, 24}));
  CHECK(lengths_of_sides(with_side_length(l, 3, Length::feet(10))) == feet({36, 36, 14, 10, 22, 26}));
}

TEST_CASE("a bay's front made wider keeps the slant of its sides", "[roof]") {
  const RoofPlan plan = bay_roof(Length::feet(40), Length::feet(24), Length::feet(16), Length::feet(4), kEight);
  const RoofPlan wider = with_side_length(plan, 2, Length::feet(10));
  REQUIRE(check_roof_plan(wider));
  CHECK(length_of_side(wider, 2).in() == Catch::Approx(120).margin(1e-6));
  for (const int slanted : {1, 3}) {
    const PlanSide &a = wider.sides[static_cast<std::size_t>(slanted)],
                   &b = wider.sides[static_cast<std::size_t>(slanted) + 1];
    CHECK(std::abs((b.x - a.x).in()) == Catch::Approx(std::abs((b.y - a.y).in())).margin(1e-6));
  }
}

TEST_CASE("a part moved out and taken out again leaves the walls as they were", "[roof]") {
  const RoofPlan plan = rectangle_roof(Length::feet(36), Length::feet(24), kEight);
  const RoofPlan out = with_part_out(plan, 2, Length::inches(1));
  REQUIRE(solve_roof(out));
  CHECK(lengths_of_sides(out) == feet({36, 24, 12, 6, 12, 6, 12, 24}));
  CHECK(lengths_of_sides(without_side(out, 4)) == lengths_of_sides(plan));
  // An L's wing goes, and with it the wall that it stood on.
  const RoofPlan l = l_roof(Length::feet(36), Length::feet(24), Length::feet(14), Length::feet(12), kEight);
  CHECK(lengths_of_sides(without_side(l, 2)) == feet({36, 24, 36, 24}));
  // With a bay's slanted side goes the bay.
  const RoofPlan bay = bay_roof(Length::feet(40), Length::feet(24), Length::feet(16), Length::feet(4), kEight);
  CHECK(lengths_of_sides(without_side(bay, 1)) == feet({40, 24, 40, 24}));
}

TEST_CASE("whatever is changed on a random roof, its walls are as long as they were told, and it solves or says why",
          "[roof]") {
  Random random(14);
  int solved = 0;
  for (int round = 0; round < 300; ++round) {
    const RoofPlan plan = random_roof(random, {});
    if (!check_roof_plan(plan)) continue;
    const int side = static_cast<int>(random.whole(0, static_cast<std::int64_t>(plan.sides.size()) - 1));
    const Length length = random_inches(random, 24, 600, 8);
    const RoofPlan next = with_side_length(plan, side, length);
    REQUIRE(next.sides.size() == plan.sides.size());
    CHECK(length_of_side(next, side).in() == Catch::Approx(length.in()).margin(1e-5));
    for (const RoofPlan& changed : {next, with_part_out(plan, side, Length::inches(1)), without_side(plan, side)})
      if (const auto roof = solve_roof(changed)) ++solved;
  }
  CHECK(solved > 100);
}

TEST_CASE("on a roof's drawing each side and each wall is asked for once", "[roof]") {
  const RoofPlan plan = u_roof(Length::feet(48), Length::feet(20), Length::feet(14), Length::feet(16), kEight);
  const auto roof = solve_roof(plan);
  REQUIRE(roof);
  for (const RoofSolution* with : {&*roof, static_cast<const RoofSolution*>(nullptr)}) {
    const draw::Drawing drawing = roof_plan_drawing(plan, with, 3);
    std::set<std::string> keys;
    for (const draw::Note& note : drawing.notes) CHECK(keys.insert(note.key).second);
    for (const draw::Dimension& d : drawing.dimensions) CHECK(keys.insert(d.key).second);
    CHECK(keys.size() == 2 * plan.sides.size());
  }
}

TEST_CASE("roofs to begin with over a book by the millimetre have no odd millimetre in walls or wood, and solve",
          "[roof]") {
  const FramePlan frame = default_plan(Length::mm(7200), Length::mm(10800), Length::mm(3000),
                                       Slope::of_angle(Angle::degrees(35)), SizedBy::kMillimetres);
  for (const RoofPlan& plan : roof_shapes(frame, Length::mm(10800))) {
    REQUIRE(solve_roof(plan));
    for (const PlanSide& side : plan.sides)
      for (const Length place : {side.x, side.y, side.overhang, side.plate_height})
        CHECK(place.count % Length::mm(1).count == 0);
    for (const Section& section : {plan.common, plan.hip, plan.valley, plan.ridge}) CHECK(is_by_millimetres(section));
    CHECK(plan.heel.count % Length::mm(5).count == 0);
  }
}
