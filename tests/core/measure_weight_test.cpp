#include <catch_amalgamated.hpp>

#include "measure/weight.h"

using namespace bentbook;

// NIST SP 811, appendix B: 1 lb = 0.453 592 37 kg, exactly.
TEST_CASE("a pound is 0.45359237 kg", "[weight]") {
  CHECK(Weight::pounds(100'000'000).count == Weight::kilograms(45'359'237).count);
}

TEST_CASE("weights print in the unit that goes with the lengths", "[weight]") {
  CHECK(print_weight(Weight::pounds(151), LengthForm::kFeetInches) == "151 lb");
  CHECK(print_weight(Weight::pounds(150), LengthForm::kMm) == "68 kg");  // 68.0389
  CHECK(print_weight({Weight::kPerPound / 2 + 1}, LengthForm::kInchFraction) == "1 lb");
  CHECK(print_weight({-Weight::kPerPound / 4}, LengthForm::kInchFraction) == "0 lb");
  CHECK(whole_units(Weight::pounds(50), WeightUnit::kKilogram) == 23);  // 22.68
  CHECK(Weight::from_lb(12.5).count == (Weight::pounds(25).count + 1) / 2);
  CHECK(Weight::from_lb(1e300).count == Weight::kLimit);
}
