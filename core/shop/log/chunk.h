#pragma once
/// Bytes cut into short texts for a row of QR codes, read back in any order and over any time; and the text of the code
/// on a timber's label. All of it in the 45 signs that a QR code packs tightest (its alphanumeric mode).
/// Source: SOURCES.md, "QR codes".
///
///   BB1L/SSSSSSSS/n/of/CCCCCCCC/data   SSSSSSSS checksum of all bytes, n of "of" pieces, CCCCCCCC checksum of the text
///                                      before it and of the piece's bytes, data in Base45
///   BB1T/BOOK/MARK                     the book's id in capitals; of the mark all but A-Z 0-9 . - as %XX

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"

namespace bentbook {

/// Source: SOURCES.md, "Base45".
[[nodiscard]] std::string base45(std::string_view bytes);
/// kSyntax ("code", `at`).
[[nodiscard]] Result<std::string> read_base45(std::string_view text);

inline constexpr int kMostChunks = 999;
inline constexpr std::size_t kMostChunkBytes = 2000;
/// About what a phone's camera takes from another's screen at arm's length: a code of 81 modules.
/// Source: SOURCES.md, "size of a code".
inline constexpr std::size_t kChunkBytes = 500;

/// Errors: kEmpty ("code"), kTooLarge ("code", limit: most bytes) where it would be more than kMostChunks.
[[nodiscard]] Result<std::vector<std::string>> make_chunks(std::string_view bytes, std::size_t each = kChunkBytes);

/// What has been read so far.
struct Chunks {
  std::uint32_t set = 0;
  int total = 0;  ///< 0: nothing yet
  std::vector<std::string> parts;
  std::vector<bool> have;
  [[nodiscard]] int count() const;
  [[nodiscard]] bool complete() const { return total > 0 && count() == total; }
};

enum class Taken : std::uint8_t { kNew, kKnown };
/// Errors leave `chunks` as they are: kSyntax ("code"): no such piece, or a damaged one; kConflict ("code"): a piece of
/// another set.
[[nodiscard]] Result<Taken> take_chunk(Chunks& chunks, std::string_view text);
/// The same where pieces of several sets come by: each goes to its own, which is returned; a stray code costs no piece.
/// Of kMostSets the one with the fewest pieces gives way to a new one. kSyntax ("code"), kConflict ("code") as above.
inline constexpr std::size_t kMostSets = 4;
[[nodiscard]] Result<Chunks*> take_chunk(std::vector<Chunks>& sets, std::string_view text);
/// kMissing ("code", limit: number of the first that lacks); kSyntax ("code"): pieces that do not make the whole.
[[nodiscard]] Result<std::string> joined(const Chunks& chunks);
/// The texts of what was taken, to be kept and taken again later.
[[nodiscard]] std::vector<std::string> chunk_texts(const Chunks& chunks);

struct TimberLabel {
  std::string book, mark;
  friend bool operator==(const TimberLabel&, const TimberLabel&) = default;
};
[[nodiscard]] std::string label_text(const TimberLabel& label);
/// kSyntax ("code").
[[nodiscard]] Result<TimberLabel> read_label(std::string_view text);

}  // namespace bentbook
