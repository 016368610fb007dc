#pragma once
/// What the lead says of the raising: loads and what joints hold, crane and gear and crew, temporary braces, wishes.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_loads_page();  ///< what is assumed
[[nodiscard]] Page raising_gear_page();   ///< crane, slings, crew, truck

}  // namespace bentbook::screens
