#include "book/book_shelf.h"
#include "fuzz.h"
#include "shop/log/record.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto shelf = read_shelf(fuzz::text_of(data, size));
  if (!shelf) {
    fuzz::hold(!shelf.error().where.empty());
    fuzz::hold(shelf.error().at <= static_cast<std::int64_t>(size));
    return 0;
  }
  for (const ShelvedBook& book : shelf->books) {
    // Names of what storage holds: none but a book's own.
    fuzz::hold(book.id.starts_with("book") && is_book_id(book.id));
    fuzz::hold(is_book_id(book.identity));
  }
  const std::string once = write_shelf(*shelf);
  const auto again = read_shelf(once);
  fuzz::hold(again.has_value() && again->books == shelf->books && again->open == shelf->open);
  fuzz::hold(write_shelf(*again) == once);
  return 0;
}
