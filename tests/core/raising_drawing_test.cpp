// Drawings of the yard: what is given on them are fields of the book, each once.
#include <algorithm>
#include <catch_amalgamated.hpp>
#include <set>
#include <string>

#include "book/field.h"
#include "frame/placing/solve_frame.h"
#include "raising/drawings/crane_drawing.h"
#include "raising/drawings/gear_drawing.h"
#include "raising/drawings/site_drawing.h"
#include "raising/drawings/temporary_drawing.h"
#include "raising/plan_edits.h"

using namespace bentbook;

namespace {

std::set<std::string> given_on(const draw::Drawing& drawing) {
  std::set<std::string> keys;
  const auto take = [&](const auto& figures) {
    for (const auto& figure : figures)
      if (figure.meaning == draw::Meaning::kGiven) CHECK(keys.insert(figure.key).second);
  };
  take(drawing.dimensions);
  take(drawing.notes);
  return keys;
}

void check_fields(const Book& book, const draw::Drawing& drawing, const std::string& root,
                  const std::set<std::string>& wanted) {
  const std::set<std::string> given = given_on(drawing);
  CHECK(given == wanted);
  for (const std::string& key : given) CHECK(field_at(book, root + key));
}

Book yard() {
  Book book;
  book.frame = default_plan(Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
  book.raising.crane = {true,
                        {{Length::feet(40), Weight::pounds(3000)}, {Length::feet(20), Weight::pounds(9000)}},
                        {},
                        {},
                        Length::feet(30),
                        Length::feet(18)};
  book.raising.gear.resize(1);
  return book;
}

}  // namespace

TEST_CASE("what the yard's drawings ask for are the book's fields, each once", "[yard_drawing]") {
  Book book = yard();
  const RaisingPlan& plan = book.raising;
  check_fields(book, crane_drawing(plan.crane, Machine::kCrane, {}), "raising.crane.",
               {"chart.0.radius", "chart.0.capacity", "chart.1.radius", "chart.1.capacity", "hook_block", "rigging"});
  check_fields(book, gin_pole_drawing(), "raising.gin_pole.", {"rated"});
  check_fields(book, gear_drawing({"", GearKind::kSling}), "raising.gear.0.", {"length", "rated", "choked", "count"});
  check_fields(book, gear_drawing({"", GearKind::kShackle}), "raising.gear.0.", {"rated", "count"});
  check_fields(book, gear_drawing({"", GearKind::kSpreader}), "raising.gear.0.", {"length", "rated", "count"});
  check_fields(book, truck_drawing(plan.truck, 300), "raising.truck.", {"length", "carries"});
  const auto frame = solve_frame(book.frame);
  REQUIRE(frame);
  check_fields(book, site_drawing(*frame, plan, InYard::kCrane), "raising.", {"crane.x", "crane.y"});
  check_fields(book, site_drawing(*frame, plan, InYard::kStack), "raising.", {"stack_x", "stack_y"});
}

TEST_CASE("a chart is drawn from its shortest radius down, at the one scale of the ground", "[yard_drawing]") {
  const Book book = yard();
  const draw::Drawing drawing = crane_drawing(book.raising.crane, Machine::kCrane, {});
  REQUIRE(drawing.dimensions.size() == 2);
  CHECK(drawing.dimensions[0].key == "chart.1.radius");
  CHECK(drawing.dimensions[0].b.x == Catch::Approx(240));
  CHECK(drawing.dimensions[1].b.x == Catch::Approx(480));
  CHECK(drawing.dimensions[1].a.y < drawing.dimensions[0].a.y);
}

TEST_CASE("the yard tells how far its first machine stands from the stack, and how far its chart reaches",
          "[yard_drawing]") {
  Book book = yard();
  book.raising.stack_x = Length::feet(-10);
  book.raising.stack_y = Length::feet(-12);
  for (const InYard shown : {InYard::kCrane, InYard::kStack}) {
    CHECK(site_answer(book.raising, shown, "radius_stack") == Catch::Approx(600));  // 40, 30 and 50 feet
    CHECK(site_answer(book.raising, shown, "reach") == Catch::Approx(480));
  }
  CHECK_FALSE(site_answer(book.raising, InYard::kTelehandler, "reach"));
}

TEST_CASE("a brace that holds a post runs at 45 degrees out of its wall, and to another post at 45 degrees down",
          "[yard_drawing]") {
  Book book = yard();
  const auto frame = solve_frame(book.frame);
  REQUIRE(frame);
  Temporary brace;
  brace.name = "T1";
  hold_timber(*frame, brace, "P-E2", Length::inches(1));
  auto line = temporary_line(*frame, brace);
  REQUIRE(line);
  CHECK(line->to.x - line->from.x == Catch::Approx(line->from.z).margin(1));
  CHECK(line->to.y == Catch::Approx(line->from.y).margin(1));
  CHECK(line->to.x > Length::feet(12).in());
  CHECK(elevation_of(*line) == Elevation::kAcross);
  book.raising.temporaries = {brace};
  check_fields(book, temporary_drawing(*frame, brace), "raising.temporaries.@T1.",
               {"from.mark", "to.mark", "from.station", "ground_x"});

  lead_to(*frame, brace, "P-E3", Length::inches(1));
  line = temporary_line(*frame, brace);
  REQUIRE(line);
  CHECK(elevation_of(*line) == Elevation::kAlong);
  CHECK(line->from.z > line->to.z);
  book.raising.temporaries = {brace};
  check_fields(book, temporary_drawing(*frame, brace), "raising.temporaries.@T1.",
               {"from.mark", "to.mark", "from.station", "to.station"});

  lead_to(*frame, brace, "", Length::inches(1));
  CHECK(brace.to.mark.empty());
  CHECK(temporary_drawing(*frame, Temporary{}).dimensions.empty());
}
