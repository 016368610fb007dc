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

std::string hex_of(std::string_view bytes) {
  std::string out;
  out.reserve(bytes.size() * 2);
  for (const char c : bytes) put_hex(out, static_cast<unsigned char>(c), 2);
  return out;
}

std::optional<std::string> bytes_of_hex(std::string_view digits) {
  if (digits.size() % 2 != 0) return std::nullopt;
  std::string out;
  out.reserve(digits.size() / 2);
  for (std::size_t i = 0; i < digits.size(); i += 2) {
    const auto byte = read_hex(digits.substr(i, 2), 2);
    if (!byte) return std::nullopt;
    out += static_cast<char>(*byte);
  }
  return out;
}

}  // namespace bentbook
