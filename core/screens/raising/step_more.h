#pragma once
/// All else about a step: way in, slings and each timber, how it stands, temporary braces, its place in the order.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_step_more_page(int step);  ///< an index

}  // namespace bentbook::screens
