#pragma once
/// What a Worker's module can do.

#include <string>
#include <string_view>

#include "tasks/task.h"

namespace bentbook::page {

/// Defined once in each module that a Worker runs.
[[nodiscard]] Result<std::string> run_work(std::string_view request, const Progress& progress);

}  // namespace bentbook::page
