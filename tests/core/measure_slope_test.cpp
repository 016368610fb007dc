#include <catch_amalgamated.hpp>
#include <string>

#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;

namespace {

Slope read(std::string_view text, BareSlope bare = BareSlope::kIn12) {
  const auto slope = parse_slope(text, bare);
  INFO(text);
  REQUIRE(slope);
  return *slope;
}

Error trouble(std::string_view text, BareSlope bare = BareSlope::kIn12) {
  const auto slope = parse_slope(text, bare);
  INFO(text);
  REQUIRE_FALSE(slope);
  return slope.error();
}

}  // namespace

TEST_CASE("a pitch is read in every way it is said", "[slope]") {
  for (const char* text : {"10/12", "10:12", "10 in 12", "10", "10\"", "10\" in 12\"", "10 in in 12 in", "10\" : 1'",
                           "10 en 12", "2 1/2 : 3", "(4 + 6)/12", "10 / 12", "10⁄12", "254mm / 304.8mm"}) {
    INFO(text);
    const Slope slope = read(text);
    CHECK(slope.form == SlopeForm::kRatio);
    CHECK(slope.tan() == Catch::Approx(10.0 / 12.0).epsilon(1e-12));
  }
  CHECK(read("7 1/2") == Slope::in_12(Length::inches(15, 2)));
  CHECK(read("7-1/2 in 12") == read("7 1/2/12"));
  CHECK(read("7½:12") == read("7 1/2"));
  CHECK(read("1/2") == Slope::ratio(Length::inches(1), Length::inches(2)));
  CHECK(read("39.8°") == Slope::of_angle(Angle{39'800'000'000}));
  CHECK(read("39.8 deg") == read("39° 48′"));
  CHECK(read("39.8", BareSlope::kDegrees) == read("39.8°"));
  CHECK(read("83%") == read("83", BareSlope::kPercent));
  CHECK(read("83 %").tan() == 0.83);
  CHECK(read("833 mm/m") == read("833", BareSlope::kMmPerM));
  CHECK(read("833mm/m").tan() == 0.833);
  CHECK(read("83 1/3 %").tan() == Catch::Approx(10.0 / 12.0).epsilon(1e-10));
  CHECK(read("0").tan() == 0.0);
}

TEST_CASE("a slope that cannot be is refused with its reason", "[slope]") {
  CHECK(trouble("90°").code == ErrorCode::kSteep);
  CHECK(trouble("120", BareSlope::kDegrees).code == ErrorCode::kSteep);
  CHECK(trouble("-3/12").code == ErrorCode::kNegative);
  CHECK(trouble("-3").code == ErrorCode::kNegative);
  CHECK(trouble("-5°").code == ErrorCode::kNegative);
  CHECK(trouble("-5%").code == ErrorCode::kNegative);
  CHECK(trouble("3 : -12").code == ErrorCode::kNegative);
  CHECK(trouble("10/0").code == ErrorCode::kDivisionByZero);
  CHECK(trouble("10/0").at == 3);
  CHECK(trouble("").code == ErrorCode::kEmpty);
  CHECK(trouble("10:").at == 3);
  CHECK(trouble("10:12:14").at == 5);
  CHECK(trouble("10 in 12 abc").at == 9);
  CHECK(trouble("10 : 12 +").at == 9);
  CHECK(trouble("10\"", BareSlope::kDegrees).code == ErrorCode::kUnitMismatch);
  CHECK(trouble("99999999 %").code == ErrorCode::kOverflow);
}

// 10 in 12 is 39.806 degrees and its seat 50.194 (common practice: "about 40, and the two make 90").
// Common rafter per foot of run, r = 8 and 12: 14.42 and 16.97 in (NAVEDTRA 14044; Griffith, Carpentry, 1916).
TEST_CASE("a slope's angle and sides", "[slope]") {
  CHECK(print_fixed(Slope::in_12(Length::inches(10)).deg(), 3) == "39.806");
  CHECK(print_fixed(90 - Slope::in_12(Length::inches(10)).deg(), 3) == "50.194");
  CHECK(print_fixed(12 / Slope::in_12(Length::inches(8)).cos(), 2) == "14.42");
  CHECK(print_fixed(12 / Slope::in_12(Length::inches(12)).cos(), 2) == "16.97");
}

TEST_CASE("angles that are whole on paper stay whole", "[slope]") {
  const Slope twelve = Slope::in_12(Length::inches(12));
  CHECK(twelve.deg() == 45.0);
  CHECK(Angle::from_degrees(twelve.deg()) == Angle::degrees(45));
  CHECK(Angle::from_radians(twelve.rad()) == Angle::degrees(45));
  CHECK(Slope::of_angle(Angle::degrees(45)).tan() == 1.0);
  CHECK(Slope::of_angle(Angle::degrees(30)).sin() == 0.5);
  CHECK(Slope::of_angle(Angle::degrees(60)).cos() == 0.5);
  CHECK(Slope::ratio(Length::inches(3), Length::inches(4)).cos() == 4.0 / 5.0);
  CHECK(Slope::ratio(Length::inches(3), Length::inches(4)).sin() == 3.0 / 5.0);
  for (int d = 0; d < 90; ++d) {
    const Slope slope = Slope::of_angle(Angle::degrees(d));
    CHECK(Angle::from_radians(slope.rad()) == Angle::degrees(d));
    CHECK(Angle::from_radians(Slope::of_angle(Angle::degrees(d)).rad()) == Angle::degrees(d));
  }
}

TEST_CASE("angles are read with decimals, fractions, minutes and seconds", "[angle]") {
  const auto nano = [](std::string_view text) { return parse_angle(text)->nano_degrees; };
  CHECK(nano("39.8") == 39'800'000'000);
  CHECK(nano("39.8°") == 39'800'000'000);
  CHECK(nano("22 1/2°") == 22'500'000'000);
  CHECK(nano("39° 48′ 36″") == 39'810'000'000);
  CHECK(nano("39°48'36\"") == 39'810'000'000);
  CHECK(nano("39° 36″") == 39'010'000'000);
  CHECK(nano("-0° 30′") == -500'000'000);
  CHECK(nano("−39.8°") == -39'800'000'000);
  CHECK(nano("90 - 39.8") == 50'200'000'000);
  CHECK(nano("360") == 360'000'000'000);
  CHECK(parse_angle("361").error().code == ErrorCode::kTooLarge);
  CHECK(parse_angle("39° 60′").error().code == ErrorCode::kTooLarge);
  CHECK(parse_angle("39° 48").error().at == 7);
  CHECK(parse_angle("39° x").error().code == ErrorCode::kUnexpected);
  CHECK(parse_angle("°").error().at == 0);
  CHECK(parse_angle("39.8\"").error().code == ErrorCode::kUnitMismatch);
  CHECK(parse_angle("").error().code == ErrorCode::kEmpty);
}

TEST_CASE("counts", "[count]") {
  CHECK(*parse_count("0") == 0);
  CHECK(*parse_count(" 1000000 ") == 1'000'000);
  CHECK(parse_count("1000001").error().code == ErrorCode::kTooLarge);
  CHECK(parse_count("-1").error().code == ErrorCode::kNegative);
  CHECK(parse_count("1.5").error().code == ErrorCode::kUnexpected);
  CHECK(parse_count("12 in").error().at == 3);
  CHECK(parse_count("").error().code == ErrorCode::kEmpty);
}
