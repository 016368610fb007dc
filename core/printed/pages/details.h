#pragma once
/// Joints enlarged on a timber's sheet: what is askew or inside a face, at a round scale and with its own measures.

#include <span>
#include <string>
#include <vector>

#include "printed/pages/pattern_sheet.h"
#include "printed/pages/sheet_parts.h"

namespace bentbook {

/// One drawing, end A on top as the faces have it, and the words over it. Figures are those beside the tape, counted
/// from the tip or the zero line that the words name.
struct DrawnDetail {
  std::string title;
  std::vector<std::string> where;  ///< a line for each face and end
  PatternLayers drawn;
};

/// Each end that is askew and each kind of joint once, alike ones together with their places. None is wider than the
/// page.
[[nodiscard]] std::vector<DrawnDetail> drawn_details(const SheetSubject& subject, double width);
[[nodiscard]] PagePart detail_part(const DrawnDetail& detail, double width);
/// Side by side, as many as a page's width has room for.
[[nodiscard]] std::vector<PagePart> detail_rows(std::span<const DrawnDetail> details, double width);

}  // namespace bentbook
