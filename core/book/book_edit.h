#pragma once
/// Edits of a book: each takes the book as it is and gives the one that follows, for history.h to keep.

#include <span>
#include <string_view>

#include "book/book.h"

namespace bentbook {

/// The override of one timber, put in the place of the one before it; one that says nothing is taken out.
[[nodiscard]] Book with_override(Book book, const Override& override);
[[nodiscard]] bool says_something(const Override& override);
/// What is said of this timber now, or an empty override for it.
[[nodiscard]] Override override_of(const Book& book, std::string_view mark);
/// …with section, wood and species as the timber has them in `frame` (may be null) where it does not set them apart.
[[nodiscard]] Override filled_override(const Book& book, std::string_view mark, const Frame* frame);

/// A timber entered by hand, put in the place of the one of the same mark or added.
[[nodiscard]] Book with_added(Book book, const HandTimber& timber);
[[nodiscard]] Book with_all_added(Book book, std::span<const HandTimber> timbers);
[[nodiscard]] Book without_added(Book book, std::string_view mark);

/// A note on a timber; an empty text takes it away.
[[nodiscard]] Book with_note(Book book, std::string_view mark, std::string_view text);
[[nodiscard]] std::string_view note_of(const Book& book, std::string_view mark);

/// Gives a meeting this joint. A meeting that cannot take it keeps its own.
[[nodiscard]] Book with_joint(Book book, Meeting meeting, const JointType& type);

/// A bay more after bay `index` (plan.h), or one taken out; labels of the other bents stay. The last bay stays.
[[nodiscard]] Book with_bay(Book book, int index, Length width);
[[nodiscard]] Book without_bay(Book book, int index);

}  // namespace bentbook
