#include "fuzz.h"
#include "records.h"

using namespace bentbook;

/// A log's file in the desktop's folder: every record that is read goes in again, with its line, under its number.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  const std::set<desktop::Record> read = desktop::records_of(bytes);
  std::string lines;
  for (const auto& [device, sequence, line] : read) {
    fuzz::hold(!line.empty() && line.find('\n') == line.size() - 1);
    desktop::put_record(lines, device, sequence, std::string_view(line).substr(0, line.size() - 1));
  }
  fuzz::hold(desktop::records_of(lines) == read);
  // What a crash cut short takes nothing of the lines before it with it.
  std::string cut(bytes.substr(0, bytes.size() / 2));
  for (const desktop::Record& record : desktop::records_of(cut)) fuzz::hold(read.contains(record));
  return 0;
}
