#include "measure/tokens.h"

#include <optional>

namespace bentbook {
namespace {

struct Spelling {
  std::string_view text;
  TokenKind kind;
};

// The longer spelling stands before its own beginning.
constexpr Spelling kMarks[] = {
    {"''", TokenKind::kInch},
    {"\u2032\u2032", TokenKind::kInch},
    {"\u2019\u2019", TokenKind::kInch},
    {"'", TokenKind::kFoot},
    {"\u2032", TokenKind::kFoot},
    {"\u2019", TokenKind::kFoot},
    {"\u2018", TokenKind::kFoot},
    {"\u00b4", TokenKind::kFoot},
    {"\"", TokenKind::kInch},
    {"\u2033", TokenKind::kInch},
    {"\u201d", TokenKind::kInch},
    {"\u201c", TokenKind::kInch},
    {"\u00b0", TokenKind::kDegree},
    {"\u00ba", TokenKind::kDegree},
    {"%", TokenKind::kPercent},
    {"+", TokenKind::kPlus},
    {"-", TokenKind::kHyphen},
    {"\u2010", TokenKind::kHyphen},
    {"\u2011", TokenKind::kHyphen},
    {"\u2013", TokenKind::kHyphen},
    {"\u2212", TokenKind::kMinus},
    {"*", TokenKind::kTimes},
    {"\u00d7", TokenKind::kTimes},
    {"/", TokenKind::kSlash},
    {"\u2044", TokenKind::kSlash},
    {"\u2215", TokenKind::kSlash},
    {"\u00f7", TokenKind::kSlash},
    {":", TokenKind::kColon},
    {"(", TokenKind::kOpen},
    {")", TokenKind::kClose},
};

constexpr Spelling kWords[] = {
    {"ft", TokenKind::kFoot},        {"feet", TokenKind::kFoot},     {"foot", TokenKind::kFoot},
    {"pie", TokenKind::kFoot},       {"pies", TokenKind::kFoot},     {"in", TokenKind::kInch},
    {"inch", TokenKind::kInch},      {"inches", TokenKind::kInch},   {"pulg", TokenKind::kInch},
    {"pulgada", TokenKind::kInch},   {"pulgadas", TokenKind::kInch}, {"mm", TokenKind::kMm},
    {"cm", TokenKind::kCm},          {"m", TokenKind::kMetre},       {"deg", TokenKind::kDegree},
    {"degrees", TokenKind::kDegree}, {"grados", TokenKind::kDegree}, {"x", TokenKind::kTimes},
    {"en", TokenKind::kEnAs},
};

struct FractionGlyph {
  std::string_view text;
  std::int64_t num;
  std::int64_t den;
};

constexpr FractionGlyph kFractionGlyphs[] = {
    {"\u00bd", 1, 2}, {"\u00bc", 1, 4}, {"\u00be", 3, 4}, {"\u215b", 1, 8}, {"\u215c", 3, 8},
    {"\u215d", 5, 8}, {"\u215e", 7, 8}, {"\u2153", 1, 3}, {"\u2154", 2, 3},
};

constexpr std::string_view kBlanks[] = {" ", "\t", "\n", "\r", "\u00a0", "\u2009", "\u202f"};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool same_word(std::string_view typed, std::string_view known) {
  if (typed.size() != known.size()) return false;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    if (lower(typed[i]) != known[i]) return false;
  }
  return true;
}

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  Result<std::vector<Token>> run() {
    if (text_.size() > kLongestEntry) return fail(ErrorCode::kOverflow, {}, static_cast<std::int64_t>(kLongestEntry));
    std::vector<Token> tokens;
    for (;;) {
      Token token;
      token.blank_before = skip_blanks();
      token.at = offset();
      if (pos_ < text_.size()) {
        if (auto error = read(token)) return tl::unexpected<Error>(*error);
      }
      token.end = offset();
      tokens.push_back(token);
      if (token.kind == TokenKind::kEnd) break;
    }
    if (tokens.size() == 1) return fail(ErrorCode::kEmpty, {}, 0);
    return tokens;
  }

 private:
  using MaybeError = std::optional<Error>;

  std::int64_t offset() const { return static_cast<std::int64_t>(pos_); }
  bool digit_at(std::size_t i) const { return i < text_.size() && is_digit(text_[i]); }
  Error error_here(ErrorCode code) const { return Error{code, {}, offset(), 0}; }

  bool take(std::string_view spelling) {
    if (text_.substr(pos_, spelling.size()) != spelling) return false;
    pos_ += spelling.size();
    return true;
  }

  bool skip_blanks() {
    const std::size_t start = pos_;
    for (bool more = true; more;) {
      more = false;
      for (std::string_view blank : kBlanks) more = more || take(blank);
    }
    return pos_ > start;
  }

  MaybeError read(Token& token) {
    const char c = text_[pos_];
    if (is_digit(c) || ((c == '.' || c == ',') && digit_at(pos_ + 1))) return read_number(token);
    if (is_letter(c)) return read_word(token);
    for (const Spelling& mark : kMarks) {
      if (!take(mark.text)) continue;
      token.kind = mark.kind;
      return std::nullopt;
    }
    for (const FractionGlyph& glyph : kFractionGlyphs) {
      if (!take(glyph.text)) continue;
      token.kind = TokenKind::kFraction;
      token.value = Rational{glyph.num, glyph.den};
      return std::nullopt;
    }
    return error_here(ErrorCode::kUnexpected);
  }

  MaybeError read_word(Token& token) {
    const std::size_t start = pos_;
    while (pos_ < text_.size() && is_letter(text_[pos_])) ++pos_;
    for (const Spelling& word : kWords) {
      if (!same_word(text_.substr(start, pos_ - start), word.text)) continue;
      token.kind = word.kind;
      token.spelt = true;
      const bool abbreviated = pos_ < text_.size() && text_[pos_] == '.' && !digit_at(pos_ + 1);
      if (abbreviated && word.kind != TokenKind::kTimes) ++pos_;
      return std::nullopt;
    }
    pos_ = start;
    return error_here(ErrorCode::kUnknownUnit);
  }

  MaybeError read_number(Token& token) {
    const std::size_t start = pos_;
    Int128 digits = 0;
    Int128 scale = 1;
    token.kind = TokenKind::kNumber;
    token.whole = true;
    for (; pos_ < text_.size(); ++pos_) {
      const char c = text_[pos_];
      if (is_digit(c)) {
        // 37 digits fit a Rational.
        if (digits > kMostDigits || scale > kMostDigits) {
          pos_ = start;
          return error_here(ErrorCode::kOverflow);
        }
        digits = digits * 10 + (c - '0');
        if (!token.whole) scale *= 10;
      } else if ((c == '.' || c == ',') && token.whole && digit_at(pos_ + 1)) {
        if (c == ',' && could_part_thousands(start)) return error_here(ErrorCode::kUnexpected);
        token.whole = false;
      } else {
        break;
      }
    }
    token.value = *make_rational(digits, scale);
    return std::nullopt;
  }

  // One to three digits, not a lone 0, before the comma at pos_, and exactly three after it.
  bool could_part_thousands(std::size_t start) const {
    const std::size_t before = pos_ - start;
    if (before == 0 || before > 3 || text_[start] == '0') return false;
    std::size_t after = 0;
    while (digit_at(pos_ + 1 + after)) ++after;
    return after == 3;
  }

  static constexpr Int128 kMostDigits = Int128{1'000'000'000'000'000'000} * 1'000'000'000'000'000'000;

  std::string_view text_;
  std::size_t pos_ = 0;
};

}  // namespace

Result<std::vector<Token>> tokenize(std::string_view text) { return Scanner(text).run(); }

tl::unexpected<Error> unexpected_token(const Token& token) { return fail(ErrorCode::kUnexpected, {}, token.at); }

}  // namespace bentbook
