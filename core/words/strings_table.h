#pragma once
/// The string table as the build makes it (strings.gen.cpp). Only strings.cpp reads it.

#include <cstddef>
#include <string_view>

namespace bentbook::strings {

/// Texts of one message in the order of Language; forms[language] = {one, other}, twice the same where no count
/// matters.
struct Row {
  std::string_view id;
  struct Forms {
    std::string_view one, other;
  } forms[2];
};

const Row* rows();  ///< sorted by id, in the order of Msg
std::size_t row_count();

}  // namespace bentbook::strings
