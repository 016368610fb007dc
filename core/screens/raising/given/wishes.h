#pragma once
/// What the lead wants of an order that is looked for.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_wishes_page();

}  // namespace bentbook::screens
