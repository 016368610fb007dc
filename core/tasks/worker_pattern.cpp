#include "tasks/worker_pattern.h"

#include "tasks/pattern_task.h"
#include "tasks/request_fields.h"
#include "tasks/worker_answer.h"

namespace bentbook {

std::string answer_pattern(std::string_view request, const Progress& progress) {
  json::FlatReader reader(request, "task");
  constexpr int kPattern = static_cast<int>(TaskKind::kPattern);
  int kind = kPattern;
  PatternRequest asked;
  reader.integer("kind", kind, kPattern, kPattern);
  describe(reader, asked);
  if (auto ok = reader.end(); !ok) return write_answer<PatternSheet>(tl::unexpected(ok.error()));
  return write_answer(run_pattern(asked, progress));
}

}  // namespace bentbook
