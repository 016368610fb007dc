#pragma once
/// The Shop place: what is left.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

void shop_screen(Context&);

[[nodiscard]] Page shop_bent_page(std::string label);  ///< timbers of one bent; "all": of every one
[[nodiscard]] Page shop_conflicts_page();

}  // namespace bentbook::screens
