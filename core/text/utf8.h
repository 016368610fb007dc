#pragma once
/// Text as UTF-8, a character at a time. Source: SOURCES.md, "UTF-8".

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace bentbook {

/// Bytes of the character that starts at `i`; 0 where none does.
[[nodiscard]] std::size_t character_at(std::string_view text, std::size_t i);
/// Whether all of it is UTF-8.
[[nodiscard]] bool is_utf8(std::string_view text);
/// Whether it is UTF-8 without control characters (U+0000 to U+001F, U+007F to U+009F): what a mark may hold.
[[nodiscard]] bool is_text(std::string_view text);

// The others look at nothing but which bytes start a character.

[[nodiscard]] std::size_t count_characters(std::string_view text);
/// Where the character at `i` ends.
[[nodiscard]] std::size_t end_of_character(std::string_view text, std::size_t i);
void drop_last_character(std::string& text);

/// A code point's bytes; none for one that no text may hold (surrogates, past U+10FFFF).
[[nodiscard]] std::string utf8(std::uint32_t code);
/// The code point of one character.
[[nodiscard]] std::uint32_t code_point(std::string_view character);

}  // namespace bentbook
