#pragma once
/// The pieces of an entry: numbers, marks, words and signs, whatever keyboard they were typed on.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/rational.h"
#include "numeric/result.h"

namespace bentbook {

enum class TokenKind : std::uint8_t {
  kNumber,    ///< digits, with or without a decimal part
  kFraction,  ///< one character that is a fraction: ½ ¼ ⅜ …
  kFoot,      ///< ' ′ ’ ft (in angles: minutes)
  kInch,      ///< " ″ ” '' in (in angles: seconds)
  kDegree,    ///< ° deg
  kPercent,
  kMm,
  kCm,
  kMetre,
  kPlus,
  kHyphen,  ///< - ‐ – : joins or takes away
  kMinus,   ///< − : always takes away
  kTimes,   ///< * × x
  kSlash,   ///< / ⁄ ∕ ÷
  kColon,
  kEnAs,  ///< "en", Spanish for the "in" of "10 in 12"
  kOpen,
  kClose,
  kEnd,
};

struct Token {
  TokenKind kind = TokenKind::kEnd;
  bool blank_before = false;
  bool whole = false;   ///< kNumber without a decimal part
  bool spelt = false;   ///< a word, not a mark
  std::int64_t at = 0;  ///< byte offset in the text
  std::int64_t end = 0;
  Rational value{};  ///< kNumber, kFraction
};

/// Longest entry read, in bytes. A longer one is kOverflow at this offset: no measure is that long.
inline constexpr std::size_t kLongestEntry = 256;

/// The text's tokens, closed by one kEnd. Errors: kEmpty (only blanks), kUnexpected, kUnknownUnit, kOverflow.
/// A comma is a decimal mark except where it could part thousands (1,200): that is kUnexpected at the comma, for
/// neither reading is guessed.
[[nodiscard]] Result<std::vector<Token>> tokenize(std::string_view text);

/// kUnexpected at this token.
[[nodiscard]] tl::unexpected<Error> unexpected_token(const Token& token);

}  // namespace bentbook
