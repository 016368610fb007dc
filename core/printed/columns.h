#pragma once
/// Parts of different heights in columns of one height, in their order: down the first, then down the next.

#include <span>
#include <vector>

#include "paper/page.h"

namespace bentbook {

struct PagePart {
  paper::Page drawn;
  double height = 0;  ///< mm
  bool kept = false;  ///< with the part behind it; of PageFlow alone (flow.h)
};

/// How many of the parts `columns` of that height hold, and the lowest edge that they reach.
struct ColumnsFilled {
  std::size_t parts = 0;
  double height = 0;
};
/// Puts the parts that fit on the page; with no page it only counts. The first column's left edge and the top at `at`,
/// one column `step` mm beside the other, `gap` between two parts. The first part is put even where it is
/// higher than a column.
ColumnsFilled fill_columns(std::span<const PagePart> parts, int columns, double height, double step, double gap,
                           draw::Point at, paper::Page* page);
/// The least height at which all of them fit; not above `most` if that is too little.
[[nodiscard]] double least_height(std::span<const PagePart> parts, int columns, double gap, double most);

}  // namespace bentbook
