#pragma once
/// What waits at a workplace. At the saw the table is set once for all timbers that want it so.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_place_page(std::string place);  ///< what waits at a workplace, by its word

}  // namespace bentbook::screens
