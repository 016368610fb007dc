#include "worker/work.h"

namespace bentbook::page {

Result<std::string> run_work(std::string_view request, const Progress& progress) { return run_task(request, progress); }

}  // namespace bentbook::page
