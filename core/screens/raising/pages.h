#pragma once
/// The Raising place and its pages.

#include "screens/app/pages.h"

namespace bentbook::screens {

void raising_screen(Context&);

[[nodiscard]] Page raising_order_page();         ///< all steps
[[nodiscard]] Page raising_step_page(int step);  ///< one step, as it is read on the site; an index
[[nodiscard]] Page raising_tap_page();           ///< the order by tapping timbers
[[nodiscard]] Page raising_search_page();        ///< an order is looked for
[[nodiscard]] Page raising_loads_page();         ///< what is assumed
[[nodiscard]] Page raising_gear_page();          ///< crane, slings, crew, truck
[[nodiscard]] Page raising_temporaries_page();   ///< temporary braces
[[nodiscard]] Page raising_temporary_page(std::string name);
[[nodiscard]] Page raising_wishes_page();
[[nodiscard]] Page raising_lists_page();  ///< what lies on which truck, the order as text

}  // namespace bentbook::screens
