#include <optional>
#include <vector>

#include "measure/expression.h"
#include "measure/tokens.h"

namespace bentbook {
namespace {

constexpr std::int64_t kMostDegrees = 360;

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

}  // namespace

Result<Angle> parse_angle(std::string_view text) {
  const auto tokens = tokenize(text);
  if (!tokens) return tl::unexpected<Error>(tokens.error());
  const auto degrees = degrees_of(text, *tokens);
  if (!degrees) return tl::unexpected<Error>(degrees.error());
  const auto nano = multiply(*degrees, Rational{Angle::kPerDegree, 1});
  if (!nano) return overflow_at(0);
  const Int128 nearest = round_half_up(*nano);
  constexpr Int128 kLimit = kMostDegrees * Angle::kPerDegree;
  if (nearest > kLimit || nearest < -kLimit) {
    return fail(ErrorCode::kTooLarge, {}, tokens->front().at, static_cast<std::int64_t>(kLimit));
  }
  return Angle{static_cast<std::int64_t>(nearest)};
}

}  // namespace bentbook
