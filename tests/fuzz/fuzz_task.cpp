#include "answers/raise_task.h"
#include "answers/task.h"
#include "fuzz.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto done = run_task(fuzz::text_of(data, size), [](int) { return true; });
  if (!done)
    fuzz::hold(!done.error().where.empty());
  else if (!read_found_order(*done))
    fuzz::hold(done->ends_with("</svg>\n"));
  return 0;
}
