#pragma once
/// bentbook verify: any file of Bentbook, what it is, whole or damaged and where.

#include <span>
#include <string_view>

#include "command/book.h"

namespace bentbook {

/// `args`: the words after "verify". Ends with 1 where the file is damaged, or this version cannot tell.
[[nodiscard]] CommandOutput verify_command(std::span<const std::string_view> args, const Files& files);

}  // namespace bentbook
