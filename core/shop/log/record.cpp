#include "shop/log/record.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace bentbook {
namespace {

constexpr std::uint64_t kMost = std::uint64_t{1} << 53;

constexpr std::array<std::array<std::uint32_t, 256>, 4> make_tables() {
  std::array<std::array<std::uint32_t, 256>, 4> tables{};
  for (std::uint32_t i = 0; i < 256; ++i) {
    std::uint32_t c = i;
    for (int bit = 0; bit < 8; ++bit) c = (c & 1) != 0 ? 0xEDB88320u ^ (c >> 1) : c >> 1;
    tables[0][i] = c;
  }
  for (std::size_t i = 0; i < 256; ++i)
    for (std::size_t t = 1; t < 4; ++t) tables[t][i] = (tables[t - 1][i] >> 8) ^ tables[0][tables[t - 1][i] & 255];
  return tables;
}
constexpr auto kTables = make_tables();

std::uint32_t byte_at(std::string_view text, std::size_t i) { return static_cast<unsigned char>(text[i]); }

/// Bytes of the UTF-8 character at i, 0 where there is none.
std::size_t character_at(std::string_view text, std::size_t i) {
  const std::uint32_t first = byte_at(text, i);
  if (first < 0x20 || first == 0x7F) return 0;
  if (first < 0x80) return 1;
  const std::size_t size = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC2 ? 2 : 0;
  if (size == 0 || first > 0xF4 || i + size > text.size()) return 0;
  std::uint32_t code = first & (0x7Fu >> size);
  for (std::size_t k = 1; k < size; ++k) {
    if ((byte_at(text, i + k) & 0xC0) != 0x80) return 0;
    code = (code << 6) | (byte_at(text, i + k) & 0x3F);
  }
  constexpr std::uint32_t kLeast[] = {0, 0, 0xA0, 0x800, 0x10000};  // U+0080 to U+009F are control characters
  if (code < kLeast[size] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF)) return 0;
  return size;
}

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

std::uint32_t crc32(std::string_view bytes, std::uint32_t before) {
  std::uint32_t c = ~before;
  std::size_t i = 0;
  for (; i + 4 <= bytes.size(); i += 4) {
    c ^= byte_at(bytes, i) | byte_at(bytes, i + 1) << 8 | byte_at(bytes, i + 2) << 16 | byte_at(bytes, i + 3) << 24;
    c = kTables[3][c & 255] ^ kTables[2][(c >> 8) & 255] ^ kTables[1][(c >> 16) & 255] ^ kTables[0][c >> 24];
  }
  for (; i < bytes.size(); ++i) c = kTables[0][(c ^ byte_at(bytes, i)) & 255] ^ (c >> 8);
  return ~c;
}

bool is_field_text(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = character_at(text, i);
    if (size == 0) return false;
    i += size;
  }
  return true;
}

void put_hex(std::string& out, std::uint64_t value, int digits) {
  for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4) out += "0123456789abcdef"[(value >> shift) & 15];
}

void put_decimal(std::string& out, std::uint64_t value) {
  char digits[20];
  const auto end = std::to_chars(digits, digits + sizeof digits, value).ptr;
  out.append(digits, end);
}

std::optional<std::uint64_t> read_hex(std::string_view text, int digits) {
  if (text.size() != static_cast<std::size_t>(digits)) return std::nullopt;
  std::uint64_t value = 0;
  for (const char c : text) {
    const bool digit = c >= '0' && c <= '9';
    if (!digit && !(c >= 'a' && c <= 'f')) return std::nullopt;
    value = (value << 4) | static_cast<std::uint64_t>(digit ? c - '0' : c - 'a' + 10);
  }
  return value;
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
