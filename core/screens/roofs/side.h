#pragma once
/// One side of a roof's plan, and what is said of all of them.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page roof_side_page(int side);
/// Sections, spacing, seats, tops and tails.
[[nodiscard]] Page roof_for_all_page();

}  // namespace bentbook::screens
