#include "text/csv.h"

namespace bentbook::csv {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

char separator_of(std::string_view bytes) {
  const std::string_view first = bytes.substr(0, bytes.find_first_of("\r\n"));
  for (const char c : {'\t', ';'})
    if (first.find(c) != std::string_view::npos) return c;
  return ',';
}

/// Behind any number of apostrophes, what a spreadsheet would work out.
bool looks_worked_out(std::string_view text) {
  const std::size_t first = text.find_first_not_of('\'');
  return first != std::string_view::npos && std::string_view("=+-@\t\r\n").find(text[first]) != std::string_view::npos;
}

}  // namespace

Records::Records(std::string_view bytes) : bytes_(bytes), separator_(separator_of(bytes)) {
  if (bytes_.starts_with(kByteOrderMark)) bytes_.remove_prefix(kByteOrderMark.size());
}

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

std::string_view trimmed(std::string_view cell) {
  const std::size_t first = cell.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return cell.substr(first, cell.find_last_not_of(" \t") - first + 1);
}

std::string guarded(std::string_view text) { return (looks_worked_out(text) ? "'" : "") + std::string(text); }

bool is_guarded(std::string_view cell) { return cell.starts_with('\'') && looks_worked_out(cell); }

std::string_view unguarded(std::string_view cell) { return is_guarded(cell) ? cell.substr(1) : cell; }

std::string quoted(std::string_view cell) {
  if (cell.find_first_of("\",;\t\r\n") == std::string_view::npos) return std::string(cell);
  std::string out = "\"";
  for (const char c : cell) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

}  // namespace bentbook::csv
