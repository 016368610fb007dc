#pragma once
/// The building in 3D: stepped through bent by bent, and how far the shop is with each timber.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_view_page();  ///< the frame as solids

}  // namespace bentbook::screens
