#pragma once
/// The order and the cutting plan as comma-separated values; lines end in CR LF.

#include <string>

#include "stock/order.h"

namespace bentbook {

/// breadth,depth,species,length,count,board_feet,price: what is bought; no price where it is not known.
[[nodiscard]] std::string write_order_rows(const StockOrder& order);
/// stick,breadth,depth,species,stick_length,yard,what,mark,from,length: a line for each piece and each kept offcut.
[[nodiscard]] std::string write_cutting_plan(const StockOrder& order);

}  // namespace bentbook
