#pragma once
/// bentbook stock: what to order for a book or for a list of pieces, and what comes out of which stick.

#include "command/book.h"

namespace bentbook {

/// `args`: the words after "stock". What each takes stands in native-app/README.md.
[[nodiscard]] CommandOutput stock_command(std::span<const std::string_view> args, const Files& files);

}  // namespace bentbook
