#pragma once
/// The lead's order by tapping timbers, and an order that is looked for.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_tap_page();     ///< the order by tapping timbers
[[nodiscard]] Page raising_search_page();  ///< an order is looked for

}  // namespace bentbook::screens
