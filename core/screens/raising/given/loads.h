#pragma once
/// What the lead says of the raising: loads and what joints hold.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_loads_page();  ///< what is assumed

}  // namespace bentbook::screens
