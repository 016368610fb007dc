#pragma once
/// The Frame place: the building's few numbers, its elevations, and what leads on.

#include "screens/app/context.h"

namespace bentbook::screens {

void frame_screen(Context&);

}  // namespace bentbook::screens
