#pragma once
/// The Raising place: what the order comes to, the next step, and the ways to what the lead says.

#include "screens/app/pages.h"

namespace bentbook::screens {

void raising_screen(Context&);

}  // namespace bentbook::screens
