#pragma once
/// What to order for the open book, and what comes out of which stick.

#include "screens/app/pages.h"
#include "screens/frame/form.h"
#include "stock/order.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_stock_page();
[[nodiscard]] Page shop_stick_page(int number);

/// The plan for the frame that is shown, worked out again only when that or what is said about stock changed.
[[nodiscard]] const StockOrder& stock_order(Context&, const ShownFrame&);

}  // namespace bentbook::screens
