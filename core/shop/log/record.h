#pragma once
/// Lines of the shop's files: fields between tabs, a checksum in the last one. README.md has the formats.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"

namespace bentbook {

void put_decimal(std::string& out, std::uint64_t value);
/// Decimal digits with no sign and no zero in front, at most 2^53: the one way to write the number.
[[nodiscard]] std::optional<std::uint64_t> read_decimal(std::string_view text);
/// The same with a minus sign where it is needed.
[[nodiscard]] std::optional<std::int64_t> read_signed(std::string_view text);

/// What stands between the tabs.
[[nodiscard]] std::vector<std::string_view> fields_of(std::string_view line);
/// What stands between single blanks.
[[nodiscard]] std::vector<std::string_view> words_of(std::string_view text);

/// Takes the next line off `rest`, without its line feed; nothing where no whole line is left.
[[nodiscard]] std::optional<std::string_view> take_line(std::string_view& rest);

/// A file's first line: what it is, its version, the book that it belongs to.
struct FileHead {
  std::string_view words;
  std::uint64_t version = 1;
  const char* where;  ///< of its errors
};
void put_head(std::string& out, const FileHead& head, std::string_view book);
/// The book. kSyntax, kNewerVersion (`limit`: its version), both at 0.
[[nodiscard]] Result<std::string> read_head(std::string_view line, const FileHead& head);
/// Lower case letters and digits, at most 64, or nothing.
[[nodiscard]] bool is_book_id(std::string_view text);

/// "end", the number of lines before it, the checksum of all bytes before it.
void put_end(std::string& out, std::uint64_t lines);

/// The lines of a file between its first line and its end line, which is checked. `at`: offset of the trouble.
struct Body {
  std::string_view head, lines;
  std::uint64_t count = 0;
};
struct BodyTrouble {
  std::int64_t at = -1;
};
/// Nothing where the end line is missing, not the last one, or does not fit the bytes before it; `trouble` says where.
[[nodiscard]] std::optional<Body> body_of(std::string_view bytes, BodyTrouble& trouble);

}  // namespace bentbook
