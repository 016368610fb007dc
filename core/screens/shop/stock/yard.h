#pragma once
/// What the yard sells, what saw and ends take, and what lies in the yard already.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_yard_page();
/// The general price, as the yard asks it.
void price_field(Context&);

}  // namespace bentbook::screens
