#pragma once
/// Inside the command line: one function a command. Each returns what goes to stdout.

#include "command/args.h"

namespace bentbook {

[[nodiscard]] Result<std::string> angle_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> rafter_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> length_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> mitre_command(std::span<const std::string_view> words);
[[nodiscard]] Result<std::string> flip_command(std::span<const std::string_view> words);

}  // namespace bentbook
