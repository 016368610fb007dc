#include "book/book.h"
#include "book/book_file.h"
#include "fuzz.h"
#include "model/book_model.h"

using namespace bentbook;

/// Whatever a book's file says, its frame is solved or the trouble is named. Long books are the benchmark's.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto book = read_book(fuzz::text_of(data, size));
  if (!book || book->frame.bays.size() > 6) return 0;
  const BookModel model = solve(*book);
  if (!*model.frame) fuzz::hold(!model.frame->error().where.empty());
  return 0;
}
