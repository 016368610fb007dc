#pragma once
/// Inside csv: lines and cells, forgiving: a quote inside an unquoted cell stands for itself.
/// Source: SOURCES.md, "CSV".

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
  Records(std::string_view bytes, char separator) : bytes_(bytes), separator_(separator) {}

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

/// The tab or semicolon where the first line has one, else the comma.
[[nodiscard]] char separator_of(std::string_view bytes);
/// Bytes that a mark may have: UTF-8 without control characters. Source: SOURCES.md, "UTF-8".
[[nodiscard]] bool is_text(std::string_view s);

}  // namespace bentbook::csv
