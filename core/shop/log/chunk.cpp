#include "shop/log/chunk.h"

#include <algorithm>
#include <optional>

#include "shop/log/event.h"
#include "shop/log/record.h"
#include "text/crc32.h"
#include "text/hex.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

constexpr std::string_view kSigns = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
constexpr std::string_view kPiece = "BB1L/", kLabel = "BB1T/";

/// Eight capital digits: what a code holds in the fewest bits.
void put_capitals(std::string& out, std::uint32_t value) { put_hex(out, value, 8, HexCase::kUpper); }
std::optional<std::uint64_t> read_capitals(std::string_view text) { return read_hex(text, 8, HexCase::kUpper); }

std::string chunk_text(std::uint32_t set, int number, int total, std::string_view bytes) {
  std::string out(kPiece);
  put_capitals(out, set);
  out += '/';
  put_decimal(out, static_cast<std::uint64_t>(number));
  out += '/';
  put_decimal(out, static_cast<std::uint64_t>(total));
  out += '/';
  put_capitals(out, crc32(bytes, crc32(out)));
  out += '/';
  out += base45(bytes);
  return out;
}

struct Piece {
  std::uint32_t set = 0;
  int number = 0, total = 0;
  std::string bytes;
};

/// Up to the next slash, taken off.
std::string_view take_field(std::string_view& rest) {
  const std::size_t end = std::min(rest.find('/'), rest.size());
  const std::string_view field = rest.substr(0, end);
  rest.remove_prefix(std::min(end + 1, rest.size()));
  return field;
}

Result<Piece> read_piece(std::string_view text) {
  if (!text.starts_with(kPiece)) return fail(ErrorCode::kSyntax, "code");
  std::string_view rest = text.substr(kPiece.size());
  const auto set = read_capitals(take_field(rest));
  const auto number = read_decimal(take_field(rest)), total = read_decimal(take_field(rest));
  const std::size_t head = text.size() - rest.size();
  const auto sum = read_capitals(take_field(rest));
  if (!set || !number || !total || !sum || *total < 1 || *total > kMostChunks || *number < 1 || *number > *total)
    return fail(ErrorCode::kSyntax, "code");
  auto bytes = read_base45(rest);
  if (!bytes) return tl::unexpected(bytes.error());
  if (bytes->empty() || bytes->size() > kMostChunkBytes || *sum != crc32(*bytes, crc32(text.substr(0, head))))
    return fail(ErrorCode::kSyntax, "code");
  return Piece{static_cast<std::uint32_t>(*set), static_cast<int>(*number), static_cast<int>(*total),
               *std::move(bytes)};
}

bool plain_in_label(char c) { return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' || c == '-'; }

}  // namespace

std::string base45(std::string_view bytes) {
  std::string out;
  out.reserve((bytes.size() + 1) / 2 * 3);
  const auto byte = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(bytes[i])); };
  for (std::size_t i = 0; i < bytes.size(); i += 2) {
    const bool pair = i + 1 < bytes.size();
    const unsigned n = pair ? 256 * byte(i) + byte(i + 1) : byte(i);
    out += kSigns[n % 45];
    out += kSigns[n / 45 % 45];
    if (pair) out += kSigns[n / (45 * 45)];
  }
  return out;
}

Result<std::string> read_base45(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); i += 3) {
    const std::size_t size = std::min<std::size_t>(3, text.size() - i);
    std::size_t n = 0;
    for (std::size_t k = size; k-- > 0;) {
      const std::size_t digit = kSigns.find(text[i + k]);
      if (digit == std::string_view::npos) return fail(ErrorCode::kSyntax, "code", static_cast<std::int64_t>(i + k));
      n = 45 * n + digit;
    }
    if (size == 1 || n > (size == 3 ? 0xFFFFu : 0xFFu))
      return fail(ErrorCode::kSyntax, "code", static_cast<std::int64_t>(i));
    if (size == 3) out += static_cast<char>(static_cast<unsigned char>(n >> 8));
    out += static_cast<char>(static_cast<unsigned char>(n & 0xFF));
  }
  return out;
}

Result<std::vector<std::string>> make_chunks(std::string_view bytes, std::size_t each) {
  each = std::clamp<std::size_t>(each, 16, kMostChunkBytes);
  if (bytes.empty()) return fail(ErrorCode::kEmpty, "code");
  const std::size_t most = each * kMostChunks;
  if (bytes.size() > most) return fail(ErrorCode::kTooLarge, "code", -1, static_cast<std::int64_t>(most));
  const int total = static_cast<int>((bytes.size() + each - 1) / each);
  std::vector<std::string> texts;
  texts.reserve(static_cast<std::size_t>(total));
  for (int i = 0; i < total; ++i)
    texts.push_back(chunk_text(crc32(bytes), i + 1, total, bytes.substr(static_cast<std::size_t>(i) * each, each)));
  return texts;
}

int Chunks::count() const { return static_cast<int>(std::count(have.begin(), have.end(), true)); }

Result<Taken> take_chunk(Chunks& chunks, std::string_view text) {
  auto piece = read_piece(text);
  if (!piece) return tl::unexpected(piece.error());
  if (chunks.total == 0) {
    chunks.set = piece->set;
    chunks.total = piece->total;
    chunks.parts.assign(static_cast<std::size_t>(piece->total), {});
    chunks.have.assign(static_cast<std::size_t>(piece->total), false);
  }
  if (chunks.set != piece->set || chunks.total != piece->total) return fail(ErrorCode::kConflict, "code");
  const auto at = static_cast<std::size_t>(piece->number - 1);
  if (chunks.have[at])
    return chunks.parts[at] == piece->bytes ? Result<Taken>(Taken::kKnown) : fail(ErrorCode::kConflict, "code");
  chunks.have[at] = true;
  chunks.parts[at] = std::move(piece->bytes);
  return Taken::kNew;
}

Result<Chunks*> take_chunk(std::vector<Chunks>& sets, std::string_view text) {
  Chunks own;
  if (const auto taken = take_chunk(own, text); !taken) return tl::unexpected(taken.error());
  const auto same = [&](const Chunks& set) { return set.set == own.set && set.total == own.total; };
  if (const auto found = std::find_if(sets.begin(), sets.end(), same); found != sets.end()) {
    if (const auto taken = take_chunk(*found, text); !taken) return tl::unexpected(taken.error());
    return &*found;
  }
  const auto fewer = [](const Chunks& a, const Chunks& b) { return a.count() < b.count(); };
  if (sets.size() >= kMostSets) sets.erase(std::min_element(sets.begin(), sets.end(), fewer));
  sets.push_back(std::move(own));
  return &sets.back();
}

Result<std::string> joined(const Chunks& chunks) {
  std::string all;
  for (std::size_t i = 0; i < chunks.parts.size(); ++i) {
    if (!chunks.have[i]) return fail(ErrorCode::kMissing, "code", -1, static_cast<std::int64_t>(i + 1));
    all += chunks.parts[i];
  }
  if (chunks.total == 0) return fail(ErrorCode::kMissing, "code", -1, 1);
  if (crc32(all) != chunks.set) return fail(ErrorCode::kSyntax, "code");
  return all;
}

std::vector<std::string> chunk_texts(const Chunks& chunks) {
  std::vector<std::string> texts;
  for (std::size_t i = 0; i < chunks.parts.size(); ++i)
    if (chunks.have[i]) texts.push_back(chunk_text(chunks.set, static_cast<int>(i + 1), chunks.total, chunks.parts[i]));
  return texts;
}

std::string label_text(const TimberLabel& label) {
  std::string out(kLabel);
  for (const char c : label.book) out += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  out += '/';
  for (const char c : label.mark) {
    if (plain_in_label(c)) {
      out += c;
      continue;
    }
    const auto byte = static_cast<unsigned char>(c);
    out += '%';
    out += kSigns[byte >> 4];
    out += kSigns[byte & 15];
  }
  return out;
}

Result<TimberLabel> read_label(std::string_view text) {
  if (!text.starts_with(kLabel)) return fail(ErrorCode::kSyntax, "code");
  std::string_view rest = text.substr(kLabel.size());
  TimberLabel label;
  for (const char c : take_field(rest)) label.book += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  for (std::size_t i = 0; i < rest.size(); ++i) {
    if (rest[i] != '%') {
      label.mark += rest[i];
      continue;
    }
    const std::size_t high = i + 1 < rest.size() ? kSigns.find(rest[i + 1]) : 16;
    const std::size_t low = i + 2 < rest.size() ? kSigns.find(rest[i + 2]) : 16;
    if (high > 15 || low > 15) return fail(ErrorCode::kSyntax, "code");
    label.mark += static_cast<char>(static_cast<unsigned char>(16 * high + low));
    i += 2;
  }
  // One way to write each: what would be written differently is none of ours.
  if (!is_book_id(label.book) || label.mark.empty() || label.mark.size() > kLongestMark || !is_text(label.mark) ||
      label_text(label) != text)
    return fail(ErrorCode::kSyntax, "code");
  return label;
}

}  // namespace bentbook
