#include "records.h"

#include <charconv>

namespace bentbook::desktop {

void put_record(std::string& lines, std::string_view device, std::int64_t sequence, std::string_view bytes) {
  lines += device;
  (lines += ' ') += std::to_string(sequence);
  (lines += ' ') += bytes;
  lines += '\n';
}

std::set<Record> records_of(std::string_view bytes) {
  std::set<Record> records;
  for (std::size_t at = 0, end; (end = bytes.find('\n', at)) != std::string_view::npos; at = end + 1) {
    const std::string_view line = bytes.substr(at, end + 1 - at);
    const std::size_t first = line.find(' ');
    const std::size_t second = first == std::string_view::npos ? first : line.find(' ', first + 1);
    if (second == std::string_view::npos) continue;  // something else wrote in the file
    std::int64_t sequence = 0;
    std::from_chars(line.data() + first + 1, line.data() + second, sequence);
    records.emplace(line.substr(0, first), sequence, line.substr(second + 1));
  }
  return records;
}

}  // namespace bentbook::desktop
