#pragma once
/// A number as decimal digits.

#include <string>

namespace bentbook {

/// Plain decimal with 0 to 30 digits after the point, '.' always, "-0" never: the number format of JSON. The exact
/// value of the double is rounded half up (of the magnitude), so 2.675, which is a little less in binary, gives 2.67.
/// Infinities and NaN, which JSON has no word for, give null.
[[nodiscard]] std::string print_fixed(double value, int decimals);
/// "39.800" becomes "39.8", "40.000" becomes "40"; what has no point stays.
[[nodiscard]] std::string without_trailing_zeros(std::string text);

}  // namespace bentbook
