#pragma once
/// A timber in the shop: the next step big, the four ticks, all steps below; plates, marks, stock; holds.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_timber_page(std::string mark);

}  // namespace bentbook::screens
