#include "text/utf8.h"

namespace bentbook {
namespace {

constexpr std::uint32_t kFirstSurrogate = 0xD800, kLastSurrogate = 0xDFFF, kLastCode = 0x10FFFF;

std::uint32_t byte_at(std::string_view text, std::size_t i) { return static_cast<unsigned char>(text[i]); }
bool goes_on(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

bool holds(std::uint32_t code) { return code <= kLastCode && (code < kFirstSurrogate || code > kLastSurrogate); }

/// How many bytes the first one says that there are.
std::size_t size_by(std::uint32_t first) {
  return first < 0x80 ? 1 : first < 0xC2 ? 0 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : first < 0xF5 ? 4 : 0;
}

bool controls(std::uint32_t code) { return code < 0x20 || (code >= 0x7F && code < 0xA0); }

}  // namespace

std::size_t character_at(std::string_view text, std::size_t i) {
  const std::size_t size = size_by(byte_at(text, i));
  if (size == 0 || i + size > text.size()) return 0;
  for (std::size_t k = 1; k < size; ++k)
    if (!goes_on(text[i + k])) return 0;
  // One that fewer bytes could spell is none.
  constexpr std::uint32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
  const std::uint32_t code = code_point(text.substr(i, size));
  return code >= kLeast[size] && holds(code) ? size : 0;
}

bool is_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = character_at(text, i);
    if (size == 0) return false;
    i += size;
  }
  return true;
}

bool is_text(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = character_at(text, i);
    if (size == 0 || controls(code_point(text.substr(i, size)))) return false;
    i += size;
  }
  return true;
}

std::size_t count_characters(std::string_view text) {
  std::size_t n = 0;
  for (const char c : text) n += goes_on(c) ? 0 : 1;
  return n;
}

std::size_t end_of_character(std::string_view text, std::size_t i) {
  if (i < text.size()) ++i;
  while (i < text.size() && goes_on(text[i])) ++i;
  return i;
}

void drop_last_character(std::string& text) {
  while (!text.empty() && goes_on(text.back())) text.pop_back();
  if (!text.empty()) text.pop_back();
}

std::string utf8(std::uint32_t code) {
  std::string out;
  const auto put = [&](std::uint32_t byte) { out.push_back(static_cast<char>(byte)); };
  if (!holds(code)) return out;
  if (code < 0x80) {
    put(code);
    return out;
  }
  const int more = code < 0x800 ? 1 : code < 0x10000 ? 2 : 3;
  constexpr std::uint32_t kFirst[] = {0, 0xC0, 0xE0, 0xF0};
  put(kFirst[more] | (code >> (6 * more)));
  for (int k = more - 1; k >= 0; --k) put(0x80 | ((code >> (6 * k)) & 0x3F));
  return out;
}

std::uint32_t code_point(std::string_view character) {
  if (character.empty()) return 0;
  const std::uint32_t first = byte_at(character, 0);
  if (first < 0x80) return first;
  std::uint32_t code = first & (first < 0xE0 ? 0x1F : first < 0xF0 ? 0x0F : 0x07);
  for (std::size_t k = 1; k < character.size(); ++k) code = (code << 6) | (byte_at(character, k) & 0x3F);
  return code;
}

}  // namespace bentbook
