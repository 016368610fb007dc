#pragma once
/// Exact fractions for reading entries: nothing that was typed goes through a double.

#include <optional>

#include "numeric/int128.h"

namespace bentbook {

/// num / den in lowest terms, den > 0, both magnitudes below 2^126. Made by the functions below only.
struct Rational {
  Int128 num = 0;
  Int128 den = 1;
};

/// n / d reduced; nothing when d is 0 or a magnitude is too large.
[[nodiscard]] std::optional<Rational> make_rational(Int128 n, Int128 d);

/// The four rules, exact. Nothing when the result does not fit; divide also when b is 0.
[[nodiscard]] std::optional<Rational> add(const Rational& a, const Rational& b);
[[nodiscard]] std::optional<Rational> multiply(const Rational& a, const Rational& b);
[[nodiscard]] std::optional<Rational> divide(const Rational& a, const Rational& b);

[[nodiscard]] inline Rational negate(const Rational& a) { return {-a.num, a.den}; }

/// Nearest whole number, half away from zero.
[[nodiscard]] inline Int128 round_half_up(const Rational& a) { return divide_half_up(a.num, a.den); }

}  // namespace bentbook
