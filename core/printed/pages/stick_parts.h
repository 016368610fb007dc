#pragma once
/// The cutting plan on paper: what comes out of each stick, to scale with the longest and in words.

#include <vector>

#include "printed/columns.h"
#include "stock/order.h"
#include "words/words.h"

namespace bentbook {

/// Sticks that are alike, and cut alike into pieces as long, are one part with how many they are: "Sticks 3–6: 4
/// alike".
[[nodiscard]] std::vector<PagePart> stick_parts(const StockOrder& order, double width, const Voice& voice);

}  // namespace bentbook
