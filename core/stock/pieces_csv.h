#pragma once
/// A list of pieces to be cut, as comma-separated values.
///
/// The first line names the columns, in any order; the separator is the comma, semicolon or tab that stands there.
///
///   length          needed; more than nothing
///   count           empty: 1
///   mark            empty: the line's number
///   breadth depth   nominal section; empty: of none
///   species
///
/// Lengths as they are typed (parse.h), bare numbers in the unit given. Columns of other names are passed over.

#include <string_view>

#include "measure/parse.h"
#include "stock/order.h"

namespace bentbook {

/// One bad line: its number in the file (from 1), the column, and what is wrong there (`at`: byte in the cell).
struct PieceTrouble {
  int line = 1;
  std::string column;
  Error error;
};
struct PiecesCsv {
  std::vector<StockPiece> pieces;
  std::vector<PieceTrouble> troubles;
};

/// Never fails. Reasons besides those of parse.h: kMissing (column or cell), kNotPositive, kTooLarge (more than 10 000
/// pieces), kConflict (a column twice), kSyntax (quotes that do not close; more cells than columns).
[[nodiscard]] PiecesCsv read_pieces_csv(std::string_view bytes, BareUnit bare);

}  // namespace bentbook
