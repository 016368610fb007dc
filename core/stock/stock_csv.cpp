#include "stock/stock_csv.h"

#include "measure/print.h"
#include "numeric/index.h"
#include "text/csv.h"

namespace bentbook {
namespace {

std::string size_cell(Length length, LengthForm form = LengthForm::kInchFraction) {
  const Printed printed = print_length(length, {form, 64, 0}, Marks::kAscii);
  if (!printed.rounded || length.count % Length::kPerMm != 0) return csv::quoted(printed.text);
  return print_length(length, {LengthForm::kMm, 64, 0}, Marks::kAscii).text;
}
std::string feet_cell(Length length) { return size_cell(length, LengthForm::kFeetInches); }

void add(std::string& line, const std::string& cell) { (line += ',') += cell; }

}  // namespace

std::string write_order_rows(const StockOrder& order) {
  std::string out = "breadth,depth,species,length,count,board_feet,price\r\n";
  for (const OrderRow& row : order_rows(order)) {
    out += size_cell(row.section.breadth);
    add(out, size_cell(row.section.depth));
    add(out, csv::quoted(csv::guarded(row.species)));
    add(out, feet_cell(row.length));
    add(out, std::to_string(row.count));
    add(out, print_fixed(row.board_feet, 2));
    add(out, row.price > 0 ? print_fixed(static_cast<double>(row.price) / 100, 2) : std::string{});
    out += "\r\n";
  }
  return out;
}

std::string write_cutting_plan(const StockOrder& order) {
  std::string out = "stick,breadth,depth,species,stick_length,yard,what,mark,from,length\r\n";
  for (const StockGroup& group : order.groups) {
    for (const PlannedStick& stick : group.sticks) {
      std::string head = std::to_string(stick.number);
      add(head, size_cell(group.section.breadth));
      add(head, size_cell(group.section.depth));
      add(head, csv::quoted(csv::guarded(group.species)));
      add(head, feet_cell(stick.length));
      add(head, csv::quoted(csv::guarded(stick.yard)));
      const auto line = [&](const char* what, const std::string& mark, Length from, Length length) {
        out += head;
        add(out, what);
        add(out, csv::quoted(csv::guarded(mark)));
        add(out, feet_cell(from));
        add(out, feet_cell(length));
        out += "\r\n";
      };
      for (const StickPiece& piece : stick.pieces)
        line("piece", order.pieces[at(piece.piece)].mark, piece.from, piece.length);
      for (const Offcut& offcut : stick.offcuts)
        if (offcut.kept) line("offcut", {}, offcut.from, offcut.length);
    }
  }
  return out;
}

}  // namespace bentbook
