#pragma once
/// bentbook backup, restore: everything in one file. The core asks for no folder: the shell lends its hands.

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "command/book.h"
#include "shop/log/event.h"

namespace bentbook {

/// What is stored on this computer, by the keys of the app.
struct Folder {
  std::function<bool()> take_writing;                                           ///< false: a window writes
  std::function<std::optional<std::string>(std::string_view key)> read;         ///< "": nothing is there
  std::function<bool(std::string_view key, std::string_view bytes)> write;      ///< whole or not at all
  std::function<std::optional<std::string>(std::string_view log)> read_log;     ///< its events, a line each
  std::function<bool(std::string_view log, const std::vector<Event>&)> append;  ///< all of them or none
  std::function<std::int64_t()> wall_clock_ms;
  std::function<int(std::int64_t wall_ms)> clock_ahead_minutes;
  std::function<std::uint64_t()> random_bits;
};

/// `args`: the words after the command's own. What each takes stands in native-app/README.md.
[[nodiscard]] CommandOutput backup_command(std::span<const std::string_view> args, const Files& files,
                                           const Folder& folder);
[[nodiscard]] CommandOutput restore_command(std::span<const std::string_view> args, const Files& files,
                                            const Folder& folder);

}  // namespace bentbook
