#pragma once
/// The Rafter place's pages about the whole rafter: marks along the timber, and the two sides of the roof.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page rafter_marks_page();  ///< the timber on the horses, marks from the peak, the pattern to share
[[nodiscard]] Page rafter_sides_page();  ///< plan, left and right unlike, measured on the building

}  // namespace bentbook::screens
