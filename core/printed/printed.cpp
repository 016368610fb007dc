#include "printed/printed.h"

#include "printed/page_head.h"
#include "printed/pages/labels.h"
#include "printed/pages/lists.h"
#include "printed/pages/patterns.h"
#include "printed/pages/raising_pages.h"
#include "printed/pages/sheets.h"

namespace bentbook {
namespace {

Result<paper::Document> pages_of(const Book& book, const BookModel& model, const PrintOptions& options,
                                 const Voice& voice) {
  switch (options.what) {
    case PrintedKind::kSheets:
      return print_sheets(book, model, options, voice);
    case PrintedKind::kLists:
      return print_lists(book, model, options, voice);
    case PrintedKind::kPatterns:
      return print_patterns(book, model, options, voice);
    case PrintedKind::kLabels:
      return print_labels(book, model, options, voice);
    case PrintedKind::kRaising:
      return print_raising(book, model, options, voice);
  }
  return fail(ErrorCode::kEmpty, "paper");
}

}  // namespace

Result<paper::Document> print(const Book& book, const BookModel& model, const PrintOptions& options,
                              const Voice& voice) {
  Result<paper::Document> document = pages_of(book, model, options, voice);
  if (document) finish_pages(*document, book, options, voice);
  return document;
}

}  // namespace bentbook
