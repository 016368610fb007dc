#include "fuzz.h"
#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  for (const BareUnit bare : {BareUnit::kInch, BareUnit::kFoot, BareUnit::kMm, BareUnit::kMetre}) {
    const auto length = parse_length(fuzz::text_of(data, size), bare);
    fuzz::hold_error_inside(length, size);
    if (!length) continue;
    fuzz::hold(length->count <= Length::kLimit && length->count >= -Length::kLimit);
    const Printed printed = print_length(*length, {LengthForm::kFeetInches, 64, 0}, Marks::kScreen);
    const auto again = parse_length(printed.text, bare);
    // One division past the limit is where rounding up can lead.
    fuzz::hold(again ? *again == printed.shown
                     : printed.shown.count > Length::kLimit || printed.shown.count < -Length::kLimit);
  }
  return 0;
}
