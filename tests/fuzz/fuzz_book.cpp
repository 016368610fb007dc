#include "book/book.h"
#include "book/book_file.h"
#include "fuzz.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto book = read_book(fuzz::text_of(data, size));
  if (!book) {
    fuzz::hold(!book.error().where.empty());
    fuzz::hold(book.error().at <= static_cast<std::int64_t>(size));
    return 0;
  }
  // What is written again is read again, and then no longer changes.
  const std::string once = write_book(*book);
  auto again = read_book(once);
  fuzz::hold(again.has_value());
  fuzz::hold(write_book(*again) == once);
  again->kept = book->kept;
  fuzz::hold(*again == *book);
  return 0;
}
