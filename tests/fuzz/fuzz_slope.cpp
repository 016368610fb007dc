#include "fuzz.h"
#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  for (const BareSlope bare : {BareSlope::kIn12, BareSlope::kDegrees, BareSlope::kPercent, BareSlope::kMmPerM}) {
    const auto slope = parse_slope(fuzz::text_of(data, size), bare);
    fuzz::hold_error_inside(slope, size);
    if (!slope) continue;
    fuzz::hold(slope->run.count > 0 && slope->rise.count >= 0);
    fuzz::hold(slope->deg() >= 0 && slope->deg() <= 90);
    const auto again = parse_slope(print_slope(*slope, Marks::kAscii), bare);
    // A side too small or fine for the print's decimals may round to nothing; the entry's form stays.
    fuzz::hold(again ? again->form == slope->form : again.error().code == ErrorCode::kDivisionByZero);
  }
  return 0;
}
