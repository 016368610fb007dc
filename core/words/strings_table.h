#pragma once
/// The string table as the build makes it (strings.gen.cpp). Only strings.cpp reads it. Texts follow one another, each
/// ended by a zero byte: a table of pointers to them would be a quarter of their download. texts() has two makers: the
/// build's own all_texts.gen.cpp, and the phone page (wasm-app/words.cpp), where other languages are files.

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "words/strings.gen.h"

namespace bentbook::strings {

struct LanguageLine {
  std::string_view tag, name;
  std::uint64_t singular;  ///< bit n: the count n takes the singular
};

struct Texts {
  const char* all;   ///< in the order of Msg; of a message with plural forms the one for many
  const char* ones;  ///< the singular of those that are counted, in the order of counted()
};

const LanguageLine* languages();  ///< in the order of Language
const Texts* texts();             ///< in the order of Language; null pointers where the words are not there yet
extern const char kFirstTexts[], kFirstOnes[];  ///< of the first language, which is always there
extern const char kIds[];                       ///< in the order of Msg, which is theirs
const std::uint16_t* counted();                 ///< messages with plural forms, upward
std::size_t counted_count();
std::size_t row_count();

/// Words of a language came into texts(), while nobody asks for any.
void read_again(Language language);

/// The id of a message, for tests and lookups.
std::string_view id_of(std::size_t row);

}  // namespace bentbook::strings
