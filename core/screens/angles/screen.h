#pragma once
/// The Angles place: a slope in all the ways the trade says it, and what to set the saw to.

#include "screens/app/context.h"

namespace bentbook::screens {

void angles_screen(Context&);

}  // namespace bentbook::screens
