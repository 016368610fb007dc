#pragma once
/// The pattern's task on the Worker's side of the border (border.h).

#include <string>
#include <string_view>

#include "tasks/task.h"

namespace bentbook {

/// Bytes of write_request() in, bytes for read_answer() out. Errors in them: kSyntax ("task"), those of run_pattern.
[[nodiscard]] std::string answer_pattern(std::string_view request, const Progress& progress);

}  // namespace bentbook
