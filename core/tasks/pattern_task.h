#pragma once
/// The pattern of a rafter, drawn off the frame.

#include "tasks/task.h"

namespace bentbook {

/// An SVG file, millimetre-true. Errors: those of solve_rafters, and kEmpty ("cancelled") when `progress` said stop.
[[nodiscard]] Result<PatternSheet> run_pattern(const PatternRequest& request, const Progress& progress);

}  // namespace bentbook
