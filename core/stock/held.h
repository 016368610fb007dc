#pragma once
/// What the user does to the plan by hand: a piece held to its stick, a stick marked as used.

#include "stock/order.h"

namespace bentbook {

/// The plan with that piece held to the stick of that number, or let go. A stick that holds nothing and is not used is
/// held no more.
[[nodiscard]] StockPlan with_piece_held(StockPlan plan, const StockOrder& order, int number, std::string_view mark,
                                        bool held);
/// The plan with that stick used for what comes out of it now, or not used, with its pieces let go.
[[nodiscard]] StockPlan with_stick_used(StockPlan plan, const StockOrder& order, int number, bool used);

}  // namespace bentbook
