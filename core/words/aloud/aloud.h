#pragma once
/// What stands on the screen, as the device's own voice reads it rightly: a voice left to itself says "four minutes,
/// seven, three, eight" for 4′ 7 3⁄8″ and takes P-A2 for a word.

#include <string>
#include <string_view>

#include "words/strings.h"

namespace bentbook {

/// Measures as print_length and print_degrees give them become words: "four feet, seven and three eighths inches",
/// "1403 millimetres", "thirty-nine point eight degrees"; a timber's mark is said letter by letter, "P A 2". All else
/// stays as it is.
[[nodiscard]] std::string aloud_text(std::string_view shown, Language language);

/// A name and its value as a sentence: "Stop, at the edge of face two: four feet, zero inches." Either may be empty.
[[nodiscard]] std::string aloud_sentence(std::string_view name, std::string_view value, Language language);

}  // namespace bentbook
