// What a frame is held together with, counted by hand from its joints.
#include "frame/list/hardware.h"

#include <algorithm>
#include <catch_amalgamated.hpp>

#include "frame/placing/solve_frame.h"

using namespace bentbook;

namespace {

Frame barn() {
  auto frame =
      solve_frame(default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9))));
  REQUIRE(frame);
  return std::move(*frame);
}

int count_of(const std::vector<HardwareRow>& rows, int bent, Hardware what, double diameter) {
  int count = 0;
  for (const HardwareRow& row : rows)
    if (row.bent == bent && row.what == what && libm::fabs(row.diameter - diameter) < 1e-9) count += row.count;
  return count;
}

}  // namespace

TEST_CASE("a bent's pegs are counted from its joints, and all bents together are the frame", "[hardware]") {
  const std::vector<HardwareRow> rows = hardware_of(barn());
  // The last bent, joint by joint. 1 in: the tie's two tenons with two each, a post's tenon under each plate with one,
  // the king post's foot and head with one each. 3/4 in: one at each end of two braces under the tie, of one brace
  // under each plate and of one under the ridge.
  CHECK(count_of(rows, 4, Hardware::kPeg, 1) == 2 * 2 + 2 + 2);
  CHECK(count_of(rows, 4, Hardware::kPeg, 0.75) == 2 * (2 + 2 + 1));
  // An inner bent with its bay: braces to both sides, the bay's two girts, and three scarfs of two pegs each.
  CHECK(count_of(rows, 2, Hardware::kPeg, 1) == 2 * 2 + 2 + 2 + 3 * 2);
  CHECK(count_of(rows, 2, Hardware::kPeg, 0.75) == 2 * (2 + 4 + 2) + 2 * 2);
  int all = 0, by_bent = 0;
  for (const HardwareRow& row : hardware_in_all(rows)) all += row.count;
  for (const HardwareRow& row : rows) by_bent += row.count;
  CHECK(all == by_bent);
  CHECK(all == (14 + 14) + (14 + 20) + (8 + 20) + (8 + 10));
}

TEST_CASE("each tie at a knife plate has two plates, and its pins are steel", "[hardware]") {
  FramePlan plan = default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  plan.joints[static_cast<std::size_t>(Meeting::kTiePost)] = KnifePlate{};
  const auto frame = solve_frame(plan);
  REQUIRE(frame);
  int plates = 0, pins = 0;
  for (const HardwareRow& row : hardware_in_all(hardware_of(*frame))) {
    if (row.what == Hardware::kKnifePlate) plates += row.count;
    if (row.what == Hardware::kPin) pins += row.count;
    if (row.what != Hardware::kKnifePlate) CHECK(row.through > 0);
  }
  CHECK(plates == 4 * 2);
  CHECK(pins >= plates);
}

TEST_CASE("the list as CSV has a line for each kind and size", "[hardware]") {
  const std::vector<HardwareRow> rows = hardware_of(barn());
  const std::string csv = write_hardware_csv(rows);
  CHECK(csv.starts_with("bent,what,diameter,through,count\r\n"));
  CHECK(std::count(csv.begin(), csv.end(), '\n') == static_cast<std::ptrdiff_t>(rows.size()) + 1);
  CHECK(csv.find("1,peg,\"1\"\"\",") != std::string::npos);
}
