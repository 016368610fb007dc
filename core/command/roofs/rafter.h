#pragma once
/// bentbook rafter.

#include <span>
#include <string>
#include <string_view>

#include "numeric/result.h"

namespace bentbook {

/// `words`: those after "rafter". What goes to stdout.
[[nodiscard]] Result<std::string> rafter_command(std::span<const std::string_view> words);

}  // namespace bentbook
