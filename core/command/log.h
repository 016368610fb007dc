#pragma once
/// bentbook log, bentbook steps: the crew's logs and the steps of one timber on the command line.

#include "command/book.h"

namespace bentbook {

/// `args`: the words after "log" or "steps". What each takes stands in native-app/README.md.
[[nodiscard]] CommandOutput log_command(std::span<const std::string_view> args, const Files& files);
[[nodiscard]] CommandOutput steps_command(std::span<const std::string_view> args, const Files& files);

}  // namespace bentbook
