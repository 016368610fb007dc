#pragma once
/// A book as a file. File form in README.md beside this file.

#include <string>
#include <string_view>

#include "book/book.h"
#include "numeric/result.h"

namespace bentbook {

inline constexpr int kBookVersion = 1;

/// Canonical bytes: reading and writing them again gives the same bytes.
[[nodiscard]] std::string write_book(const Book& book);
/// Errors: kSyntax (`at`: byte offset; where = "book" or the path of the member of a wrong
/// type: "frame.bays.2.width"), kTooDeep, kNewerVersion (limit: its version), and a member's own range error. The bytes
/// given are never changed.
///
/// An identity that is none (is_book_id) is not taken: the book's is empty, and `refused` gets what stood there.
[[nodiscard]] Result<Book> read_book(std::string_view bytes, std::string* refused = nullptr);

}  // namespace bentbook
