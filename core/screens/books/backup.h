#pragma once
/// Everything in one file: a copy that goes out, and one that comes in (the file that was opened last).

#include "screens/app/pages.h"

namespace bentbook::screens {

/// The row that leads there; below it when the last copy went out.
void copy_row(Context& context);
[[nodiscard]] Page books_copy_page();
[[nodiscard]] Page books_take_in_page();

}  // namespace bentbook::screens
