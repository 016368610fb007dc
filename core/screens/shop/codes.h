#pragma once
/// The crew's log from screen to camera: a row of codes that follow one another here, pieces taken in any order there.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_label_page(std::string mark);
[[nodiscard]] Page shop_codes_page();  ///< the log as a row of codes

}  // namespace bentbook::screens
