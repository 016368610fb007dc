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
    // What is kept together goes as one.
    std::size_t last = filled.parts;
    double high = parts[last].height;
    while (parts[last].kept && last + 1 < parts.size()) high += gap + parts[++last].height;
    if (y > 0 && (y + high > height || parts[filled.parts].begins)) {
      if (++column == columns) break;
      y = 0;
    }
    if (filled.parts > 0 && high > height) break;
    for (; filled.parts <= last; ++filled.parts) {
      const PagePart& part = parts[filled.parts];
      if (page != nullptr) paper::put(*page, part.drawn, {at.x + column * step, at.y + y});
      y += part.height;
      filled.height = std::max(filled.height, y);
      y += gap;
    }
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
