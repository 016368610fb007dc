/// How long sixty pages of timber sheets take: to put them together, to carry them over the Worker's border, and to
/// write them as PDF. Prints a line of JSON.

#include <chrono>
#include <cstdio>

#include "book/book.h"
#include "model/book_model.h"
#include "paper/pdf.h"
#include "printed/printed.h"
#include "tasks/document_fields.h"
#include "ui/fonts.gen.h"

using namespace bentbook;

namespace {

constexpr std::size_t kPages = 60;

template <std::size_t N>
std::string_view bytes_of(const unsigned char (&font)[N]) {
  return {reinterpret_cast<const char*>(font), N};
}

double now_ms() {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

}  // namespace

int main() {
  const Book book =
      new_book("Barn", Length::feet(36), Length::feet(60), Length::feet(10), Slope::in_12(Length::inches(9)));
  const BookModel model = solve(book);
  PrintOptions options;
  const double begun = now_ms();
  auto document = print(book, model, options, {});
  if (!document) return 1;
  const double together = now_ms();
  const std::size_t all = document->pages.size();
  while (document->pages.size() < kPages) document->pages.push_back(document->pages[document->pages.size() % all]);
  document->pages.resize(kPages);
  const double filled = now_ms();
  const auto carried = read_document(write_document(*document));
  if (!carried) return 1;
  const double over = now_ms();
  const auto pdf = write_pdf(*carried, {bytes_of(screens::kRegularFont), bytes_of(screens::kBoldFont)});
  if (!pdf) return 1;
  const double written = now_ms();
  std::printf("{\"together_ms\": %.1f, \"together_pages\": %zu, \"over_ms\": %.1f, \"pdf_ms\": %.1f, \"bytes\": %zu}\n",
              together - begun, all, over - filled, written - over, pdf->size());
  return 0;
}
