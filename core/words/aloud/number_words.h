#pragma once
/// Whole numbers and decimals as a voice says them.

#include <cstdint>
#include <string>
#include <string_view>

#include "words/strings.h"

namespace bentbook {

/// What follows the number: some languages bend "one" to it ("veintiuno", "veintiún pies", "veintiuna pulgadas").
enum class Counts : std::uint8_t { kNothing, kFeet, kInches };

/// Digits in words, "thirty-nine"; 100 and more stay digits, which every voice reads rightly.
[[nodiscard]] std::string number_words(std::string_view digits, Counts what, Language language);

/// "thirty-nine point eight", the decimals digit by digit; without decimals as number_words.
[[nodiscard]] std::string decimal_words(std::string_view whole, std::string_view decimals, Counts what,
                                        Language language);

}  // namespace bentbook
