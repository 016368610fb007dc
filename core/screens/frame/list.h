#pragma once
/// All timbers of the frame: searched, counted, in one of four orders. Only what shows is drawn.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_list_page();  ///< all timbers

}  // namespace bentbook::screens
