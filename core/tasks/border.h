#pragma once
/// The Worker's border on the page's side: tasks as bytes out, answers as bytes in. What crosses is JSON of plain
/// values (flat.h), with the frame apart, so that one frame is written once for many questions about it. The Worker's
/// side is worker_pattern.h and worker_raising.h, each linked into the module that does that work.

#include <optional>
#include <string>
#include <string_view>

#include "tasks/task.h"

namespace bentbook {

/// "search 00c3…": how the page's scripts call a task. They hand it back as it is.
[[nodiscard]] std::string task_name(const TaskId& id);
[[nodiscard]] std::optional<TaskId> read_task_name(std::string_view name);

/// The request without its frame.
[[nodiscard]] std::string write_request(const TaskRequest& request);
/// The frame that it is about; nullptr: about none.
[[nodiscard]] std::shared_ptr<const Frame> frame_of(const TaskRequest& request);
/// As far as the raising looks at it (frame_fields.h).
[[nodiscard]] std::string write_frame(const Frame& frame);

/// Errors: the Worker's own, and kSyntax ("answer").
[[nodiscard]] Result<TaskAnswer> read_answer(TaskKind kind, std::string_view bytes);

}  // namespace bentbook
