#pragma once
/// The sheet of one timber: drawing, steps with the saw's settings, checks, joints, what was said of it.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_sheet_page(std::string mark);

}  // namespace bentbook::screens
