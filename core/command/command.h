#pragma once
/// The command line's brain, the same on both targets: strings in, strings out. What each command takes and the JSON
/// keys it answers with are documented in native-app/README.md.

#include <span>
#include <string>
#include <string_view>

namespace bentbook {

struct CommandOutput {
  int exit_code = 0;  ///< 0, or 2 with a message in `err`; verify: 1 with what is wrong in it
  std::string out, err;
};

/// `args`: the words after the program's name ("rafter", "--span", "24'", …).
[[nodiscard]] CommandOutput run_command(std::span<const std::string_view> args);
/// Is this word a command (else the shell opens its window)?
[[nodiscard]] bool is_command(std::string_view word);

}  // namespace bentbook
