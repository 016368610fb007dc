#pragma once
/// bentbook book: files of books on the command line. The core asks for no file: the shell lends its hands.

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "command/command.h"

namespace bentbook {

struct Files {
  std::function<std::optional<std::string>(std::string_view path)> read;     ///< nothing: it is not there
  std::function<bool(std::string_view path, std::string_view bytes)> write;  ///< whole or not at all
};

/// `args`: the words after "book". What each takes stands in native-app/README.md.
[[nodiscard]] CommandOutput book_command(std::span<const std::string_view> args, const Files& files);

}  // namespace bentbook
