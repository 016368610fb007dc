#include "measure/weight.h"

#include <algorithm>
#include <span>

#include "measure/expression.h"
#include "measure/tokens.h"

namespace bentbook {
namespace {

constexpr std::string_view kPoundWords[] = {"lb", "lbs", "pound", "pounds", "libra", "libras"};
constexpr std::string_view kKilogramWords[] = {"kg",       "kgs",       "kilo",      "kilos",
                                               "kilogram", "kilograms", "kilogramo", "kilogramos"};

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

bool among(std::span<const std::string_view> words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::int64_t per_unit(BareWeight unit) { return unit == BareWeight::kPound ? Weight::kPerPound : Weight::kPerKg; }

Result<Weight> in_unit(std::string_view number, BareWeight unit) {
  const auto amount = parse_bare_number(number);
  if (!amount) return tl::unexpected<Error>(amount.error());
  if (amount->num < 0) return fail(ErrorCode::kNegative, {}, 0);
  const auto counts = multiply(*amount, Rational{per_unit(unit), 1});
  if (!counts) return fail(ErrorCode::kOverflow, {}, 0);
  const Int128 nearest = round_half_up(*counts);
  if (nearest > Weight::kLimit) return fail(ErrorCode::kOverflow, {}, 0);
  return Weight{static_cast<std::int64_t>(nearest)};
}

}  // namespace

Weight Weight::from_lb(double lb) {
  if (!(lb == lb)) return {};
  const double counts = lb * static_cast<double>(kPerPound);
  if (counts >= static_cast<double>(kLimit)) return {kLimit};
  if (counts <= -static_cast<double>(kLimit)) return {-kLimit};
  return {static_cast<std::int64_t>(counts < 0 ? counts - 0.5 : counts + 0.5)};
}

BareWeight bare_weight(LengthForm form) {
  return form == LengthForm::kMm || form == LengthForm::kMetre ? BareWeight::kKilogram : BareWeight::kPound;
}

Result<Weight> parse_weight(std::string_view text, BareWeight bare) {
  if (text.size() > kLongestEntry) return fail(ErrorCode::kOverflow, {}, static_cast<std::int64_t>(kLongestEntry));
  std::size_t end = text.size();
  while (end > 0 && is_blank(text[end - 1])) --end;
  if (end == 0) return fail(ErrorCode::kEmpty, {}, 0);
  if (text[end - 1] == '.' && end > 1 && is_letter(text[end - 2])) --end;  // "lb."
  std::size_t begin = end;
  while (begin > 0 && is_letter(text[begin - 1])) --begin;
  if (begin == end) return in_unit(text, bare);
  const std::string word = lower(text.substr(begin, end - begin));
  const auto at = static_cast<std::int64_t>(begin);
  if (!among(kPoundWords, word) && !among(kKilogramWords, word)) return fail(ErrorCode::kUnknownUnit, {}, at);
  while (begin > 0 && is_blank(text[begin - 1])) --begin;
  if (begin == 0) return fail(ErrorCode::kUnexpected, {}, at);
  return in_unit(text.substr(0, begin), among(kPoundWords, word) ? BareWeight::kPound : BareWeight::kKilogram);
}

std::string print_weight(Weight value, LengthForm form, int decimals) {
  const BareWeight unit = bare_weight(form);
  // Exact: the count over what one unit of the last digit is.
  std::int64_t scale = 1;
  decimals = std::clamp(decimals, 0, 3);
  for (int i = 0; i < decimals; ++i) scale *= 10;
  const bool negative = value.count < 0;
  const auto magnitude = static_cast<Int128>(negative ? -value.count : value.count) * scale;
  const auto digits = static_cast<std::int64_t>(divide_half_up(magnitude, per_unit(unit)));
  std::string out = negative && digits > 0 ? "-" : "";
  out += std::to_string(digits / scale);
  if (decimals > 0) {
    const std::string part = std::to_string(digits % scale);
    out += "." + std::string(static_cast<std::size_t>(decimals) - part.size(), '0') + part;
  }
  return out + (unit == BareWeight::kPound ? " lb" : " kg");
}

std::string print_weight_entry(Weight value, LengthForm form) {
  const auto whole_in = [&](BareWeight unit) { return value.count % per_unit(unit) == 0; };
  const BareWeight own = bare_weight(form);
  if (whole_in(own)) return print_weight(value, form);
  if (whole_in(BareWeight::kPound)) return print_weight(value, LengthForm::kFeetInches);
  if (whole_in(BareWeight::kKilogram)) return print_weight(value, LengthForm::kMm);
  return print_weight(value, form, 3);
}

}  // namespace bentbook
