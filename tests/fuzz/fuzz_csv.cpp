#include "book/book.h"
#include "book/book_file.h"
#include "frame/list/csv.h"
#include "frame/list/csv_write.h"
#include "fuzz.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const CsvTimbers list = read_timbers_csv(fuzz::text_of(data, size), BareUnit::kInch, common_species());
  fuzz::hold(list.timbers.size() == list.lines.size());
  int before = 0;
  for (const CsvTrouble& trouble : list.troubles) {
    fuzz::hold(trouble.line >= before && !trouble.column.empty());
    before = trouble.line;
  }
  // What was good goes out and comes back whole.
  const std::string bytes = write_timbers_csv(list.timbers);
  const CsvTimbers again = read_timbers_csv(bytes, BareUnit::kInch, common_species());
  fuzz::hold(again.troubles.empty() && again.timbers == list.timbers);
  // A book takes what a list gave.
  Book book;
  book.frame.added = list.timbers;
  const auto read = read_book(write_book(book));
  fuzz::hold(read.has_value() && read->frame.added == list.timbers);
  return 0;
}
