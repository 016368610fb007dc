#pragma once
/// Frames as JSON for programs. Keys stand in native-app/README.md.

#include <string>

#include "book/book.h"
#include "model/book_model.h"
#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string members_json(const Book& book, const Frame& frame, const Voice& voice);
/// Findings of the frame and how many warnings each timber has.
[[nodiscard]] std::string check_json(const Book& book, const Frame& frame, const Voice& voice);

}  // namespace bentbook
