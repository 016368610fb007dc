#pragma once
/// What all printed pages have alike: how much of them is theirs to fill, sizes of letters, and the line at the foot.

#include <initializer_list>
#include <vector>

#include "book/book.h"
#include "paper/page.h"
#include "printed/columns.h"
#include "printed/printed.h"
#include "words/words.h"

namespace bentbook {

/// mm kept free on every side; only the foot's line stands in it.
inline constexpr double kPageMargin = 12;
/// mm of an em. Capitals of the smallest letters stand 2.4 mm high: read at arm's length, off a wall.
inline constexpr double kSmallLetters = 3.4;
inline constexpr double kBodyLetters = 4;
inline constexpr double kStrongLetters = 5;
inline constexpr double kAnswerLetters = 7;
inline constexpr double kMarkLetters = 11;

/// mm from the page's left and top edges.
struct PageRoom {
  double left = 0, top = 0, right = 0, bottom = 0;
  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double height() const { return bottom - top; }
};
[[nodiscard]] PageRoom room_of(paper::PageSize size, bool lying = false);

/// Puts the foot on every page, its letters on a line 7 mm off the page's lower edge: the book's name and the day at
/// the left, the book's digest and "3 / 12" at the right. Names the document after the book where it has no title.
void finish_pages(paper::Document& document, const Book& book, const PrintOptions& options, const Voice& voice);

/// What every page of a kind has to say at its lower edge, over the foot, a thin line above it.
[[nodiscard]] PagePart caution_foot(std::initializer_list<Msg> cautions, Language language, double width);

/// The timbers that were asked for, in the frame's order; all, where none was named. Errors: kMissing ("mark"), kEmpty
/// ("paper").
[[nodiscard]] Result<std::vector<int>> timbers_asked(const Frame& frame, const PrintOptions& options);

/// Eight figures that differ between two states of a book: the checksum of its file.
[[nodiscard]] std::string book_digest(const Book& book);

}  // namespace bentbook
