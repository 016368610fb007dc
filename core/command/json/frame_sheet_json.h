#pragma once
/// A timber's sheet as JSON for programs. Keys stand in native-app/README.md.

#include <string>

#include "book/book.h"
#include "model/book_model.h"
#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string sheet_json(const Book& book, const Frame& frame, const Sheet& sheet, const Voice& voice);

}  // namespace bentbook
