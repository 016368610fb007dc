#pragma once
/// The order as a list: what each step brings and what is wrong with it; a step is dragged to another place by its
/// grip.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_order_page();  ///< all steps

}  // namespace bentbook::screens
