#pragma once
/// The crew's log from screen to camera: a row of codes that follow one another here, pieces taken in any order there.

#include <string>

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page shop_label_page(std::string mark);
/// A log's file, or what a phone has of one, as a row of codes on a page of its own; `events`: how many it holds.
void show_codes(Context&, std::string bytes, std::size_t events);

}  // namespace bentbook::screens
