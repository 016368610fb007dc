#include "fuzz.h"
#include "measure/weight.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const BareWeight bare = (data[0] & 1) != 0 ? BareWeight::kKilogram : BareWeight::kPound;
  const auto weight = parse_weight(fuzz::text_of(data + 1, size - 1), bare);
  fuzz::hold_error_inside(weight, size - 1);
  if (!weight) return 0;
  fuzz::hold(weight->count >= 0 && weight->count <= Weight::kLimit);
  // Printed with three decimals it comes back within half of the last one.
  for (const LengthForm form : {LengthForm::kFeetInches, LengthForm::kMm}) {
    const auto again = parse_weight(print_weight(*weight, form, 3), bare);
    if (weight->count > Weight::kLimit - Weight::kPerKg) continue;
    fuzz::hold(again.has_value());
    const std::int64_t off = again->count - weight->count;
    fuzz::hold(off <= 50'001 && off >= -50'001);
  }
  return 0;
}
