#include "frame/mark.h"

namespace bentbook {

std::string_view kind_letters(TimberKind kind) {
  constexpr std::string_view kLetters[kTimberKinds] = {"S", "P", "L",  "T", "G", "J", "K", "Q",
                                                       "H", "R", "PR", "C", "U", "B", "X"};
  return kLetters[static_cast<std::size_t>(kind)];
}

std::string make_mark(TimberKind kind, char line, int bent, int number) {
  std::string mark(kind_letters(kind));
  mark += '-';
  if (line != 0) mark += line;
  if (number < 0) return mark + 'V' + std::to_string(-number);
  mark += std::to_string(bent);
  if (number != 0) {
    mark += '.';
    mark += std::to_string(number);
  }
  return mark;
}

}  // namespace bentbook
