#pragma once
/// bentbook roof: a book's roof of any plan, solved whole, and a book that begins with one.

#include "command/book.h"

namespace bentbook {

/// `args`: the words after "roof". What each takes stands in native-app/README.md.
[[nodiscard]] CommandOutput roof_command(std::span<const std::string_view> args, const Files& files);

}  // namespace bentbook
