#pragma once
/// What the name at the top leads to, and what each place does.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page menu_page();  ///< leads to the others
[[nodiscard]] Page help_page();  ///< what each place does, cautions, licences

/// The caution of a first launch, over the whole of `box`. True when it was read.
[[nodiscard]] bool welcome(Context&, Rect box);

}  // namespace bentbook::screens
