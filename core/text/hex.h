#pragma once
/// Hexadecimal numbers of a fixed number of digits.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bentbook {

/// Which letters stand for ten to fifteen.
enum class HexCase : std::uint8_t { kLower, kUpper };

void put_hex(std::string& out, std::uint64_t value, int digits, HexCase letters = HexCase::kLower);
/// Exactly `digits` digits, with these letters and no others.
[[nodiscard]] std::optional<std::uint64_t> read_hex(std::string_view text, int digits,
                                                    HexCase letters = HexCase::kLower);

/// Bytes as two lower digits each, and back; nothing: these are no digits, or their count is odd.
[[nodiscard]] std::string hex_of(std::string_view bytes);
[[nodiscard]] std::optional<std::string> bytes_of_hex(std::string_view digits);

}  // namespace bentbook
