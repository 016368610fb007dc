#include "fuzz.h"
#include "tasks/task.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto svg = run_task(fuzz::text_of(data, size), [](int) { return true; });
  if (svg)
    fuzz::hold(svg->ends_with("</svg>\n"));
  else
    fuzz::hold(!svg.error().where.empty());
  return 0;
}
