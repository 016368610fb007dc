#pragma once
/// Inside order: the sticks of one section and species.

#include "stock/order.h"

namespace bentbook {

/// A section as it lies: the narrower side first.
[[nodiscard]] Section lying(const Section& section);

/// `members`: indices of its pieces, which all have one section and species.
[[nodiscard]] StockGroup plan_group(const std::vector<StockPiece>& pieces, const std::vector<int>& members,
                                    const StockPlan& plan);
/// Held sticks keep their numbers, the others take the lowest that are free.
void number_sticks(StockOrder& order, const StockPlan& plan);

}  // namespace bentbook
