#include "text/csv_records.h"

namespace bentbook::csv {

Record Records::next() {
  Record record;
  record.line = line_;
  for (;;) {
    record.cells.push_back(cell(record));
    if (at_ >= bytes_.size()) return record;
    const char c = bytes_[at_++];
    if (c == separator_) continue;
    if (c == '\r' && at_ < bytes_.size() && bytes_[at_] == '\n') ++at_;
    ++line_;
    return record;
  }
}

std::string Records::cell(Record& record) {
  std::string out;
  if (at_ < bytes_.size() && bytes_[at_] == '"') {
    ++at_;
    while (at_ < bytes_.size()) {
      const char c = bytes_[at_++];
      if (c == '"') {
        if (at_ >= bytes_.size() || bytes_[at_] != '"') return out + rest();
        ++at_;
      }
      if (c == '\n') ++line_;
      out += c;
    }
    record.open_quote = true;
    return out;
  }
  return rest();
}

std::string Records::rest() {
  const std::size_t from = at_;
  while (at_ < bytes_.size() && !ends_cell(bytes_[at_])) ++at_;
  return std::string(bytes_.substr(from, at_ - from));
}

bool is_text(std::string_view s) {
  for (std::size_t i = 0; i < s.size();) {
    const auto c = static_cast<unsigned char>(s[i]);
    if (c < 0x20 || c == 0x7f) return false;
    const std::size_t size = c < 0x80                ? 1
                             : c >= 0xc2 && c < 0xe0 ? 2
                             : (c & 0xf0) == 0xe0    ? 3
                             : c >= 0xf0 && c < 0xf5 ? 4
                                                     : 0;
    if (size == 0 || i + size > s.size()) return false;
    for (std::size_t k = 1; k < size; ++k)
      if ((static_cast<unsigned char>(s[i + k]) & 0xc0) != 0x80) return false;
    const auto second = size > 2 ? static_cast<unsigned char>(s[i + 1]) : 0;
    const bool overlong = (c == 0xe0 && second < 0xa0) || (c == 0xf0 && second < 0x90);
    const bool surrogate_or_past = (c == 0xed && second >= 0xa0) || (c == 0xf4 && second >= 0x90);
    if (overlong || surrogate_or_past) return false;
    i += size;
  }
  return true;
}

char separator_of(std::string_view bytes) {
  const std::string_view first = bytes.substr(0, bytes.find_first_of("\r\n"));
  for (const char c : {'\t', ';'})
    if (first.find(c) != std::string_view::npos) return c;
  return ',';
}

}  // namespace bentbook::csv
