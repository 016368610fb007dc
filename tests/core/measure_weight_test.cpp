#include <catch_amalgamated.hpp>
#include <string>

#include "measure/weight.h"

using namespace bentbook;

namespace {

std::int64_t counts(std::string_view text, BareWeight bare = BareWeight::kPound) {
  const auto weight = parse_weight(text, bare);
  INFO(text);
  REQUIRE(weight);
  return weight->count;
}

std::string trouble(std::string_view text) {
  const auto weight = parse_weight(text, BareWeight::kPound);
  if (weight) return "read as " + std::to_string(weight->count);
  const auto& e = weight.error();
  const char* name = e.code == ErrorCode::kEmpty         ? "empty"
                     : e.code == ErrorCode::kUnexpected  ? "unexpected"
                     : e.code == ErrorCode::kUnknownUnit ? "unit"
                     : e.code == ErrorCode::kNegative    ? "negative"
                     : e.code == ErrorCode::kOverflow    ? "overflow"
                                                         : "other";
  return std::string(name) + " at " + std::to_string(e.at);
}

}  // namespace

// NIST SP 811, appendix B: 1 lb = 0.453 592 37 kg, exactly.
TEST_CASE("a pound is 0.45359237 kg", "[weight]") {
  CHECK(counts("1 lb") == counts("0.45359237 kg"));
  CHECK(counts("150") == counts("150 lb"));
  CHECK(counts("68", BareWeight::kKilogram) == counts("68kg"));
}

TEST_CASE("every spelling of a weight is one weight", "[weight]") {
  for (const std::string_view text :
       {"150 1/2 lb", "150.5lb", "150,5 lbs.", " 301/2 pounds ", "150½ LB", "150.5 libras"})
    CHECK(counts(text) == (Weight::pounds(301).count + 1) / 2);
  CHECK(counts("68.5 kilos") == 6'850'000'000);
}

TEST_CASE("what is no weight is refused where it goes wrong", "[weight]") {
  CHECK(trouble("") == "empty at 0");
  CHECK(trouble("  ") == "empty at 0");
  CHECK(trouble("lb") == "unexpected at 0");
  CHECK(trouble("12 stone") == "unit at 3");
  CHECK(trouble("2 tons") == "unit at 2");
  CHECK(trouble("-5 lb") == "negative at 0");
  CHECK(trouble("1e9 kg").find("read") == std::string::npos);
  CHECK(trouble("99999999999 kg") == "overflow at 0");
  CHECK(trouble("1,200 lb").find("unexpected") == 0);
  CHECK(trouble(std::string(300, '1')) == "overflow at 256");
}

TEST_CASE("weights print in the unit that goes with the lengths", "[weight]") {
  CHECK(print_weight(Weight::pounds(151), LengthForm::kFeetInches) == "151 lb");
  CHECK(print_weight(Weight::pounds(150), LengthForm::kMm) == "68 kg");  // 68.0389
  CHECK(print_weight(Weight::pounds(150), LengthForm::kMetre, 2) == "68.04 kg");
  CHECK(print_weight({Weight::kPerPound / 2 + 1}, LengthForm::kInchFraction) == "1 lb");
  CHECK(print_weight({-Weight::kPerPound / 4}, LengthForm::kInchFraction) == "0 lb");
  CHECK(print_weight_entry(Weight::kilograms(68), LengthForm::kFeetInches) == "68 kg");
  CHECK(print_weight_entry(Weight::pounds(50), LengthForm::kMm) == "50 lb");
  CHECK(Weight::from_lb(12.5).count == (Weight::pounds(25).count + 1) / 2);
  CHECK(Weight::from_lb(1e300).count == Weight::kLimit);
}
