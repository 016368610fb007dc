#include <catch_amalgamated.hpp>
#include <limits>
#include <string>

#include "measure/other_units.h"
#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;

namespace {

std::string feet(Length value, int denominator = 16, Marks marks = Marks::kAscii) {
  return print_length(value, {LengthForm::kFeetInches, denominator, 0}, marks).text;
}

std::string printed(Length value, LengthForm form, int decimals = 0) {
  return print_length(value, {form, 16, decimals}, Marks::kAscii).text;
}

}  // namespace

// NAVEDTRA 14044, ch. 2: times 16, half or more goes up; 0.12 in is 1/8 in; 111.12 in is 9 ft 3 1/8 in.
// Griffith, Carpentry, 1916, app. IV: 17 ft 8.12 in is 17 ft 8 1/8 in.
// 60 x 100 ft: diagonal 116 ft 7 7/16 in (exact 116.619 ft).
TEST_CASE("decimals become the sixteenths that the handbooks print", "[print]") {
  CHECK(feet(Length::from_inches(0.12)) == "1/8\"");
  CHECK(feet(Length::from_inches(111.12)) == "9' 3-1/8\"");
  CHECK(feet(Length::feet(17) + Length::from_inches(8.12)) == "17' 8-1/8\"");
  CHECK(feet(Length::from_inches(12 * 116.61903789690601)) == "116' 7-7/16\"");
  CHECK(feet(Length::inches(1, 32)) == "1/16\"");
  CHECK(feet(Length{Length::kPerInch / 32 - 1}) == "0\"");
}

TEST_CASE("feet, inches and a reduced fraction, carried", "[print]") {
  CHECK(feet(Length::inches(1211, 8)) == "12' 7-3/8\"");
  CHECK(feet(Length::inches(1211, 8), 16, Marks::kScreen) == "12′ 7 3⁄8″");
  CHECK(feet(Length::inches(767, 64), 64) == "11-63/64\"");
  CHECK(feet(Length::inches(767, 64), 32) == "1' 0\"");
  CHECK(feet(Length::inches(767, 64), 16) == "1' 0\"");
  CHECK(feet(Length::feet(12)) == "12' 0\"");
  CHECK(feet(Length::inches(1155, 8)) == "12' 0-3/8\"");
  CHECK(feet(Length::inches(3, 8)) == "3/8\"");
  CHECK(feet(Length{}) == "0\"");
  CHECK(feet(Length::inches(5, 64), 8) == "1/8\"");
  CHECK(feet(Length::inches(5, 64), 32) == "3/32\"");
  CHECK(feet(Length::inches(5, 64), 64) == "5/64\"");
  CHECK(feet(Length::inches(1, 3), 7) == "5/16\"");
}

TEST_CASE("negative values carry a sign in front and round like their mirror", "[print]") {
  CHECK(feet(-Length::inches(1211, 8)) == "-12' 7-3/8\"");
  CHECK(feet(-Length::inches(1211, 8), 16, Marks::kScreen) == "−12′ 7 3⁄8″");
  CHECK(feet(-Length::inches(1, 32)) == "-1/16\"");
  CHECK(feet(-Length::inches(1, 64)) == "0\"");
}

TEST_CASE("the other forms", "[print]") {
  const Length value = Length::inches(1211, 8);
  CHECK(printed(value, LengthForm::kInchFraction) == "151-3/8\"");
  CHECK(printed(value, LengthForm::kDecimalInch, 3) == "151.375\"");
  CHECK(printed(value, LengthForm::kDecimalInch, 2) == "151.38\"");
  CHECK(printed(value, LengthForm::kDecimalInch, 99) == "151.37500\"");
  CHECK(printed(value, LengthForm::kMm, 0) == "3845 mm");
  CHECK(printed(value, LengthForm::kMm, 3) == "3844.9 mm");
  CHECK(printed(Length::mm(7200), LengthForm::kMm, 1) == "7200 mm");
  CHECK(printed(Length{7200 * Length::kPerMm + Length::kPerMm / 25}, LengthForm::kMm, 1) == "7200 mm");
  CHECK(printed(value, LengthForm::kMetre, 3) == "3.845 m");
  CHECK(printed(Length::inches(-1, 1000), LengthForm::kDecimalInch, 3) == "-0.001\"");
}

TEST_CASE("rounding shows when it moved the value by more than a quarter division", "[print]") {
  const std::int64_t sixteenth = Length::kPerInch / 16;
  const auto rounded = [](std::int64_t count) {
    return print_length(Length{count}, {LengthForm::kFeetInches, 16, 0}, Marks::kAscii).rounded;
  };
  CHECK_FALSE(rounded(5 * sixteenth));
  CHECK_FALSE(rounded(5 * sixteenth + sixteenth / 4));
  CHECK(rounded(5 * sixteenth + sixteenth / 4 + 1));
  CHECK(rounded(5 * sixteenth + sixteenth / 2));
  CHECK(rounded(-5 * sixteenth - sixteenth / 2));
  CHECK_FALSE(print_length(Length::inches(1, 4000), {LengthForm::kDecimalInch, 16, 3}, Marks::kAscii).rounded);
  CHECK(print_length(Length::inches(1, 3000), {LengthForm::kDecimalInch, 16, 3}, Marks::kAscii).rounded);
}

TEST_CASE("the largest counts print too", "[print]") {
  CHECK(feet(Length{std::numeric_limits<std::int64_t>::min()}, 64) == "-3782550868' 1-19/32\"");
  CHECK(printed(Length{std::numeric_limits<std::int64_t>::max()}, LengthForm::kMm) == "1152921504607 mm");
}

TEST_CASE("degrees", "[print]") {
  CHECK(print_degrees(Angle::degrees(45), 0, Marks::kScreen) == "45°");
  CHECK(print_degrees(Angle::from_degrees(39.806), 1, Marks::kScreen) == "39.8°");
  CHECK(print_degrees(Angle::from_degrees(39.85), 1, Marks::kAscii) == "39.9");
  CHECK(print_degrees(Angle::from_degrees(-0.04), 1, Marks::kScreen) == "0.0°");
  CHECK(print_degrees(Angle::from_degrees(-5.25), 1, Marks::kScreen) == "−5.3°");
}

TEST_CASE("a slope prints as it was said", "[print]") {
  const auto said = [](std::string_view text, Marks marks = Marks::kAscii) {
    return print_slope(*parse_slope(text, BareSlope::kIn12), marks);
  };
  CHECK(said("10 in 12") == "10:12");
  CHECK(said("7 1/2 in 12", Marks::kScreen) == "7 1⁄2:12");
  CHECK(said("8.33/12") == "8.33:12");
  CHECK(said("3m/4m") == "3000 mm:4000 mm");
  CHECK(said("39.8 deg", Marks::kScreen) == "39.8°");
  CHECK(said("39° 48′", Marks::kScreen) == "39.8°");
  CHECK(said("83%", Marks::kScreen) == "83 %");
  CHECK(said("833 mm / m") == "833 mm/m");
}

TEST_CASE("fixed decimals: the double's exact value, half up", "[print]") {
  CHECK(print_fixed(0.125, 2) == "0.13");
  CHECK(print_fixed(-0.125, 2) == "-0.13");
  CHECK(print_fixed(2.5, 0) == "3");
  CHECK(print_fixed(2.675, 2) == "2.67");  // the double is 2.67499999999999982236431605997495353221893310546875
  CHECK(print_fixed(-0.0004, 3) == "0.000");
  CHECK(print_fixed(-0.0, 1) == "0.0");
  CHECK(print_fixed(9.9996, 3) == "10.000");
  CHECK(print_fixed(1e22, 0) == "10000000000000000000000");
  CHECK(print_fixed(5e-324, 3) == "0.000");
  CHECK(print_fixed(std::numeric_limits<double>::infinity(), 3) == "null");
  CHECK(print_fixed(std::numeric_limits<double>::quiet_NaN(), 3) == "null");
}

// Source: NIST SP 811, appendix B.8: an inch is exactly 25.4 mm; arctan 9/12 = 36.87°, arctan 12/12 = 45°.
TEST_CASE("what was printed is said in the other units", "[print]") {
  const auto [printed, other] = GENERATE(table<std::string_view, std::string_view>({
      {"4′ 7 3⁄8″", "1406.5 mm"},  // 55.375 × 25.4 = 1406.525
      {"10′ 0″", "3048 mm"},
      {"≈ 9′ 7″", "≈ 2921 mm"},
      {"151 3⁄8″", "3844.9 mm"},   // 3844.925
      {"1406.5 mm", "4′ 7 3⁄8″"},  // less than a quarter of a sixteenth off
      {"3.048 m", "10′ 0″"},
      {"36.87°", "≈ 9:12"},
      {"45°", "≈ 12:12"},
      {"0°", "0:12"},
  }));
  CAPTURE(printed);
  CHECK(in_other_units(printed).value_or("") == other);
  for (const std::string_view neither : {"", "38", "9:12", "90°", "1207 lb", "P-A1", "≈ ", "°", "″", " mm", "4′ x″"})
    CHECK_FALSE(in_other_units(neither));
}
