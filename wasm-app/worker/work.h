#pragma once
/// What a Worker's module can do.

#include <string>
#include <string_view>

#include "tasks/task.h"

namespace bentbook::page {

/// Bytes of write_request() and write_frame() in, bytes for read_answer() out (tasks/border.h). Defined once in each
/// module that a Worker runs.
[[nodiscard]] std::string run_work(std::string_view request, std::string_view frame, const Progress& progress);

}  // namespace bentbook::page
