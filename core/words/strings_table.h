#pragma once
/// The string table as the build makes it (strings.gen.cpp). Only strings.cpp reads it.

#include <cstddef>
#include <string_view>

#include "words/strings.gen.h"

namespace bentbook::strings {

struct LanguageLine {
  std::string_view tag, name;
  std::uint64_t singular;  ///< bit n: the count n takes the singular
};

/// Texts of one message in the order of Language; forms[language] = {one, other}, twice the same where no count
/// matters.
struct Row {
  std::string_view id;
  struct Forms {
    std::string_view one, other;
  } forms[kLanguageCount];
};

const LanguageLine* languages();  ///< in the order of Language
const Row* rows();                ///< sorted by id, in the order of Msg
std::size_t row_count();

}  // namespace bentbook::strings
