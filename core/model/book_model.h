#pragma once
/// solve(): from a book to everything that its screens and answers show.

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "frame/facts.h"
#include "frame/sheet/sheet.h"
#include "roof/rafter.h"

namespace bentbook {

/// Never changed once it is made; parts that an edit does not touch are shared with the model before it.
struct BookModel {
  std::shared_ptr<const Result<Frame>> frame;
  std::shared_ptr<const Result<RafterPair>> rafter;
};

[[nodiscard]] BookModel solve(const Book& book);
/// The same, solving only what differs between the two books.
[[nodiscard]] BookModel solve_again(const Book& book, const Book& was, const BookModel& before);

/// The sheet of the timber with that mark, for the saw in use; kMissing ("mark") where there is none, else the frame's
/// own error.
[[nodiscard]] Result<Sheet> sheet_of(const Book& book, const BookModel& model, std::string_view mark);

/// What the whole frame weighs and needs.
struct FrameTotals {
  int timbers = 0;
  double weight_lb = 0, volume = 0, board_feet = 0;
  /// Of all timbers alike; none: they differ.
  std::optional<std::string> species;
  std::optional<double> moisture;  ///< percent
  Vec3 cg;                         ///< of what is placed, in the building
};
[[nodiscard]] FrameTotals totals_of(const Frame& frame, Length stock_step = limits::kStockStep);

}  // namespace bentbook
