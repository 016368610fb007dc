#pragma once
/// Sums and products of measures, read exactly. The grammar is told in parse.h.

#include <string_view>

#include "measure/parse.h"
#include "numeric/rational.h"

namespace bentbook {

/// What an expression's value is.
enum class ValueKind : std::uint8_t {
  kBare,    ///< a number without a unit: a length where a length is wanted, a factor in a product
  kLength,  ///< in counts
  kRatio,   ///< one length over another: a number that can never become a length
};

struct Value {
  Rational amount{};
  ValueKind kind = ValueKind::kBare;
};

/// The value of the whole text. `bare` decides what 12-7 means and what a bare number in a sum with lengths is.
[[nodiscard]] Result<Value> parse_expression(std::string_view text, BareUnit bare);

/// An expression without units, such as 83 1/3 or (90 - 40)/2; kUnitMismatch at 0 for anything else.
[[nodiscard]] Result<Rational> parse_bare_number(std::string_view text);

/// The value as a length in counts, nearest count; a bare number takes the unit. Errors: kUnitMismatch for a ratio,
/// kOverflow past Length::kLimit, both at offset 0.
[[nodiscard]] Result<Length> length_of(const Value& value, BareUnit bare);

}  // namespace bentbook
