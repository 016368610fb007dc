#pragma once
/// Labels for timbers: mark, kind, size, weight, an arrow toward end A, and the code that opens the timber's page on a
/// phone without a network (shop/log/chunk.h). On sheets of labels as they are sold, or on plain paper to be cut.

#include <span>
#include <string_view>

#include "printed/printed.h"

namespace bentbook {

/// A sheet of labels: so many of one size, in the middle of the page, the columns `gap` apart and the rows touching;
/// mm. Source: SOURCES.md, "label sheets".
struct LabelSheet {
  std::string_view key;  ///< columns x rows, as commands have it
  paper::PageSize page = paper::PageSize::kA4;
  int columns = 1, rows = 1;
  double width = 0, height = 0, gap = 0;
  bool cut = false;  ///< plain paper, with lines to cut along
  /// Left and top of a label; column and row from 0.
  [[nodiscard]] draw::Point corner(int column, int row) const;
};
[[nodiscard]] std::span<const LabelSheet> label_sheets();
/// That of the key, "" being plain paper of that size; null: no such sheet.
[[nodiscard]] const LabelSheet* find_label_sheet(std::string_view key, paper::PageSize page);

/// A label a timber, row by row, on options.label_sheet; the sheet gives the page. A book that has no identity yet has
/// no codes: its labels say what gives it one. Errors: kUnknownOption ("labels"); as print().
[[nodiscard]] Result<paper::Document> print_labels(const Book& book, const BookModel& model,
                                                   const PrintOptions& options, const Voice& voice);

}  // namespace bentbook
