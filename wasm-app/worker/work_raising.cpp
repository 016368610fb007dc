#include "tasks/raising_task.h"
#include "worker/work.h"

namespace bentbook::page {

Result<std::string> run_work(std::string_view request, const Progress& progress) {
  static RaisingTasks tasks;  // what one request has found out helps the next
  return tasks.run(request, progress);
}

}  // namespace bentbook::page
