#pragma once
/// bentbook raise: an order of raising searched for, someone's order judged, the plan to pin on the wall.

#include <functional>

#include "command/book.h"

namespace bentbook {

/// Seconds that have passed since some moment: the core has no clock of its own.
using Seconds = std::function<double()>;

/// `args`: the words after "raise". What each takes stands in native-app/README.md. An order that is not good, or none
/// found, ends with 2.
[[nodiscard]] CommandOutput raise_command(std::span<const std::string_view> args, const Files& files,
                                          const Seconds& seconds);

}  // namespace bentbook
