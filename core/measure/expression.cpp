#include "measure/expression.h"

#include <vector>

#include "measure/quantity.h"
#include "measure/tokens.h"

namespace bentbook {
namespace {

// Deep enough for any sum on paper, shallow enough for a phone's stack.
constexpr int kDeepest = 16;

class ExpressionReader {
 public:
  ExpressionReader(const std::vector<Token>& tokens, BareUnit bare) : tokens_(tokens), bare_(bare) {}

  Result<Value> run() {
    auto value = sum();
    if (!value) return value;
    if (here().kind == TokenKind::kClose) return fail(ErrorCode::kUnbalanced, {}, here().at);
    if (here().kind != TokenKind::kEnd) return unexpected_token(here());
    return value;
  }

 private:
  const Token& here() const { return tokens_[pos_]; }
  bool minus_here() const { return here().kind == TokenKind::kHyphen || here().kind == TokenKind::kMinus; }

  Result<Value> sum() {
    auto left = product();
    while (left && (minus_here() || here().kind == TokenKind::kPlus)) {
      const Token& sign = here();
      const bool take_away = minus_here();
      ++pos_;
      auto right = product();
      if (!right) return right;
      if (take_away) right->amount = negate(right->amount);
      left = added(*left, *right, sign);
    }
    return left;
  }

  Result<Value> product() {
    auto left = signed_factor(false);
    while (left && (here().kind == TokenKind::kTimes || here().kind == TokenKind::kSlash)) {
      const Token& sign = here();
      const bool division = sign.kind == TokenKind::kSlash;
      ++pos_;
      const Token& operand = here();
      auto right = signed_factor(division && !operand.blank_before);
      if (!right) return right;
      left = division ? divided(*left, *right, sign, operand) : multiplied(*left, *right, sign);
    }
    return left;
  }

  Result<Value> signed_factor(bool after_slash) {
    const bool negative = minus_here();
    if (negative || here().kind == TokenKind::kPlus) ++pos_;
    auto value = factor(after_slash);
    if (value && negative) value->amount = negate(value->amount);
    return value;
  }

  Result<Value> factor(bool after_slash) {
    if (here().kind != TokenKind::kOpen) return read_quantity(tokens_, pos_, bare_, after_slash);
    const Token& open = here();
    if (depth_ == kDeepest) return fail(ErrorCode::kTooDeep, {}, open.at);
    ++depth_;
    ++pos_;
    auto value = sum();
    --depth_;
    if (!value) return value;
    if (here().kind == TokenKind::kEnd) return fail(ErrorCode::kUnbalanced, {}, open.at);
    if (here().kind != TokenKind::kClose) return unexpected_token(here());
    ++pos_;
    return value;
  }

  static Result<Value> checked(const std::optional<Rational>& amount, ValueKind kind, const Token& sign) {
    if (!amount) return fail(ErrorCode::kOverflow, {}, sign.at);
    return Value{*amount, kind};
  }

  Result<Value> added(Value a, Value b, const Token& sign) const {
    if (a.kind != b.kind) {
      if (a.kind == ValueKind::kLength || b.kind == ValueKind::kLength) {
        if (a.kind == ValueKind::kRatio || b.kind == ValueKind::kRatio) return mismatch(sign);
        Value& bare = a.kind == ValueKind::kBare ? a : b;
        const auto counts = multiply(bare.amount, Rational{counts_per(bare_), 1});
        if (!counts) return fail(ErrorCode::kOverflow, {}, sign.at);
        bare = Value{*counts, ValueKind::kLength};
      } else {
        a.kind = ValueKind::kRatio;
      }
    }
    return checked(add(a.amount, b.amount), a.kind, sign);
  }

  static tl::unexpected<Error> mismatch(const Token& sign) { return fail(ErrorCode::kUnitMismatch, {}, sign.at); }

  static Result<Value> multiplied(const Value& a, const Value& b, const Token& sign) {
    const bool length_a = a.kind == ValueKind::kLength;
    const bool length_b = b.kind == ValueKind::kLength;
    if (length_a && length_b) return mismatch(sign);
    const bool ratio = a.kind == ValueKind::kRatio || b.kind == ValueKind::kRatio;
    const ValueKind kind = length_a || length_b ? ValueKind::kLength : ratio ? ValueKind::kRatio : ValueKind::kBare;
    return checked(multiply(a.amount, b.amount), kind, sign);
  }

  static Result<Value> divided(const Value& a, const Value& b, const Token& sign, const Token& divisor) {
    if (b.amount.num == 0) return fail(ErrorCode::kDivisionByZero, {}, divisor.at);
    const bool length_a = a.kind == ValueKind::kLength;
    const bool length_b = b.kind == ValueKind::kLength;
    if (length_b && !length_a) return mismatch(sign);
    const bool ratio = length_b || a.kind == ValueKind::kRatio || b.kind == ValueKind::kRatio;
    const ValueKind kind = length_a && !length_b ? ValueKind::kLength : ratio ? ValueKind::kRatio : ValueKind::kBare;
    return checked(divide(a.amount, b.amount), kind, sign);
  }

  const std::vector<Token>& tokens_;
  std::size_t pos_ = 0;
  BareUnit bare_;
  int depth_ = 0;
};

}  // namespace

Result<Value> parse_expression(std::string_view text, BareUnit bare) {
  const auto tokens = tokenize(text);
  if (!tokens) return tl::unexpected<Error>(tokens.error());
  return ExpressionReader(*tokens, bare).run();
}

Result<Rational> parse_bare_number(std::string_view text) {
  const auto value = parse_expression(text, BareUnit::kMm);  // millimetres: 12-7 is a difference
  if (!value) return tl::unexpected<Error>(value.error());
  if (value->kind != ValueKind::kBare) return fail(ErrorCode::kUnitMismatch, {}, 0);
  return value->amount;
}

Result<Length> length_of(const Value& value, BareUnit bare) {
  if (value.kind == ValueKind::kRatio) return fail(ErrorCode::kUnitMismatch, {}, 0);
  auto counts = std::optional<Rational>(value.amount);
  if (value.kind == ValueKind::kBare) counts = multiply(value.amount, Rational{counts_per(bare), 1});
  if (!counts) return fail(ErrorCode::kOverflow, {}, 0, Length::kLimit);
  const Int128 nearest = round_half_up(*counts);
  if (nearest > Length::kLimit || nearest < -Length::kLimit) return fail(ErrorCode::kOverflow, {}, 0, Length::kLimit);
  return Length{static_cast<std::int64_t>(nearest)};
}

}  // namespace bentbook
