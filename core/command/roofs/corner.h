#pragma once
/// bentbook corner: a hip or valley between two roofs.

#include <span>
#include <string>
#include <string_view>

#include "numeric/result.h"

namespace bentbook {

/// `words`: those after "corner". What goes to stdout.
[[nodiscard]] Result<std::string> corner_command(std::span<const std::string_view> words);

}  // namespace bentbook
