#pragma once
/// One step as it is read on the site: what comes, the picture, what holds, who and what, what to mind, done.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_step_page(int step);  ///< one step, as it is read on the site; an index

}  // namespace bentbook::screens
