#pragma once
/// Pages pushed from the Angles place.

#include "screens/app/pages.h"

namespace bentbook::screens {

/// Split an angle between two members.
[[nodiscard]] Page mitre_page();
/// From the gap of a flip test: how far off the saw's scale is, remembered for that saw.
[[nodiscard]] Page flip_page();

}  // namespace bentbook::screens
