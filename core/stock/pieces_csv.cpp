#include "stock/pieces_csv.h"

#include <algorithm>
#include <array>

#include "frame/keys.h"
#include "text/csv.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

enum PieceColumn { kLengthOf, kCountOf, kMarkOf, kBreadthOf, kDepthOf, kSpeciesOf };
constexpr std::array<std::string_view, 6> kPieceColumns = {"length", "count", "mark", "breadth", "depth", "species"};
constexpr std::size_t kMostPieces = 10'000;

class PiecesReader {
 public:
  explicit PiecesReader(BareUnit bare) : bare_(bare) {}

  PiecesCsv read(std::string_view bytes) {
    csv::Records records(bytes);
    if (!records.more()) {
      trouble(1, "length", {ErrorCode::kEmpty, {}, -1, 0});
      return std::move(out_);
    }
    if (!head(records.next())) return std::move(out_);
    while (records.more()) {
      const csv::Record record = records.next();
      if (record.cells.size() > 1 || !csv::trimmed(record.cells[0]).empty()) line(record);
    }
    return std::move(out_);
  }

 private:
  void trouble(int line, std::string_view column, Error error) {
    error.where = column;
    out_.troubles.push_back({line, std::string(column), std::move(error)});
  }

  bool head(const csv::Record& record) {
    for (const std::string& cell : record.cells) {
      const int column = keys::index_of(kPieceColumns, csv::trimmed(cell));
      if (column >= 0 && std::find(columns_.begin(), columns_.end(), column) != columns_.end())
        trouble(1, csv::trimmed(cell), {ErrorCode::kConflict, {}, -1, 0});
      columns_.push_back(column);
    }
    if (std::find(columns_.begin(), columns_.end(), kLengthOf) == columns_.end())
      trouble(1, "length", {ErrorCode::kMissing, {}, -1, 0});
    return out_.troubles.empty();
  }

  void line(const csv::Record& record) {
    std::array<std::string_view, kPieceColumns.size()> cells;
    if (record.open_quote || record.cells.size() > columns_.size())
      return trouble(record.line, "length", {ErrorCode::kSyntax, {}, -1, 0});
    for (std::size_t i = 0; i < record.cells.size(); ++i)
      if (columns_[i] >= 0) cells[static_cast<std::size_t>(columns_[i])] = csv::trimmed(record.cells[i]);
    StockPiece piece{std::to_string(record.line), {{}, {}}, {}, {}, 0};
    std::int64_t count = 1;
    if (!length(record.line, kLengthOf, cells[kLengthOf], piece.length)) return;
    if (!cells[kBreadthOf].empty() && !length(record.line, kBreadthOf, cells[kBreadthOf], piece.section.breadth))
      return;
    if (!cells[kDepthOf].empty() && !length(record.line, kDepthOf, cells[kDepthOf], piece.section.depth)) return;
    if (!cells[kCountOf].empty()) {
      const auto read = parse_count(cells[kCountOf]);
      if (!read) return trouble(record.line, "count", read.error());
      count = *read;
    }
    for (const PieceColumn column : {kMarkOf, kSpeciesOf})
      if (!is_text(cells[column])) return trouble(record.line, kPieceColumns[column], {ErrorCode::kSyntax, {}, -1, 0});
    if (!cells[kMarkOf].empty()) piece.mark = csv::unguarded(cells[kMarkOf]);
    piece.species = csv::unguarded(cells[kSpeciesOf]);
    if (out_.pieces.size() + static_cast<std::size_t>(count) > kMostPieces)
      return trouble(record.line, "count", {ErrorCode::kTooLarge, {}, -1, static_cast<std::int64_t>(kMostPieces)});
    out_.pieces.insert(out_.pieces.end(), static_cast<std::size_t>(count), piece);
  }

  bool length(int line, PieceColumn column, std::string_view cell, Length& out) {
    const auto read = parse_length(cell, bare_);
    if (read && read->count > 0) {
      out = *read;
      return true;
    }
    trouble(line, kPieceColumns[column],
            read           ? Error{ErrorCode::kNotPositive, {}, -1, 0}
            : cell.empty() ? Error{ErrorCode::kMissing, {}, -1, 0}
                           : read.error());
    return false;
  }

  BareUnit bare_;
  std::vector<int> columns_;
  PiecesCsv out_;
};

}  // namespace

PiecesCsv read_pieces_csv(std::string_view bytes, BareUnit bare) { return PiecesReader(bare).read(bytes); }

}  // namespace bentbook
