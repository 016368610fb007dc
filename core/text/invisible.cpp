#include "text/invisible.h"

#include <algorithm>

#include "text/hex.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

struct Span {
  std::uint32_t first, last;
};
constexpr Span kInvisible[] = {
    {0x00AD, 0x00AD}, {0x034F, 0x034F}, {0x061C, 0x061C},   {0x115F, 0x1160},   {0x17B4, 0x17B5},   {0x180B, 0x180F},
    {0x200B, 0x200F}, {0x2028, 0x202E}, {0x2060, 0x206F},   {0x3164, 0x3164},   {0xFE00, 0xFE0F},   {0xFEFF, 0xFEFF},
    {0xFFA0, 0xFFA0}, {0xFFF0, 0xFFFB}, {0x1BCA0, 0x1BCA3}, {0x1D173, 0x1D17A}, {0xE0000, 0xE0FFF},
};

bool is_invisible(std::uint32_t code) {
  return std::any_of(std::begin(kInvisible), std::end(kInvisible),
                     [&](Span span) { return code >= span.first && code <= span.last; });
}

}  // namespace

std::optional<std::uint32_t> invisible_in(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = character_at(text, i);
    const std::uint32_t code = size == 0 ? 0 : code_point(text.substr(i, size));
    if (is_invisible(code)) return code;
    i += size == 0 ? 1 : size;
  }
  return std::nullopt;
}

std::string code_name(std::uint32_t code) {
  std::string out = "U+";
  put_hex(out, code, code > 0xFFFF ? 5 : 4, HexCase::kUpper);
  return out;
}

std::string made_visible(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = std::max<std::size_t>(1, character_at(text, i));
    const std::string_view character = text.substr(i, size);
    if (const std::uint32_t code = code_point(character); is_invisible(code))
      out += '<' + code_name(code) + '>';
    else
      out += character;
    i += size;
  }
  return out;
}

}  // namespace bentbook
