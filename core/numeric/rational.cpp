#include "numeric/rational.h"

namespace bentbook {
namespace {

constexpr Int128 kLargest = (Int128{1} << 126) - 1;

Int128 magnitude(Int128 x) { return x < 0 ? -x : x; }

Int128 greatest_common_divisor(Int128 a, Int128 b) {
  while (b != 0) {
    const Int128 rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

// Checked by division: the compilers' overflow builtins need a runtime routine that not every target links.
std::optional<Int128> product(Int128 a, Int128 b) {
  if (a != 0 && magnitude(b) > kLargest / magnitude(a)) return std::nullopt;
  return a * b;
}

}  // namespace

std::optional<Rational> make_rational(Int128 n, Int128 d) {
  if (d == 0 || magnitude(n) > kLargest || magnitude(d) > kLargest) return std::nullopt;
  const Int128 common = greatest_common_divisor(magnitude(n), magnitude(d));
  if (d < 0) {
    n = -n;
    d = -d;
  }
  return Rational{n / common, d / common};
}

std::optional<Rational> add(const Rational& a, const Rational& b) {
  const Int128 common = greatest_common_divisor(a.den, b.den);
  const auto left = product(a.num, b.den / common);
  const auto right = product(b.num, a.den / common);
  const auto den = product(a.den, b.den / common);
  if (!left || !right || !den) return std::nullopt;
  return make_rational(*left + *right, *den);
}

std::optional<Rational> multiply(const Rational& a, const Rational& b) {
  // Cross-reduced first: the result is then in lowest terms and the products as small as they can be.
  const auto first = make_rational(a.num, b.den);
  const auto second = make_rational(b.num, a.den);
  if (!first || !second) return std::nullopt;
  const auto num = product(first->num, second->num);
  const auto den = product(first->den, second->den);
  if (!num || !den) return std::nullopt;
  return Rational{*num, *den};
}

std::optional<Rational> divide(const Rational& a, const Rational& b) {
  const auto inverse = make_rational(b.den, b.num);
  return inverse ? multiply(a, *inverse) : std::nullopt;
}

}  // namespace bentbook
