#pragma once
/// The raising as plain text to pin on the wall: 80 columns at most, words wrapped (a mark longer than that is left
/// whole). For each step what comes, its weight, slings, gear and crane, temporaries, cautions; then truck loads and
/// stacks. The verdict reads "no collapse found, as assumed", never "safe".

#include <string>

#include "book/book.h"
#include "frame/plan.h"
#include "raising/check.h"
#include "raising/search/search.h"
#include "words/words.h"

namespace bentbook {

/// The book's own order. With `check`, that of the same order: ways in, verdicts and faults too; without it the text
/// says that it was not checked.
[[nodiscard]] std::string raising_text(const Book& book, const Frame& frame, const Voice& voice,
                                       const OrderCheck* check = nullptr);
/// Truck loads and stacks alone.
[[nodiscard]] std::string raising_lists_text(const Book& book, const Frame& frame, const Voice& voice);
/// How the search ended, and what it could not bring in.
[[nodiscard]] std::string found_order_text(const FoundOrder& found, const Frame& frame, const Voice& voice);
/// The figures of a pick that is more than crane, gear or crew can do.
[[nodiscard]] std::string cant_pick_text(const FoundOrder& found, const Stuck& stuck, const Frame& frame,
                                         const Voice& voice);

/// Lines of at most 80 characters (UTF-8), broken at blanks; the first starts with `lead`, the others with as many
/// blanks.
[[nodiscard]] std::string wrapped(std::string_view lead, std::string_view text);

}  // namespace bentbook
