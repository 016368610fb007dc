#include "measure/parse.h"

#include <optional>
#include <vector>

#include "measure/expression.h"
#include "measure/tokens.h"

namespace bentbook {
namespace {

constexpr std::int64_t kMostNano = 360 * Angle::kPerDegree;

tl::unexpected<Error> overflow_at(std::int64_t at) { return fail(ErrorCode::kOverflow, {}, at); }

/// Minutes and seconds behind the degree mark at tokens[pos], in degrees.
Result<Rational> minutes_and_seconds(const std::vector<Token>& tokens, std::size_t pos) {
  struct Part {
    TokenKind mark;
    std::int64_t per_degree;
  };
  Rational total{};
  for (const Part& part : {Part{TokenKind::kFoot, 60}, Part{TokenKind::kInch, 3600}}) {
    const Token& number = tokens[pos];
    if (number.kind != TokenKind::kNumber || tokens[pos + 1].kind != part.mark) continue;
    if (number.value.num >= 60 * number.value.den) {
      return fail(ErrorCode::kTooLarge, {}, number.at, Angle::kPerDegree * 60 / part.per_degree);
    }
    const auto degrees = divide(number.value, Rational{part.per_degree, 1});
    const auto sum = degrees ? add(total, *degrees) : std::nullopt;
    if (!sum) return overflow_at(number.at);
    total = *sum;
    pos += 2;
  }
  if (tokens[pos].kind == TokenKind::kEnd) return total;
  // A number that has no mark yet: the trouble is what follows it.
  return unexpected_token(tokens[pos].kind == TokenKind::kNumber ? tokens[pos + 1] : tokens[pos]);
}

Result<Rational> degrees_of(std::string_view text, const std::vector<Token>& tokens) {
  std::size_t mark = 0;
  while (tokens[mark].kind != TokenKind::kDegree && tokens[mark].kind != TokenKind::kEnd) ++mark;
  if (mark == 0) return unexpected_token(tokens[0]);
  auto whole = parse_bare_number(text.substr(0, static_cast<std::size_t>(tokens[mark].at)));
  if (!whole || tokens[mark].kind == TokenKind::kEnd) return whole;
  auto rest = minutes_and_seconds(tokens, mark + 1);
  if (!rest) return rest;
  const bool negative = tokens[0].kind == TokenKind::kHyphen || tokens[0].kind == TokenKind::kMinus;
  const auto sum = add(*whole, negative ? negate(*rest) : *rest);
  if (!sum) return overflow_at(tokens[0].at);
  return *sum;
}

using Tokens = std::vector<Token>;

constexpr std::int64_t kQuarterTurn = 90 * Angle::kPerDegree;

Error moved(Error error, std::int64_t offset) {
  if (error.at >= 0) error.at += offset;
  return error;
}

/// Where the text parts into rise and run, or nothing when it is no ratio.
const Token* ratio_sign(const Tokens& tokens) {
  const Token* slash = nullptr;
  const Token* word = nullptr;
  for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
    const Token& token = tokens[i];
    if (token.kind == TokenKind::kColon) return &token;
    // "10 in 12", and of "10 in in 12" the second one
    const bool in = token.kind == TokenKind::kEnAs || (token.kind == TokenKind::kInch && token.spelt);
    const TokenKind next = tokens[i + 1].kind;
    if (in && (next == TokenKind::kNumber || next == TokenKind::kFraction)) word = &token;
    if (token.kind != TokenKind::kSlash) continue;
    // The slash of 7 1/2 or 7-1/2 belongs to the number.
    const bool number = i >= 2 && tokens[i - 1].kind == TokenKind::kNumber && !token.blank_before;
    const bool after_blank = number && tokens[i - 2].kind == TokenKind::kNumber;
    const bool after_hyphen = number && i >= 3 && tokens[i - 2].kind == TokenKind::kHyphen &&
                              tokens[i - 3].kind == TokenKind::kNumber && !tokens[i - 2].blank_before &&
                              !tokens[i - 1].blank_before;
    if (!after_blank && !after_hyphen) slash = &token;
  }
  return word != nullptr ? word : slash;
}

Result<Length> side(std::string_view text, std::int64_t offset) {
  auto length = parse_length(text, BareUnit::kInch);
  if (!length) {
    if (length.error().code == ErrorCode::kEmpty) return fail(ErrorCode::kUnexpected, {}, offset);
    return tl::unexpected<Error>(moved(length.error(), offset));
  }
  if (length->count < 0) return fail(ErrorCode::kNegative, {}, offset);
  return length;
}

Result<Slope> read_ratio(std::string_view text, const Token& sign) {
  const auto rise = side(text.substr(0, static_cast<std::size_t>(sign.at)), 0);
  if (!rise) return tl::unexpected<Error>(rise.error());
  const auto run = side(text.substr(static_cast<std::size_t>(sign.end)), sign.end);
  if (!run) return tl::unexpected<Error>(run.error());
  if (run->count == 0) return fail(ErrorCode::kDivisionByZero, {}, sign.end);
  return Slope::ratio(*rise, *run);
}

/// The rise on a run of `run`, from a number of `unit` counts each.
Result<Slope> from_number(const Rational& amount, SlopeForm form, std::int64_t unit, Length run) {
  if (amount.num < 0) return fail(ErrorCode::kNegative, {}, 0);
  const auto counts = multiply(amount, Rational{unit, 1});
  if (!counts || round_half_up(*counts) > Length::kLimit) return fail(ErrorCode::kOverflow, {}, 0, Length::kLimit);
  return Slope{form, Length{static_cast<std::int64_t>(round_half_up(*counts))}, run, {}};
}

Result<Slope> percent_slope(const Rational& amount) {
  return from_number(amount, SlopeForm::kPercent, Length::kPerInch, Length::inches(100));
}

Result<Slope> mm_per_m_slope(const Rational& amount) {
  return from_number(amount, SlopeForm::kMmPerM, Length::kPerMm, Length::mm(1000));
}

Result<Slope> angle_slope(std::string_view text) {
  const auto angle = parse_angle(text);
  const bool past_turns = !angle && angle.error().code == ErrorCode::kTooLarge && angle.error().limit == kMostNano;
  if (past_turns) return fail(ErrorCode::kSteep, {}, 0, kQuarterTurn);
  if (!angle) return tl::unexpected<Error>(angle.error());
  if (angle->nano_degrees < 0) return fail(ErrorCode::kNegative, {}, 0);
  if (angle->nano_degrees >= kQuarterTurn) return fail(ErrorCode::kSteep, {}, 0, kQuarterTurn);
  return Slope::of_angle(*angle);
}

Result<Slope> read_alone(std::string_view text, BareSlope bare) {
  const auto value = parse_expression(text, BareUnit::kInch);
  if (!value) return tl::unexpected<Error>(value.error());
  if (bare == BareSlope::kIn12) {
    const auto rise = side(text, 0);
    if (!rise) return tl::unexpected<Error>(rise.error());
    return Slope::in_12(*rise);
  }
  if (value->kind != ValueKind::kBare) return fail(ErrorCode::kUnitMismatch, {}, 0);
  if (bare == BareSlope::kDegrees) return angle_slope(text);
  return bare == BareSlope::kPercent ? percent_slope(value->amount) : mm_per_m_slope(value->amount);
}

/// Text before the ending that stands at `ending`.
std::string_view before(std::string_view text, const Token& ending) {
  return text.substr(0, static_cast<std::size_t>(ending.at));
}

Result<Slope> read_slope(std::string_view text, const Tokens& tokens, BareSlope bare) {
  const std::size_t count = tokens.size() - 1;  // without kEnd
  for (const Token& token : tokens) {
    if (token.kind == TokenKind::kDegree) return angle_slope(text);
  }
  if (count > 1 && tokens[count - 1].kind == TokenKind::kPercent) {
    const auto number = parse_bare_number(before(text, tokens[count - 1]));
    return number ? percent_slope(*number) : tl::unexpected<Error>(number.error());
  }
  const bool per_metre = count > 3 && tokens[count - 3].kind == TokenKind::kMm &&
                         tokens[count - 2].kind == TokenKind::kSlash && tokens[count - 1].kind == TokenKind::kMetre;
  if (per_metre) {
    const auto number = parse_bare_number(before(text, tokens[count - 3]));
    return number ? mm_per_m_slope(*number) : tl::unexpected<Error>(number.error());
  }
  const Token* sign = ratio_sign(tokens);
  return sign != nullptr ? read_ratio(text, *sign) : read_alone(text, bare);
}

}  // namespace

Result<Length> parse_length(std::string_view text, BareUnit bare) {
  const auto value = parse_expression(text, bare);
  if (!value) return tl::unexpected<Error>(value.error());
  return length_of(*value, bare);
}

Result<Angle> parse_angle(std::string_view text) {
  const auto tokens = tokenize(text);
  if (!tokens) return tl::unexpected<Error>(tokens.error());
  const auto degrees = degrees_of(text, *tokens);
  if (!degrees) return tl::unexpected<Error>(degrees.error());
  const auto nano = multiply(*degrees, Rational{Angle::kPerDegree, 1});
  if (!nano) return overflow_at(0);
  const Int128 nearest = round_half_up(*nano);
  if (nearest > kMostNano || nearest < -kMostNano) {
    return fail(ErrorCode::kTooLarge, {}, tokens->front().at, kMostNano);
  }
  return Angle{static_cast<std::int64_t>(nearest)};
}

Result<Slope> parse_slope(std::string_view text, BareSlope bare) {
  const auto tokens = tokenize(text);
  if (!tokens) return tl::unexpected<Error>(tokens.error());
  return read_slope(text, *tokens, bare);
}

Result<std::int64_t> parse_count(std::string_view text) { return parse_decimal(text, 0); }

Result<std::int64_t> parse_decimal(std::string_view text, int decimals) {
  constexpr std::int64_t kMost = 1'000'000;
  const auto tokens = tokenize(text);
  if (!tokens) return tl::unexpected<Error>(tokens.error());
  const Token& number = tokens->front();
  const bool minus = number.kind == TokenKind::kHyphen || number.kind == TokenKind::kMinus;
  if (minus && (*tokens)[1].kind == TokenKind::kNumber) return fail(ErrorCode::kNegative, {}, number.at);
  Int128 unit = 1;
  for (int i = 0; i < decimals; ++i) unit *= 10;
  const auto counts = number.kind == TokenKind::kNumber ? multiply(number.value, Rational{unit, 1}) : std::nullopt;
  if (!counts || counts->den != 1 || (decimals == 0 && !number.whole)) return unexpected_token(number);
  if ((*tokens)[1].kind != TokenKind::kEnd) return unexpected_token((*tokens)[1]);
  if (counts->num > kMost) return fail(ErrorCode::kTooLarge, {}, number.at, kMost);
  return static_cast<std::int64_t>(counts->num);
}

}  // namespace bentbook
