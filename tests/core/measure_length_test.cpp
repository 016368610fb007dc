#include <catch_amalgamated.hpp>
#include <limits>
#include <string>

#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;

namespace {

Length in_64ths(std::int64_t n) { return Length::inches(n, 64); }

Length read(std::string_view text, BareUnit bare = BareUnit::kInch) {
  const auto length = parse_length(text, bare);
  INFO(text << (length ? "" : " is refused with code " + std::to_string(static_cast<int>(length.error().code))));
  REQUIRE(length);
  return *length;
}

std::string trouble(std::string_view text, BareUnit bare = BareUnit::kInch) {
  static const char* const kNames[] = {"empty",         "unexpected", "unknown unit", "unit mismatch",
                                       "division by 0", "overflow",   "unbalanced",   "too deep"};
  const auto length = parse_length(text, bare);
  if (length) return "read as " + std::to_string(length->count);
  return kNames[static_cast<int>(length.error().code)] + std::string(" at ") + std::to_string(length.error().at);
}

}  // namespace

// International yard and pound agreement, 1959 (NIST SP 811, appendix B): 1 in = 25.4 mm, 1 ft = 0.3048 m, exactly.
TEST_CASE("inches, feet and millimetres stand to each other as the 1959 agreement says", "[length]") {
  CHECK(Length::inches(10) == Length::mm(254));
  CHECK(Length::feet(10'000) == Length::mm(3'048'000));
  CHECK(read("1\"") == read("25.4mm"));
  CHECK(read("1'") == read("0.3048 m"));
  CHECK(read("1'") == read("30.48cm"));
}

TEST_CASE("every spelling of twelve feet seven and three eighths is one length", "[length]") {
  const Length expected = in_64ths((12 * 12 + 7) * 64 + 24);
  for (const char* text : {"12' 7-3/8\"",
                           "12-7-3/8",
                           "12 7 3/8",
                           "12'-7-3/8\"",
                           "12'7-3/8\"",
                           "12′ 7 3⁄8″",
                           "12’ 7 3/8”",
                           "12 ft 7 3/8 in",
                           "12 ft. 7 3/8 in.",
                           "12 FT 7 3/8 IN",
                           "  12'  7  3/8 \" ",
                           "12 pies 7 3/8 pulgadas",
                           "12' 7\" 3/8",
                           "12′7⅜″",
                           "12' 7.375\"",
                           "151.375",
                           "151 3/8\"",
                           "151-3/8\"",
                           "151⅜",
                           "1211/8",
                           "3844.925 mm",
                           "3.844925m",
                           "384.4925 cm",
                           "12'7 3/8''",
                           "12\u00a0ft 7\u202f3/8\u2009in",
                           "(12' 7 3/8\")",
                           "+12' 7 3/8",
                           "12' 7 24/64"}) {
    INFO(text);
    CHECK(read(text) == expected);
  }
}

TEST_CASE("a bare number takes the unit of its field and no other", "[length]") {
  CHECK(read("3200", BareUnit::kMm) == Length::mm(3200));
  CHECK(read("3200", BareUnit::kInch) == Length::inches(3200));
  CHECK(read("3.2", BareUnit::kMetre) == Length::mm(3200));
  CHECK(read("24", BareUnit::kFoot) == Length::feet(24));
  CHECK(read("7 3/8", BareUnit::kFoot) == Length::inches(177, 2));
  CHECK(read("3m", BareUnit::kInch) == Length::mm(3000));
  CHECK(read("3.2 m", BareUnit::kFoot) == Length::mm(3200));
  CHECK(read("12' 7", BareUnit::kMm) == Length::inches(151));
  CHECK(read("12-7-3/8", BareUnit::kMm) == in_64ths(151 * 64 + 24));
}

TEST_CASE("sums and products", "[length]") {
  CHECK(read("12' - 3 1/2\"") == Length::inches(281, 2));
  CHECK(read("3 * 16\"") == Length::inches(48));
  CHECK(read("3 × 16″") == Length::inches(48));
  CHECK(read("3x16") == Length::inches(48));
  CHECK(read("(25' - 8)/2") == Length::inches(146));
  CHECK(read("(25' - 8)/2", BareUnit::kFoot) == Length::inches(102));
  CHECK(read("12' 7-3/8 + 3 1/2") == Length::inches(1239, 8));
  CHECK(read("10 - 2*3") == Length::inches(4));
  CHECK(read("2*(3 + 4 1/2)") == Length::inches(15));
  CHECK(read("-(3 - 5)") == Length::inches(2));
  CHECK(read("24' ÷ 3 / 2") == Length::feet(4));
  CHECK(read("(24' / 16\") * 3\"") == Length::inches(54));
  CHECK(read("3 - -2") == Length::inches(5));
  CHECK(read("1/3 + 1/3 + 1/3") == Length::inches(1));  // exact between, rounded once at the end
  CHECK(read("10' / 3 * 3") == Length::feet(10));
}

TEST_CASE("a hyphen joins when it is glued and takes away when it has a blank", "[length]") {
  CHECK(read("12-7") == Length::inches(151));
  CHECK(read("12 - 7") == Length::inches(5));
  CHECK(read("12 -7") == Length::inches(5));
  CHECK(read("12- 7") == Length::inches(5));
  CHECK(read("12−7") == Length::inches(5));
  CHECK(read("12'-7\"") == Length::inches(151));
  CHECK(read("12' - 7\"") == Length::inches(137));
  CHECK(read("12'-3'") == Length::feet(9));
  CHECK(read("12'-1/2\"") == Length::inches(289, 2));
  CHECK(read("7\"-3\"") == Length::inches(4));
  CHECK(read("7/8-3/8") == Length::inches(1, 2));
  CHECK(read("7-3/8-1/4") == Length::inches(57, 8));
  CHECK(read("3.5-1.25") == Length::inches(9, 4));
  CHECK(read("10-12/3") == Length::inches(6));
  CHECK(read("3200-45", BareUnit::kMm) == Length::mm(3155));
  CHECK(read("3200 - 45", BareUnit::kMm) == Length::mm(3155));
  CHECK(trouble("24-16") == "unexpected at 2");
  CHECK(trouble("24 16") == "unexpected at 3");
  CHECK(trouble("3 200", BareUnit::kMm) == "unexpected at 2");
}

TEST_CASE("a slash makes a fraction when it is glued and divides when it has a blank", "[length]") {
  CHECK(read("3/8\"") == Length::inches(3, 8));
  CHECK(read("24/3/8") == Length::inches(1));
  CHECK(read("24' / 3/8") == Length::feet(64));
  CHECK(read("24'/3/8") == Length::feet(1));
  CHECK(read("12 / 4") == Length::inches(3));
  CHECK(trouble("12 / 4\"") == "unit mismatch at 3");
  CHECK(trouble("7 16/8") == "unexpected at 2");
  CHECK(trouble("12' 7/2") == "unexpected at 4");
}

TEST_CASE("a comma is a decimal mark unless it could part thousands", "[length]") {
  CHECK(read("3,2 m") == Length::mm(3200));
  CHECK(read("0,375") == Length::inches(3, 8));
  CHECK(read("1234,5", BareUnit::kMm) == Length{1234 * Length::kPerMm + Length::kPerMm / 2});
  CHECK(trouble("1,200") == "unexpected at 1");
  CHECK(trouble("151,375\"") == "unexpected at 3");
}

TEST_CASE("nonsense is refused at its byte", "[length]") {
  CHECK(trouble("") == "empty at 0");
  CHECK(trouble("  ") == "empty at 0");
  CHECK(trouble("12' +") == "unexpected at 5");
  CHECK(trouble("12 abc") == "unknown unit at 3");
  CHECK(trouble("1e5") == "unknown unit at 1");
  CHECK(trouble("12' 7\" 3") == "unexpected at 7");
  CHECK(trouble("(1 + 2") == "unbalanced at 0");
  CHECK(trouble("1 + 2)") == "unbalanced at 5");
  CHECK(trouble("()") == "unexpected at 1");
  CHECK(trouble("2' * 3'") == "unit mismatch at 3");
  CHECK(trouble("24' / 16\"") == "unit mismatch at 0");
  CHECK(trouble("24' / 16\" + 1\"") == "unit mismatch at 10");
  CHECK(trouble("5 / 0") == "division by 0 at 4");
  CHECK(trouble("5 / (3 - 3)") == "division by 0 at 4");
  CHECK(trouble("1/0\"") == "division by 0 at 2");
  CHECK(trouble("12.") == "unexpected at 2");
  CHECK(trouble("1.2.3") == "unexpected at 3");
  CHECK(trouble("12' \xff") == "unexpected at 4");
  CHECK(trouble(std::string_view("12\0", 3)) == "unexpected at 2");
  CHECK(trouble("12\xe2\x80") == "unexpected at 2");
  CHECK(trouble("(((((((((((((((((1)))))))))))))))))") == "too deep at 16");
}

TEST_CASE("what is too large is refused, and nothing overflows on the way", "[length]") {
  CHECK(read("10000 m") == Length{Length::kLimit});
  CHECK(trouble("10000.001 m") == "overflow at 0");
  CHECK(trouble("99999999999999999999999999999999999999999") == "overflow at 0");
  CHECK(trouble("1 + 0.00000000000000000000000000000000000000001") == "overflow at 4");
  CHECK(trouble("9999999999999999999 * 9999999999999999999 * 9999999999999999999") == "overflow at 20");
  CHECK(trouble(std::string(300, ' ')) == "overflow at 256");
  CHECK(trouble(std::string(200, '(')) == "too deep at 16");
}

TEST_CASE("an entry finer than the count is rounded once, half up", "[length]") {
  CHECK(read("0.0000000625 mm").count == 1);  // half a count
  CHECK(read("0.0000000624 mm").count == 0);
  CHECK(read("-0.0000000625 mm").count == -1);
  CHECK(read("1/3\"").count == 67'733'333);
}

TEST_CASE("from a computed value: nearest count, saturating", "[length]") {
  CHECK(Length::from_inches(151.375) == in_64ths(151 * 64 + 24));
  CHECK(Length::from_inches(-0.5) == Length::inches(-1, 2));
  CHECK(Length::from_inches(1e300).count == Length::kLimit);
  CHECK(Length::from_inches(-1e300).count == -Length::kLimit);
  CHECK(Length::from_inches(std::numeric_limits<double>::infinity()).count == Length::kLimit);
  CHECK(Length::from_inches(std::numeric_limits<double>::quiet_NaN()).count == 0);
}
