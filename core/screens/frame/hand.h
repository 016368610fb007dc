#pragma once
/// A timber entered by hand: made, changed, taken out.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_hand_page(std::string mark);  ///< a timber entered by hand

}  // namespace bentbook::screens
