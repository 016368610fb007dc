#include "text/hex.h"

namespace bentbook {
namespace {

constexpr std::string_view digits_of(HexCase letters) {
  return letters == HexCase::kLower ? "0123456789abcdef" : "0123456789ABCDEF";
}

}  // namespace

void put_hex(std::string& out, std::uint64_t value, int digits, HexCase letters) {
  for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4) out += digits_of(letters)[(value >> shift) & 15];
}

std::optional<std::uint64_t> read_hex(std::string_view text, int digits, HexCase letters) {
  if (text.size() != static_cast<std::size_t>(digits)) return std::nullopt;
  std::uint64_t value = 0;
  for (const char c : text) {
    const std::size_t digit = digits_of(letters).find(c);
    if (digit == std::string_view::npos) return std::nullopt;
    value = (value << 4) | digit;
  }
  return value;
}

}  // namespace bentbook
