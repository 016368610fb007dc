#include "fuzz.h"
#include "stock/pieces_csv.h"
#include "stock/stock_csv.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  PiecesCsv list = read_pieces_csv(fuzz::text_of(data, size), BareUnit::kInch);
  int before = 0;
  for (const PieceTrouble& trouble : list.troubles) {
    fuzz::hold(trouble.line >= before && !trouble.column.empty());
    before = trouble.line;
  }
  // What was read is planned, whole, or it is said why not.
  if (list.pieces.size() > 60) list.pieces.resize(60);
  const std::size_t asked = list.pieces.size();
  const StockOrder order = plan_stock(std::move(list.pieces), {});
  std::size_t planned = 0;
  bool troubled = false;
  for (const StockGroup& group : order.groups) {
    troubled |= group.trouble.has_value();
    for (const PlannedStick& stick : group.sticks) planned += stick.pieces.size();
  }
  fuzz::hold(troubled ? planned < asked : planned == asked);
  fuzz::hold(!write_cutting_plan(order).empty() && !write_order_rows(order).empty());
  return 0;
}
