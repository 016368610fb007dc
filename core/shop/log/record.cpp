#include "shop/log/record.h"

#include <algorithm>
#include <charconv>

#include "text/crc32.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr std::uint64_t kMost = std::uint64_t{1} << 53;

std::vector<std::string_view> split(std::string_view text, char between) {
  std::vector<std::string_view> parts;
  for (std::size_t from = 0;;) {
    const std::size_t to = text.find(between, from);
    parts.push_back(text.substr(from, to == std::string_view::npos ? to : to - from));
    if (to == std::string_view::npos) return parts;
    from = to + 1;
  }
}

}  // namespace

void put_decimal(std::string& out, std::uint64_t value) {
  char digits[20];
  const auto end = std::to_chars(digits, digits + sizeof digits, value).ptr;
  out.append(digits, end);
}

std::optional<std::uint64_t> read_decimal(std::string_view text) {
  if (text.empty() || text.size() > 16 || (text[0] == '0' && text.size() > 1)) return std::nullopt;
  std::uint64_t value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = 10 * value + static_cast<std::uint64_t>(c - '0');
  }
  return value <= kMost ? std::optional(value) : std::nullopt;
}

std::optional<std::int64_t> read_signed(std::string_view text) {
  const bool minus = text.starts_with('-');
  const auto size = read_decimal(minus ? text.substr(1) : text);
  if (!size || (minus && *size == 0)) return std::nullopt;
  return minus ? -static_cast<std::int64_t>(*size) : static_cast<std::int64_t>(*size);
}

std::vector<std::string_view> fields_of(std::string_view line) { return split(line, '\t'); }
std::vector<std::string_view> words_of(std::string_view text) { return split(text, ' '); }

std::optional<std::string_view> take_line(std::string_view& rest) {
  const std::size_t end = rest.find('\n');
  if (end == std::string_view::npos) return std::nullopt;
  const std::string_view line = rest.substr(0, end);
  rest.remove_prefix(end + 1);
  return line;
}

void put_head(std::string& out, const FileHead& head, std::string_view book) {
  out += head.words;
  put_decimal(out, head.version);
  out += '\t';
  out += book;
  out += '\n';
}

Result<std::string> read_head(std::string_view line, const FileHead& head) {
  if (!line.starts_with(head.words)) return fail(ErrorCode::kSyntax, head.where, 0);
  const auto fields = fields_of(line.substr(head.words.size()));
  const auto version = read_decimal(fields[0]);
  if (!version || *version < 1) return fail(ErrorCode::kSyntax, head.where, 0);
  if (*version > head.version)
    return fail(ErrorCode::kNewerVersion, head.where, 0, static_cast<std::int64_t>(*version));
  if (fields.size() != 2 || !is_book_id(fields[1])) return fail(ErrorCode::kSyntax, head.where, 0);
  return std::string(fields[1]);
}

bool is_book_id(std::string_view text) {
  return text.size() <= 64 && std::all_of(text.begin(), text.end(),
                                          [](char ch) { return (ch >= '0' && ch <= '9') || (ch >= 'a' && ch <= 'z'); });
}

void put_end(std::string& out, std::uint64_t lines) {
  const std::uint32_t sum = crc32(out);
  out += "end\t";
  put_decimal(out, lines);
  out += '\t';
  put_hex(out, sum, 8);
  out += '\n';
}

std::optional<Body> body_of(std::string_view bytes, BodyTrouble& trouble) {
  trouble.at = static_cast<std::int64_t>(bytes.size());
  if (!bytes.ends_with('\n')) return std::nullopt;
  const std::size_t before = bytes.substr(0, bytes.size() - 1).rfind('\n');
  if (before == std::string_view::npos) return std::nullopt;
  const std::string_view above = bytes.substr(0, before + 1);
  const auto last = fields_of(bytes.substr(above.size(), bytes.size() - above.size() - 1));
  trouble.at = static_cast<std::int64_t>(above.size());
  if (last.size() != 3 || last[0] != "end") return std::nullopt;
  const auto count = read_decimal(last[1]);
  const auto sum = read_hex(last[2], 8);
  if (!count || !sum) return std::nullopt;
  trouble.at = 0;
  if (*sum != crc32(above)) return std::nullopt;
  Body body{{}, above, *count};
  body.head = *take_line(body.lines);
  return body;
}

}  // namespace bentbook
