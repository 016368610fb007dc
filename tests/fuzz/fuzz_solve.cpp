#include <algorithm>
#include <string>
#include <vector>

#include "book/book.h"
#include "book/book_file.h"
#include "fuzz.h"
#include "model/book_model.h"

using namespace bentbook;

namespace {

/// A book of which some digits are others: three bytes say which and what. A seed is such bytes; a file read as it is
/// would hardly ever be one.
std::string changed(std::string bytes, const std::uint8_t* data, std::size_t size) {
  std::vector<std::size_t> digits;
  for (std::size_t i = 0; i < bytes.size(); ++i)
    if (bytes[i] >= '0' && bytes[i] <= '9') digits.push_back(i);
  for (std::size_t i = 0; i + 2 < size; i += 3)
    bytes[digits[(std::size_t{data[i]} * 256 + data[i + 1]) % digits.size()]] =
        static_cast<char>('0' + data[i + 2] % 10);
  return bytes;
}

}  // namespace

/// Whatever measures a book's file gives, its frame is solved or the trouble is named.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::string kDemo = write_book(demo_book());
  const auto book = read_book(changed(kDemo, data, std::min<std::size_t>(size, 96)));
  if (!book) return 0;
  const BookModel model = solve(*book);
  if (!*model.frame) fuzz::hold(!model.frame->error().where.empty());
  return 0;
}
