#include "tasks/worker_raising.h"
#include "worker/work.h"

namespace bentbook::page {

std::string run_work(std::string_view request, std::string_view frame, const Progress& progress) {
  static RaisingWorker worker;  // what one request has found out helps the next
  return worker.answer(request, frame, progress);
}

}  // namespace bentbook::page
