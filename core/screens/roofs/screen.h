#pragma once
/// A roof of any plan: its outline begun from a shape, drawn with every rafter, changed by tapping it.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page roof_plan_page();

}  // namespace bentbook::screens
