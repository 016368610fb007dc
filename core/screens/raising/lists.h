#pragma once
/// What lies on which truck and in which stack, and the order as text to be pinned on the wall.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_lists_page();  ///< what lies on which truck, the order as text

}  // namespace bentbook::screens
