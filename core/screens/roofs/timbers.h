#pragma once
/// The timbers of a roof of any plan, those alike once, each with its cuts.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page roof_timbers_page();

}  // namespace bentbook::screens
