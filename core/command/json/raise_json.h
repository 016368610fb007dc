#pragma once
/// Orders of raising as JSON for programs. Keys stand in native-app/README.md.

#include <string>

#include "book/book.h"
#include "raising/check.h"
#include "raising/search/search.h"
#include "words/words.h"

namespace bentbook {

/// `check`: of `book`'s order, each step explained.
[[nodiscard]] std::string order_json(const Book& book, const Frame& frame, const OrderCheck& check, const Voice& voice);
/// The same of an order that was searched for; `book` has it as its own.
[[nodiscard]] std::string found_json(const FoundOrder& found, const Book& book, const Frame& frame,
                                     const OrderCheck& check, const Voice& voice);

}  // namespace bentbook
