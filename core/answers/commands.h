#pragma once
/// Inside the command line: one function a command. Each returns what goes to stdout.

#include "answers/args.h"

namespace bentbook {

[[nodiscard]] Result<std::string> angle_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> rafter_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> length_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> mitre_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> flip_command(std::span<const std::string_view> words);

/// "Name: value" and a line's end.
[[nodiscard]] inline std::string told(std::string_view name, std::string_view value) {
  std::string out(name);
  out += ": ";
  out += value;
  return out + "\n";
}

}  // namespace bentbook
