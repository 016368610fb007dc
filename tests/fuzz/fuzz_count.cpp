#include "fuzz.h"
#include "measure/parse.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto count = parse_count(fuzz::text_of(data, size));
  fuzz::hold_error_inside(count, size);
  if (count) fuzz::hold(*count >= 0 && *count <= 1'000'000);
  return 0;
}
