#pragma once
/// The cuts at a corner: a list, and each as it is laid out and sawn.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page corner_cuts_page();

}  // namespace bentbook::screens
