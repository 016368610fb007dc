#pragma once
/// Pages pushed from the Rafter place.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page rafter_peak_page();    ///< what the rafter meets at the peak
[[nodiscard]] Page rafter_foot_page();    ///< the bird's mouth over the plate
[[nodiscard]] Page rafter_tail_page();    ///< overhang and tail cut
[[nodiscard]] Page rafter_saw_page();     ///< the saw's setting for each cut
[[nodiscard]] Page rafter_square_page();  ///< stepping off with the framing square
[[nodiscard]] Page rafter_timber_page();  ///< section, sheathing, stock to order
[[nodiscard]] Page rafter_feet_page();    ///< what ties the feet, and the thrust where nothing does

}  // namespace bentbook::screens
