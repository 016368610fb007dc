#include "printed/columns.h"

#include <algorithm>

#include "paper/page_part.h"

namespace bentbook {

ColumnsFilled fill_columns(std::span<const PagePart> parts, int columns, double height, double step, double gap,
                           draw::Point at, paper::Page* page) {
  ColumnsFilled filled;
  int column = 0;
  double y = 0;
  while (filled.parts < parts.size()) {
    const PagePart& part = parts[filled.parts];
    if (y > 0 && y + part.height > height) {
      if (++column == columns) break;
      y = 0;
    }
    if (filled.parts > 0 && part.height > height) break;
    if (page != nullptr) paper::put(*page, part.drawn, {at.x + column * step, at.y + y});
    y += part.height;
    filled.height = std::max(filled.height, y);
    y += gap;
    ++filled.parts;
  }
  return filled;
}

double least_height(std::span<const PagePart> parts, int columns, double gap, double most) {
  double low = 0, high = most;
  for (int i = 0; i < 24 && high - low > 0.1; ++i) {
    const double middle = (low + high) / 2;
    const ColumnsFilled filled = fill_columns(parts, columns, middle, 0, gap, {}, nullptr);
    (filled.parts == parts.size() && filled.height <= middle ? high : low) = middle;
  }
  return high;
}

}  // namespace bentbook
