#pragma once
/// Frames as lines of text.

#include <string>

#include "book/book.h"
#include "frame/sheet/sheet.h"
#include "model/book_model.h"
#include "words/words.h"

namespace bentbook {

/// "P-A1, P-A2, P-A3, P-A4 and 7 more".
[[nodiscard]] std::string marks_in_short(std::vector<std::string> marks, const Voice& voice);
[[nodiscard]] std::string check_text(const Book& book, const Frame& frame, const Voice& voice);
/// What wood the weight is of: "Eastern white pine at 20 %".
[[nodiscard]] std::string totals_wood_text(const FrameTotals& totals, const Voice& voice);
/// Timbers, weight and board feet in one line.
[[nodiscard]] std::string totals_text(const FrameTotals& totals, const Voice& voice);
[[nodiscard]] std::string members_text(const Frame& frame, const Voice& voice);
[[nodiscard]] std::string sheet_text(const Book& book, const Frame& frame, const Sheet& sheet, const Voice& voice);
/// One step of the sheet in a line: what is made, where.
[[nodiscard]] std::string step_text(const Frame& frame, const Sheet& sheet, const BenchStep& step, const Voice& voice);
[[nodiscard]] std::string saw_cut_text(const SawCut& cut, SawKind saw, const Voice& voice);

}  // namespace bentbook
