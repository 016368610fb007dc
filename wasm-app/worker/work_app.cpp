#include "tasks/worker_pattern.h"
#include "worker/work.h"

namespace bentbook::page {

std::string run_work(std::string_view request, std::string_view, const Progress& progress) {
  return answer_pattern(request, progress);
}

}  // namespace bentbook::page
