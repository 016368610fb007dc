#pragma once
/// The saws of the kit: pick one, add, describe, rename, delete.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page saws_page();

}  // namespace bentbook::screens
