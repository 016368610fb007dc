#pragma once
/// bentbook angle: slope, saw settings, triangle.

#include <span>
#include <string>
#include <string_view>

#include "numeric/result.h"

namespace bentbook {

/// `words`: those after "angle". What goes to stdout.
[[nodiscard]] Result<std::string> angle_command(std::span<const std::string_view> words);

}  // namespace bentbook
