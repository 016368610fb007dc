#include <catch_amalgamated.hpp>
#include <string>

#include "measure/parse.h"
#include "measure/unit.h"

using namespace bentbook;

namespace {

/// What stands in the book after an entry, shown again as it was typed.
std::string shown_again(const std::string& entry, KeptIn kept, LengthForm form) {
  const EntryStep step = entry_step(kept, form);
  double value = kept_of(*parse_decimal(entry, step.decimals), step);
  if (kept == KeptIn::kMph) value = static_cast<double>(steps_of(value, {}));  // whole mph are kept
  return steps_text(steps_of(value, step), step);
}

}  // namespace

// NIST SP 811, appendix B: 1 lbf/ft² = 47.880 26 Pa; 1 mi/h = 0.447 04 m/s, exactly.
TEST_CASE("loads and wind go over into metric units by their published factors", "[unit]") {
  const EntryStep kpa = entry_step(KeptIn::kPsf, LengthForm::kMm), ms = entry_step(KeptIn::kMph, LengthForm::kMm);
  CHECK(kept_of(4788, kpa) == Catch::Approx(47.88 / 0.04788026).epsilon(1e-7));
  CHECK(kept_of(44'704, ms) == Catch::Approx(100'000).epsilon(1e-14));
  CHECK(steps_text(steps_of(30, kpa), kpa) == "1.44");
  CHECK(steps_text(steps_of(25, ms), ms) == "11");
  CHECK(kept_in("frame.load_psf") == KeptIn::kPsf);
  CHECK(kept_in("raising.loads.wind_mph") == KeptIn::kMph);
  CHECK(kept_in("moisture") == KeptIn::kPlain);
}

TEST_CASE("every load and every wind that can be entered is shown as it was entered", "[unit]") {
  for (const LengthForm form : {LengthForm::kFeetInches, LengthForm::kMm, LengthForm::kMetre}) {
    for (const auto& [kept, most] : {std::pair{KeptIn::kPsf, 1000.0}, std::pair{KeptIn::kMph, 200.0}}) {
      const EntryStep step = entry_step(kept, form);
      for (std::int64_t n = 0; kept_of(n, step) <= most; ++n) {
        const std::string entry = steps_text(n, step), again = shown_again(entry, kept, form);
        if (again != entry) FAIL(entry << " comes back as " << again);
      }
    }
  }
}

TEST_CASE("counts of hundredths are read exactly, and nothing finer", "[unit]") {
  CHECK(*parse_decimal("1.5", 2) == 150);
  CHECK(*parse_decimal("0,07", 2) == 7);
  CHECK(*parse_decimal("47.880", 2) == 4788);
  CHECK(parse_decimal("1.437", 2).error().code == ErrorCode::kUnexpected);
  CHECK(parse_decimal("-1.4", 2).error().code == ErrorCode::kNegative);
  CHECK(parse_decimal("10000.01", 2).error().code == ErrorCode::kTooLarge);
  CHECK(parse_decimal("1.0", 0).error().code == ErrorCode::kUnexpected);
}
