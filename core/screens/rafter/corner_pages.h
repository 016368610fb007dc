#pragma once
/// Hips and valleys: two roofs from above, and from there the timber along and across, and its jacks.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page corner_page();

}  // namespace bentbook::screens
