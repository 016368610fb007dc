#include "fuzz.h"
#include "tasks/raising_task.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const auto order = read_order_check(text);
  const auto step = read_step_explained(text);
  const auto found = read_found_order(text);
  fuzz::hold(order || order.error().where == "answer");
  fuzz::hold(step || step.error().where == "answer");
  fuzz::hold(found || found.error().where == "answer");
  return 0;
}
