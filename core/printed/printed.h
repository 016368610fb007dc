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

enum class PrintedKind : std::uint8_t { kSheets, kPatterns, kLabels, kLists, kRaising };

struct PrintOptions {
  PrintedKind what = PrintedKind::kSheets;
  paper::PageSize page = paper::PageSize::kA4;
  std::vector<std::string> marks;  ///< of timbers; none: all
  std::string day;                 ///< the day of printing as the shell says it, "" for none: core asks no clock
  std::string label_sheet{};       ///< of label_sheets() (labels.h) by its key, "" for plain paper to cut; kLabels
};

/// The book with its solved frame, in the words and units of `voice`. Every page bears its number, the book's name, the
/// day and a short digest of the book, so that two printouts can be told apart.
/// Errors: the frame's own; kMissing ("mark") with what was asked; kEmpty ("paper") where there is nothing to print.
[[nodiscard]] Result<paper::Document> print(const Book& book, const BookModel& model, const PrintOptions& options,
                                            const Voice& voice);

}  // namespace bentbook
