#pragma once
/// The 128-bit integer that products of lengths need. Its name is a compiler extension, so it is spelt once, here.

#include <cstdint>

namespace bentbook {

__extension__ typedef __int128 Int128;
__extension__ typedef unsigned __int128 Uint128;

/// n / d to the nearest whole number, half away from zero. d > 0, |n| and d below 2^126.
/// "Half or more goes up", of the magnitude: a left-hand measure and its right-hand mirror round alike.
[[nodiscard]] constexpr Int128 divide_half_up(Int128 n, Int128 d) {
  return n < 0 ? -((-n + d / 2) / d) : (n + d / 2) / d;
}

}  // namespace bentbook
