#include "frame/list/csv_write.h"

#include <array>

#include "frame/keys.h"
#include "frame/list/csv_columns.h"
#include "measure/print.h"
#include "text/csv.h"

namespace bentbook {
namespace {

using csv::Column;
using csv::kColumns;
using csv::quoted;

std::string exact_mm(Length value) {
  const std::int64_t size = value.count < 0 ? -value.count : value.count;
  // One count is 1.25e-7 mm: nine places hold every value.
  std::string places = std::to_string(size % Length::kPerMm * 125);
  places.insert(0, 9 - places.size(), '0');
  const std::string text = std::to_string(size / Length::kPerMm) + "." + places;
  return (value.count < 0 ? "-" : "") + without_trailing_zeros(text) + " mm";
}

std::string exact(Length value) {
  const Printed printed = print_length(value, {LengthForm::kFeetInches, 64, 0}, Marks::kAscii);
  return printed.shown == value ? printed.text : exact_mm(value);
}

std::string exact(Angle value) { return without_trailing_zeros(print_degrees(value, 9, Marks::kAscii)); }

using Row = std::array<std::string, kColumns.size()>;

std::string& at(Row& row, Column column) { return row[static_cast<std::size_t>(column)]; }

void append(std::string& out, const Row& row) {
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (i > 0) out += ',';
    out += quoted(row[i]);
  }
  out += "\r\n";
}

Row timber_row(const HandTimber& t) {
  Row row;
  at(row, Column::kMark) = csv::guarded(t.mark);
  at(row, Column::kKind) = keys::word(keys::kTimberKind, t.kind);
  at(row, Column::kBreadth) = exact(t.wood.nominal.breadth);
  at(row, Column::kDepth) = exact(t.wood.nominal.depth);
  at(row, Column::kDesignBreadth) = exact(t.wood.design.breadth);
  at(row, Column::kDesignDepth) = exact(t.wood.design.depth);
  at(row, Column::kActualBreadth) = exact(t.wood.actual.breadth);
  at(row, Column::kActualDepth) = exact(t.wood.actual.depth);
  at(row, Column::kLength) = exact(t.length);
  at(row, Column::kAngleA) = exact(t.a.angle);
  at(row, Column::kTiltA) = exact(t.a.tilt);
  at(row, Column::kAngleB) = exact(t.b.angle);
  at(row, Column::kTiltB) = exact(t.b.tilt);
  at(row, Column::kBow) = exact(t.wood.bow);
  at(row, Column::kTopReference) = t.wood.top_is_reference ? "1" : "3";
  at(row, Column::kSideReference) = t.wood.near_is_reference ? "2" : "4";
  at(row, Column::kSpecies) = csv::guarded(t.species.name);
  if (t.placed) {
    at(row, Column::kX) = exact(t.origin[0]);
    at(row, Column::kY) = exact(t.origin[1]);
    at(row, Column::kZ) = exact(t.origin[2]);
  }
  at(row, Column::kTurn) = exact(t.turn);
  at(row, Column::kRise) = exact(t.rise);
  at(row, Column::kRoll) = exact(t.roll);
  return row;
}

Row feature_row(const HandTimber& t, const HandFeature& f) {
  Row row;
  at(row, Column::kMark) = csv::guarded(t.mark);
  at(row, Column::kFeature) = keys::word(keys::kFeatureKind, f.kind);
  at(row, Column::kFace) = keys::word(keys::kFace, f.face);
  at(row, Column::kStation) = exact(f.station);
  at(row, Column::kOffset) = exact(f.offset);
  at(row, Column::kAlong) = exact(f.along);
  at(row, Column::kAcross) = exact(f.across);
  at(row, Column::kFeatureDepth) = exact(f.depth);
  at(row, Column::kDiameter) = exact(f.diameter);
  return row;
}

}  // namespace

std::string write_timbers_csv(std::span<const HandTimber> timbers) {
  std::string out;
  Row head;
  for (std::size_t i = 0; i < head.size(); ++i) head[i] = kColumns[i];
  append(out, head);
  for (const HandTimber& timber : timbers) {
    append(out, timber_row(timber));
    for (const HandFeature& feature : timber.features) append(out, feature_row(timber, feature));
  }
  return out;
}

}  // namespace bentbook
