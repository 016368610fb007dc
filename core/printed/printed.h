#pragma once
/// What goes on paper from a book: pages as plain values (paper/page.h) for any writer.

#include <cstdint>
#include <string>
#include <vector>

#include "model/book_model.h"
#include "numeric/result.h"
#include "paper/page.h"
#include "words/words.h"

namespace bentbook {

struct OrderCheck;

enum class PrintedKind : std::uint8_t { kSheets, kPatterns, kLabels, kLists, kRaising };

/// Lists of PrintedKind::kLists.
enum class PrintedList : std::uint8_t { kCut, kOrder, kPlan, kHardware, kSettings };

struct PrintOptions {
  PrintedKind what = PrintedKind::kSheets;
  paper::PageSize page = paper::PageSize::kA4;
  std::vector<std::string> marks;  ///< of timbers; none: all
  std::vector<PrintedList> lists;  ///< none: all
  std::string day;                 ///< the day of printing as the shell says it, "" for none: core asks no clock
  const OrderCheck* check =
      nullptr;                ///< of the book's own order; null: the raising's pages say that it was not checked
  std::string label_sheet{};  ///< of label_sheets() (pages/labels.h) by its key, "" for plain paper to cut; kLabels
};

/// The book with its solved frame, in the words and units of `voice`. Every page bears its number, the book's name, the
/// day and a short digest of the book, so that two printouts can be told apart.
/// Errors: the frame's own; kMissing ("mark"); kEmpty ("paper") where there is nothing to print.
[[nodiscard]] Result<paper::Document> print(const Book& book, const BookModel& model, const PrintOptions& options,
                                            const Voice& voice);

}  // namespace bentbook
