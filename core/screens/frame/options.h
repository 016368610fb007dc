#pragma once
/// The Frame place's pages about the plan: kinds of timbers and their measures, bays, sections.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_options_page();   ///< kinds of timbers, spacings, girts, species
[[nodiscard]] Page frame_bays_page();      ///< bays one by one
[[nodiscard]] Page frame_sections_page();  ///< nominal sections by kind

}  // namespace bentbook::screens
