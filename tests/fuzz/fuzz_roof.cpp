#include "book/book_file.h"
#include "fuzz.h"
#include "roof/plan/solve_roof.h"

using namespace bentbook;

// Any roof that a file can hold ends in timbers of real numbers, or in a refusal that names its field.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto book = read_book(fuzz::text_of(data, size));
  if (!book) return 0;
  const auto roof = solve_roof(book->roof);
  if (!roof) {
    fuzz::hold(!roof.error().where.empty());
    return 0;
  }
  for (const RoofTimber& t : roof->timbers) {
    const double sum = t.length + t.at.origin.x + t.at.origin.y + t.at.origin.z + t.run + t.line_length + t.shortening;
    fuzz::hold(sum - sum == 0 && t.length > 0);
  }
  return 0;
}
