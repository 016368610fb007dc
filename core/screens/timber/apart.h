#pragma once
/// What one timber has of its own against the plan, at the end of its sheet: section and measured wood, species, the
/// joints of its ends, defects, pier level; back to the plan; out of the frame.

#include <string>

#include "screens/app/pages.h"
#include "screens/frame/form.h"

namespace bentbook::screens {

void timber_apart(Context&, const ShownFrame&, const Timber&);

[[nodiscard]] Page frame_species_page(std::string mark);
[[nodiscard]] Page frame_defects_page(std::string mark);  ///< wane, knots, checks, heart

}  // namespace bentbook::screens
