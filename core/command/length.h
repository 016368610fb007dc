#pragma once
/// bentbook length, mitre and flip: a measure read back, two timbers that meet, a saw proved.

#include <span>
#include <string>
#include <string_view>

#include "numeric/result.h"

namespace bentbook {

/// `words`: those after the command's name. What goes to stdout.
[[nodiscard]] Result<std::string> length_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> mitre_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> flip_command(std::span<const std::string_view> words);

}  // namespace bentbook
