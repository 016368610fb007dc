// What is printed: every word of the demo's timber sheets, lists and raising and where it stands, and the pages' bytes
// by their checksum.

#include "book/book.h"
#include "model/book_model.h"
#include "printed/printed.h"
#include "rows.h"
#include "tasks/document_fields.h"
#include "text/crc32.h"

namespace golden {

using namespace bentbook;

void paper_rows(Rows& rows) {
  const Book book = demo_book();
  const BookModel model = solve(book);
  PrintOptions options;
  for (const PrintedKind what : {PrintedKind::kSheets, PrintedKind::kLists, PrintedKind::kRaising}) {
    options.what = what;
    const auto document = print(book, model, options, {});
    if (!document) return;
    for (const paper::Page& page : document->pages)
      for (const paper::PageText& text : page.texts) rows.bits(text.at.x).bits(text.at.y).word(text.text).end();
    rows.whole(crc32(write_document(*document))).end();
  }
}

}  // namespace golden
