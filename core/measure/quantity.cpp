#include "measure/quantity.h"

#include <optional>

namespace bentbook {
namespace {

/// The part of a quantity that stands before a mark: 7, 7.5, 3/8, 7 3/8, 7½.
struct Mixed {
  Rational amount{};
  bool whole = false;     ///< a whole number alone: feet or inches may follow it
  bool fraction = false;  ///< ends in a fraction
  bool improper = false;  ///< a fraction alone that is 1 or more, 12/3
};

/// How a number stands to what is left of it.
enum class Join : std::uint8_t { kNone, kTouching, kBlank, kHyphen };

class QuantityReader {
 public:
  QuantityReader(const std::vector<Token>& tokens, std::size_t pos, BareUnit bare)
      : tokens_(tokens), pos_(pos), bare_(bare) {}

  std::size_t pos() const { return pos_; }

  Result<Value> run(bool after_slash) {
    const std::size_t start = pos_;
    const auto lead = read_mixed(after_slash);
    if (!lead) return tl::unexpected<Error>(lead.error());
    if (const std::int64_t unit = metric_unit(here().kind)) {
      ++pos_;
      return length(lead->amount, unit, start);
    }
    if (here().kind == TokenKind::kFoot) {
      ++pos_;
      return after_feet(*lead, start);
    }
    if (here().kind == TokenKind::kInch) return after_inches(lead->amount, lead->whole, start);
    if (lead->whole) return two_groups(*lead, start);
    return Value{lead->amount, ValueKind::kBare};
  }

 private:
  const Token& here() const { return tokens_[pos_]; }
  const Token& ahead(std::size_t n) const { return tokens_[pos_ + n < tokens_.size() ? pos_ + n : tokens_.size() - 1]; }

  static std::int64_t metric_unit(TokenKind kind) {
    switch (kind) {
      case TokenKind::kMm:
        return Length::kPerMm;
      case TokenKind::kCm:
        return 10 * Length::kPerMm;
      case TokenKind::kMetre:
        return 1000 * Length::kPerMm;
      default:
        return 0;
    }
  }

  Result<Value> length(const Rational& amount, std::int64_t unit, std::size_t start) const {
    const auto counts = multiply(amount, Rational{unit, 1});
    if (!counts) return fail(ErrorCode::kOverflow, {}, tokens_[start].at);
    return Value{*counts, ValueKind::kLength};
  }

  // A hyphen joins only when nothing but digits touch it: 12-7, 12'-7. With a blank beside it, it takes away.
  Join join_at(std::size_t n) const {
    const Token& token = ahead(n);
    if (token.kind == TokenKind::kNumber || token.kind == TokenKind::kFraction) {
      return token.blank_before ? Join::kBlank : Join::kTouching;
    }
    const Token& next = ahead(n + 1);
    const bool number_next = next.kind == TokenKind::kNumber || next.kind == TokenKind::kFraction;
    if (token.kind == TokenKind::kHyphen && !token.blank_before && !next.blank_before && number_next) {
      return Join::kHyphen;
    }
    return Join::kNone;
  }

  // n whole over whole, with no blank at the slash. With blanks the slash divides.
  bool fraction_at(std::size_t n) const {
    const Token& num = ahead(n);
    const Token& slash = ahead(n + 1);
    const Token& den = ahead(n + 2);
    return num.kind == TokenKind::kNumber && num.whole && slash.kind == TokenKind::kSlash && !slash.blank_before &&
           den.kind == TokenKind::kNumber && den.whole && !den.blank_before;
  }

  /// Reads the fraction at pos_, or nothing when there is none.
  Result<std::optional<Rational>> take_fraction() {
    if (here().kind == TokenKind::kFraction) return std::optional<Rational>(tokens_[pos_++].value);
    if (!fraction_at(0)) return std::optional<Rational>{};
    if (ahead(2).value.num == 0) return fail(ErrorCode::kDivisionByZero, {}, ahead(2).at);
    const auto fraction = divide(here().value, ahead(2).value);
    if (!fraction) return fail(ErrorCode::kOverflow, {}, here().at);
    pos_ += 3;
    return std::optional<Rational>(*fraction);
  }

  static bool proper(const Rational& fraction) { return fraction.num < fraction.den; }

  /// Adds the fraction that follows a whole number, if one is joined to it.
  Result<Mixed> with_fraction(Rational whole) {
    const Join join = join_at(0);
    const std::size_t before = pos_;
    if (join == Join::kHyphen) ++pos_;
    const Token& start = here();
    if (join == Join::kNone) return Mixed{whole, true};
    const auto fraction = take_fraction();
    if (!fraction) return tl::unexpected<Error>(fraction.error());
    if (!*fraction || !proper(**fraction)) {
      // 10-12/3 is a difference; 7 16/8 has no reading.
      if (*fraction && join == Join::kBlank) return unexpected_token(start);
      pos_ = before;
      return Mixed{whole, true};
    }
    const auto sum = add(whole, **fraction);
    if (!sum) return fail(ErrorCode::kOverflow, {}, start.at);
    return Mixed{*sum, false, true};
  }

  Result<Mixed> read_mixed(bool after_slash) {
    const Token& first = here();
    if (first.kind != TokenKind::kNumber && first.kind != TokenKind::kFraction) return unexpected_token(first);
    if (!after_slash || first.kind == TokenKind::kFraction) {
      const auto fraction = take_fraction();
      if (!fraction) return tl::unexpected<Error>(fraction.error());
      if (*fraction) return Mixed{**fraction, false, true, !proper(**fraction)};
    }
    ++pos_;
    if (!first.whole) return Mixed{first.value};
    return with_fraction(first.value);
  }

  /// 7" 3/8: a fraction may stand behind the inch mark too.
  Result<Value> after_inches(Rational inches, bool whole, std::size_t start) {
    ++pos_;
    const Join join = join_at(0);
    if (whole && (join == Join::kBlank || join == Join::kTouching)) {
      const std::size_t at = pos_;
      const auto fraction = take_fraction();
      if (!fraction) return tl::unexpected<Error>(fraction.error());
      if (!*fraction || !proper(**fraction)) return unexpected_token(tokens_[at]);
      const auto sum = add(inches, **fraction);
      if (!sum) return fail(ErrorCode::kOverflow, {}, tokens_[start].at);
      inches = *sum;
      if (here().kind == TokenKind::kInch) ++pos_;
    }
    return length(inches, Length::kPerInch, start);
  }

  Result<Value> feet_and_inches(const Rational& feet, const Mixed& inches, std::size_t start) {
    const auto twelve = multiply(feet, Rational{12, 1});
    const auto sum = twelve ? add(*twelve, inches.amount) : std::nullopt;
    if (!sum) return fail(ErrorCode::kOverflow, {}, tokens_[start].at);
    if (here().kind == TokenKind::kInch) return after_inches(*sum, inches.whole, start);
    return length(*sum, Length::kPerInch, start);
  }

  bool feet_or_metric_here() const { return here().kind == TokenKind::kFoot || metric_unit(here().kind) != 0; }

  /// Behind a foot mark: inches, or the end of the quantity.
  Result<Value> after_feet(const Mixed& feet, std::size_t start) {
    const std::size_t before = pos_;
    const Join join = join_at(0);
    if (join != Join::kNone && feet.whole) {
      if (join == Join::kHyphen) ++pos_;
      const Token& first = here();
      const auto inches = read_mixed(false);
      if (!inches) return tl::unexpected<Error>(inches.error());
      if (inches->improper) return unexpected_token(first);
      if (!feet_or_metric_here()) return feet_and_inches(feet.amount, *inches, start);
      pos_ = before;  // 12'-3' is a difference of two
    }
    return length(feet.amount, Length::kPerFoot, start);
  }

  /// 12-7, 12 7, 12-7-3/8 without a foot mark.
  Result<Value> two_groups(const Mixed& first, std::size_t start) {
    const std::size_t before = pos_;
    const Join join = join_at(0);
    const Value alone{first.amount, ValueKind::kBare};
    if (join != Join::kBlank && join != Join::kHyphen) return alone;
    if (join == Join::kHyphen) ++pos_;
    const Token& second = here();
    if (second.kind == TokenKind::kFraction || fraction_at(0)) {  // 10-12/3
      pos_ = before;
      return alone;
    }
    const auto inches = read_mixed(false);
    if (!inches) return tl::unexpected<Error>(inches.error());
    const bool imperial_field = bare_ == BareUnit::kInch || bare_ == BareUnit::kFoot;
    const bool feet = imperial_field || inches->fraction || here().kind == TokenKind::kInch;
    if (!feet || feet_or_metric_here()) {
      pos_ = before;  // 3200-45 in millimetres; 12-7'
      return alone;
    }
    // 24-16 could be a difference as well: neither reading is guessed.
    if (inches->amount.num >= 12 * inches->amount.den)
      return unexpected_token(join == Join::kHyphen ? tokens_[before] : second);
    return feet_and_inches(first.amount, *inches, start);
  }

  const std::vector<Token>& tokens_;
  std::size_t pos_;
  BareUnit bare_;
};

}  // namespace

std::int64_t counts_per(BareUnit bare) {
  switch (bare) {
    case BareUnit::kFoot:
      return Length::kPerFoot;
    case BareUnit::kMm:
      return Length::kPerMm;
    case BareUnit::kMetre:
      return 1000 * Length::kPerMm;
    case BareUnit::kInch:
      break;
  }
  return Length::kPerInch;
}

Result<Value> read_quantity(const std::vector<Token>& tokens, std::size_t& pos, BareUnit bare, bool after_slash) {
  QuantityReader reader(tokens, pos, bare);
  auto value = reader.run(after_slash);
  pos = reader.pos();
  return value;
}

}  // namespace bentbook
