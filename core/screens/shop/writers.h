#pragma once
/// Whose events the log holds, by name and time, and leaving some out on this phone.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_writers_page();

}  // namespace bentbook::screens
