#pragma once
/// Inside the timber sheets: what stands on one, as parts that find their place on pages.

#include <vector>

#include "book/book.h"
#include "frame/sheet/face_marks.h"
#include "printed/columns.h"
#include "words/words.h"

namespace bentbook {

struct SheetSubject {
  const Book& book;
  const Frame& frame;
  const Sheet& sheet;
  Voice voice;
  [[nodiscard]] const Timber& timber() const { return frame.timbers[static_cast<std::size_t>(sheet.timber)]; }
};

/// Marks, kind, length, section, weight; the section with its faces' numbers at the right; what to mind.
[[nodiscard]] PagePart sheet_head(const SheetSubject& subject, double width);
/// On a page that goes on with the same timber: "P-A1" and that it does, a line under it.
[[nodiscard]] PagePart sheet_head_again(const SheetSubject& subject, double width);
/// The four faces as they are rolled, each on as many parts as it needs at that height. `side`: of the piece as it is
/// drawn, mm at most.
[[nodiscard]] std::vector<std::vector<PagePart>> face_parts(const SheetSubject& subject, double width, double height,
                                                            double side);
/// Every step with its box and what it is set to; what to mind at the saw, once; what a tape finds.
[[nodiscard]] std::vector<PagePart> work_parts(const SheetSubject& subject, double width);

}  // namespace bentbook
