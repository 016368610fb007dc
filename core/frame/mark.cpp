#include "frame/mark.h"

#include <charconv>

namespace bentbook {

std::string_view kind_letters(TimberKind kind) {
  constexpr std::string_view kLetters[kTimberKinds] = {"S",  "P", "L", "T", "G", "J",  "K",  "Q",  "H",  "R",
                                                       "PR", "C", "U", "B", "X", "HR", "VR", "JR", "DT", "HD"};
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

bool mark_before(std::string_view a, std::string_view b) {
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t i = 0, j = 0;
  while (i < a.size() && j < b.size()) {
    if (digit(a[i]) && digit(b[j])) {
      long x = 0, y = 0;
      i = static_cast<std::size_t>(std::from_chars(a.data() + i, a.data() + a.size(), x).ptr - a.data());
      j = static_cast<std::size_t>(std::from_chars(b.data() + j, b.data() + b.size(), y).ptr - b.data());
      if (x != y) return x < y;
      continue;
    }
    if (a[i] != b[j]) return a[i] < b[j];
    ++i;
    ++j;
  }
  return a.size() - i < b.size() - j;
}

}  // namespace bentbook
