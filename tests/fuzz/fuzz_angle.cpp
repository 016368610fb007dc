#include "fuzz.h"
#include "measure/parse.h"
#include "measure/print.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto angle = parse_angle(fuzz::text_of(data, size));
  fuzz::hold_error_inside(angle, size);
  if (!angle) return 0;
  for (const Marks marks : {Marks::kScreen, Marks::kAscii}) {
    const auto again = parse_angle(print_degrees(*angle, 9, marks));
    fuzz::hold(again && *again == *angle);
  }
  return 0;
}
