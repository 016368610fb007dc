#include "fuzz.h"
#include "tasks/border.h"
#include "tasks/worker_raising.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  for (const TaskKind kind : {TaskKind::kCheck, TaskKind::kExplain, TaskKind::kSearch}) (void)read_answer(kind, text);
  if (const auto frame = read_frame(text)) fuzz::hold(read_frame(write_frame(*frame)).has_value());
  return 0;
}
