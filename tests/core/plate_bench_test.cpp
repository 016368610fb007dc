// A knife plate at the bench, against arithmetic by hand and against what a whole frame says of the same plate.

#include "shop/plate_bench.h"

#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"

using namespace bentbook;

namespace {

std::string refused_at(const PlateBenchInput& input) {
  const auto bench = plate_bench(input);
  return bench ? std::string() : bench.error().where;
}

double tool(const Frame& frame, ToolSetting setting) {
  for (const Joint& joint : frame.joints)
    for (const ToolNumber& t : joint.tools)
      if (joint.kind == JointKind::kKnifePlate && t.timber == joint.member && t.setting == setting) return t.value;
  return -1;
}

}  // namespace

// 1/4 in plate with 1/16 in of play: 5/16 in. (8 - 5/16) / 2 = 3 27/32 in. 7 1/2 in of reach and 1/4 in of play at the
// bottom: 7 3/4 in. 8 in less a plug of 1 in at each side: pins of 6 in. Two pins 3 in apart: the first 2 1/2 in up.
TEST_CASE("a quarter-inch plate in an 8 x 8 wants slot, gauge, depth and pins as reckoned by hand", "[bench]") {
  const auto bench = plate_bench({});
  REQUIRE(bench);
  CHECK(bench->slot == Length::inches(5, 16));
  CHECK(bench->gauge == Length::inches(123, 32));
  CHECK(bench->depth == Length::inches(31, 4));
  CHECK(bench->pin_length == Length::inches(6));
  CHECK(bench->row == Length::inches(21, 4));
  CHECK(bench->first_pin == Length::inches(5, 2));

  PlateBenchInput base;
  base.plate.let_in = false;
  CHECK(plate_bench(base)->depth == Length::inches(33, 4));
  CHECK(plate_bench(base)->row == Length::inches(23, 4));
}

TEST_CASE("the bench says of a plate what a frame's tool numbers say", "[bench]") {
  FramePlan plan;
  for (const bool let_in : {true, false}) {
    PlateBenchInput input;
    input.plate.let_in = let_in;
    input.section = plan.sections.tie;
    plan.joints[static_cast<std::size_t>(Meeting::kTiePost)] = input.plate;
    const auto frame = solve_frame(plan);
    REQUIRE(frame);
    const auto bench = plate_bench(input);
    REQUIRE(bench);
    CHECK(tool(*frame, ToolSetting::kSlotWidth) == Catch::Approx(bench->slot.in()));
    CHECK(tool(*frame, ToolSetting::kFence) == Catch::Approx(bench->gauge.in()));
    CHECK(tool(*frame, ToolSetting::kDepthStop) == Catch::Approx(bench->depth.in()));
  }
}

TEST_CASE("a plate with no room in its timber is refused by the measure that is too large", "[bench]") {
  PlateBenchInput input;
  input.plate.thickness = Length::inches(4);
  input.section.breadth = Length::inches(4);
  CHECK(refused_at(input) == "bench.plate.thickness");
  input = {};
  input.plate.pins.spacing = Length::inches(12);
  CHECK(refused_at(input) == "bench.plate.pins.spacing");
  input = {};
  input.plate.pins.plug = Length::inches(4);
  CHECK(refused_at(input) == "bench.plate.pins.plug");
}
