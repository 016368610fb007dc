#pragma once
/// A new book: the building it begins with, drawn, with its four numbers to tap.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page books_new_page();

}  // namespace bentbook::screens
