#pragma once
/// Temporary braces, and what the lead wishes of the order.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_temporaries_page();  ///< temporary braces
[[nodiscard]] Page raising_temporary_page(std::string name);
[[nodiscard]] Page raising_wishes_page();

}  // namespace bentbook::screens
