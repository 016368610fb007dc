#pragma once
/// Comma-separated values: lines and cells, forgiving: a quote inside an unquoted cell stands for itself,
/// and a tab or a semicolon parts cells where the first line has one. Source: SOURCES.md, "CSV".

#include <string>
#include <string_view>
#include <vector>

namespace bentbook::csv {

struct Record {
  int line = 1;
  bool open_quote = false;  ///< its quotes do not close before the end of the file
  std::vector<std::string> cells;
};

class Records {
 public:
  /// A byte order mark in front is passed over.
  explicit Records(std::string_view bytes);

  [[nodiscard]] bool more() const { return at_ < bytes_.size(); }

  Record next();

 private:
  [[nodiscard]] bool ends_cell(char c) const { return c == separator_ || c == '\n' || c == '\r'; }
  std::string cell(Record& record);
  std::string rest();

  std::string_view bytes_;
  char separator_;
  std::size_t at_ = 0;
  int line_ = 1;
};

/// A cell without the blanks and tabs about it.
[[nodiscard]] std::string_view trimmed(std::string_view cell);
/// Text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a line's end), or that looks as
/// if it had been guarded: with an apostrophe in front, which spreadsheets take for "this is text". All other text as
/// it is. Not for numbers. Source: SOURCES.md, "formulas in cells".
[[nodiscard]] std::string guarded(std::string_view text);
[[nodiscard]] bool is_guarded(std::string_view cell);
/// The text that was guarded.
[[nodiscard]] std::string_view unguarded(std::string_view cell);
/// A cell as it is written: in quotes where it holds what would end it under any separator.
[[nodiscard]] std::string quoted(std::string_view cell);

}  // namespace bentbook::csv
