#pragma once
/// Plates, pins, pegs and screws of the frame, how many of which, in all and bent by bent.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_hardware_page();

}  // namespace bentbook::screens
