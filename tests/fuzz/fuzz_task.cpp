#include "fuzz.h"
#include "tasks/border.h"
#include "tasks/worker_pattern.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string answer = answer_pattern(fuzz::text_of(data, size), [](int) { return true; });
  const auto read = read_answer(TaskKind::kPattern, answer);
  if (read)
    fuzz::hold(std::get<PatternSheet>(*read).svg.ends_with("</svg>\n"));
  else
    fuzz::hold(!read.error().where.empty());
  return 0;
}
