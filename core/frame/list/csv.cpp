#include "frame/list/csv.h"

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <optional>
#include <utility>

#include "frame/keys.h"
#include "frame/list/csv_columns.h"
#include "frame/placing/hand_timber.h"
#include "numeric/sorting.h"
#include "text/csv.h"
#include "text/invisible.h"
#include "text/utf8.h"

namespace bentbook {
namespace {

using csv::Column;
using csv::kColumns;
using csv::name_of;
using csv::Record;
using csv::Records;
using csv::trimmed;

/// The cells of one line by column, and the first trouble met while they are read.
class Line {
 public:
  Line(const Record& record, const std::vector<int>& columns, BareUnit bare) : bare_(bare) {
    for (std::size_t i = 0; i < record.cells.size() && i < columns.size(); ++i)
      if (columns[i] >= 0) cells_[static_cast<std::size_t>(columns[i])] = trimmed(record.cells[i]);
  }

  [[nodiscard]] std::string_view cell(Column column) const { return cells_[static_cast<std::size_t>(column)]; }
  /// …of words, as they were before they were guarded.
  [[nodiscard]] std::string_view words(Column column) const { return csv::unguarded(cell(column)); }
  [[nodiscard]] bool has(Column column) const { return !cell(column).empty(); }
  [[nodiscard]] const std::optional<std::pair<Column, Error>>& trouble() const { return trouble_; }

  void fail(Column column, Error error) {
    if (error.where.empty()) error.where = name_of(column);
    if (!trouble_) trouble_ = {column, std::move(error)};
  }
  void need(Column column) {
    if (!has(column)) fail(column, {ErrorCode::kMissing, {}, -1, 0});
  }
  void length(Column column, Length& out) {
    if (!has(column)) return;
    take(column, parse_length(cell(column), bare_), out);
  }
  void angle(Column column, Angle& out) {
    if (!has(column)) return;
    take(column, parse_angle(cell(column)), out);
  }
  template <class Enum, std::size_t N>
  void word(Column column, const std::array<std::string_view, N>& words, Enum& out) {
    if (!has(column)) return;
    const int i = keys::index_of(words, cell(column));
    if (i < 0) return fail(column, {ErrorCode::kConflict, {}, 0, 0});
    out = static_cast<Enum>(i);
  }

 private:
  template <class T>
  void take(Column column, const Result<T>& read, T& out) {
    if (read)
      out = *read;
    else
      fail(column, {read.error().code, {}, read.error().at, read.error().limit});
  }

  BareUnit bare_;
  std::array<std::string_view, kColumns.size()> cells_;
  std::optional<std::pair<Column, Error>> trouble_;
};

void read_wood(Line& line, Wood& wood) {
  line.need(Column::kBreadth);
  line.need(Column::kDepth);
  line.length(Column::kBreadth, wood.nominal.breadth);
  line.length(Column::kDepth, wood.nominal.depth);
  wood.design = wood.nominal;
  line.length(Column::kDesignBreadth, wood.design.breadth);
  line.length(Column::kDesignDepth, wood.design.depth);
  wood.actual = wood.design;
  line.length(Column::kActualBreadth, wood.actual.breadth);
  line.length(Column::kActualDepth, wood.actual.depth);
  line.length(Column::kBow, wood.bow);
  Face top = Face::kTop, side = Face::kNear;
  line.word(Column::kTopReference, keys::kFace, top);
  line.word(Column::kSideReference, keys::kFace, side);
  if (top != Face::kTop && top != Face::kBottom) line.fail(Column::kTopReference, {ErrorCode::kConflict, {}, 0, 0});
  if (side != Face::kNear && side != Face::kFar) line.fail(Column::kSideReference, {ErrorCode::kConflict, {}, 0, 0});
  wood.top_is_reference = top == Face::kTop;
  wood.near_is_reference = side == Face::kNear;
}

HandTimber read_timber(Line& line, std::span<const Species> species) {
  HandTimber timber;
  timber.mark = line.words(Column::kMark);
  line.word(Column::kKind, keys::kTimberKind, timber.kind);
  read_wood(line, timber.wood);
  line.need(Column::kLength);
  line.length(Column::kLength, timber.length);
  line.angle(Column::kAngleA, timber.a.angle);
  line.angle(Column::kTiltA, timber.a.tilt);
  line.angle(Column::kAngleB, timber.b.angle);
  line.angle(Column::kTiltB, timber.b.tilt);
  if (!species.empty()) timber.species = species.front();
  if (line.has(Column::kSpecies)) {
    const auto known = std::find_if(species.begin(), species.end(),
                                    [&](const Species& s) { return s.name == line.words(Column::kSpecies); });
    if (known == species.end())
      line.fail(Column::kSpecies, {ErrorCode::kConflict, {}, 0, 0});
    else
      timber.species = *known;
  }
  timber.placed = line.has(Column::kX) || line.has(Column::kY) || line.has(Column::kZ);
  line.length(Column::kX, timber.origin[0]);
  line.length(Column::kY, timber.origin[1]);
  line.length(Column::kZ, timber.origin[2]);
  line.angle(Column::kTurn, timber.turn);
  line.angle(Column::kRise, timber.rise);
  line.angle(Column::kRoll, timber.roll);
  return timber;
}

HandFeature read_feature(Line& line) {
  HandFeature feature;
  line.word(Column::kFeature, keys::kFeatureKind, feature.kind);
  line.need(Column::kFace);
  line.word(Column::kFace, keys::kFace, feature.face);
  if (static_cast<int>(feature.face) == 0) line.fail(Column::kFace, {ErrorCode::kConflict, {}, 0, 0});
  line.need(Column::kStation);
  line.length(Column::kStation, feature.station);
  line.length(Column::kOffset, feature.offset);
  line.length(Column::kAlong, feature.along);
  line.length(Column::kAcross, feature.across);
  line.length(Column::kFeatureDepth, feature.depth);
  line.length(Column::kDiameter, feature.diameter);
  return feature;
}

class Reader {
 public:
  Reader(BareUnit bare, std::span<const Species> species) : bare_(bare), species_(species) {}

  CsvTimbers read(std::string_view bytes) {
    Records records(bytes);
    if (!records.more()) {
      trouble(1, "mark", {ErrorCode::kEmpty, "mark", -1, 0});
      return std::move(out_);
    }
    if (!head(records.next())) return std::move(out_);
    while (records.more()) {
      const Record record = records.next();
      if (record.cells.size() > 1 || !trimmed(record.cells[0]).empty()) line(record);
    }
    finish();
    return std::move(out_);
  }

 private:
  struct Pending {
    HandTimber timber;
    int line = 1;
    std::vector<int> feature_lines;
    bool bad = false;
  };

  void trouble(int line, std::string_view column, Error error) {
    out_.troubles.push_back({line, std::string(column), std::move(error)});
  }

  bool head(const Record& record) {
    for (const std::string& cell : record.cells) {
      const int column = keys::index_of(kColumns, trimmed(cell));
      const bool twice = column >= 0 && std::find(columns_.begin(), columns_.end(), column) != columns_.end();
      if (twice) trouble(1, trimmed(cell), {ErrorCode::kConflict, std::string(trimmed(cell)), -1, 0});
      columns_.push_back(column);
    }
    for (const Column needed : {Column::kMark, Column::kBreadth, Column::kDepth, Column::kLength})
      if (std::find(columns_.begin(), columns_.end(), static_cast<int>(needed)) == columns_.end())
        trouble(1, name_of(needed), {ErrorCode::kMissing, std::string(name_of(needed)), -1, 0});
    return out_.troubles.empty();
  }

  void line(const Record& record) {
    Line cells(record, columns_, bare_);
    if (record.open_quote || record.cells.size() > columns_.size())
      cells.fail(Column::kMark, {ErrorCode::kSyntax, {}, -1, 0});
    cells.need(Column::kMark);
    const std::string mark(cells.words(Column::kMark));
    if (!is_text(mark)) cells.fail(Column::kMark, {ErrorCode::kSyntax, {}, -1, 0});
    if (const auto code = invisible_in(mark)) cells.fail(Column::kMark, {ErrorCode::kUnexpected, {}, -1, *code});
    if (cells.has(Column::kFeature))
      feature(cells, mark, record.line);
    else
      timber(cells, mark, record.line);
    if (cells.trouble()) trouble(record.line, name_of(cells.trouble()->first), cells.trouble()->second);
  }

  void timber(Line& cells, const std::string& mark, int line) {
    Pending pending{read_timber(cells, species_), line, {}, false};
    // Lines that follow belong to this one, so that they do not land on the first of that mark.
    if (by_mark_.count(mark) != 0) cells.fail(Column::kMark, {ErrorCode::kConflict, {}, -1, 0});
    pending.bad = cells.trouble().has_value();
    if (!mark.empty()) by_mark_[mark] = pending_.size();
    pending_.push_back(std::move(pending));
  }

  void feature(Line& cells, const std::string& mark, int line) {
    const HandFeature read = read_feature(cells);
    const auto owner = by_mark_.find(mark);
    if (owner == by_mark_.end()) return cells.fail(Column::kMark, {ErrorCode::kMissing, {}, -1, 0});
    Pending& pending = pending_[owner->second];
    pending.timber.features.push_back(read);
    pending.feature_lines.push_back(line);
    if (cells.trouble()) pending.bad = true;
  }

  /// What reads well must also make a timber.
  void finish() {
    for (Pending& pending : pending_) {
      if (pending.bad) continue;
      const auto solved = solve_hand_timber(pending.timber);
      if (solved) {
        out_.timbers.push_back(std::move(pending.timber));
        out_.lines.push_back(pending.line);
        continue;
      }
      const Error& error = solved.error();
      const bool of_feature = error.at >= 0 && error.at < static_cast<int>(pending.feature_lines.size());
      const int line = of_feature ? pending.feature_lines[static_cast<std::size_t>(error.at)] : pending.line;
      trouble(line, error.where, {error.code, error.where, -1, error.limit});
    }
    sort_by(out_.troubles, [](const CsvTrouble& a, const CsvTrouble& b) { return a.line < b.line; });
  }

  BareUnit bare_;
  std::span<const Species> species_;
  std::vector<int> columns_;
  std::vector<Pending> pending_;
  std::map<std::string, std::size_t, std::less<>> by_mark_;
  CsvTimbers out_;
};

}  // namespace

CsvTimbers read_timbers_csv(std::string_view bytes, BareUnit bare, std::span<const Species> species) {
  return Reader(bare, species).read(bytes);
}

}  // namespace bentbook
