#pragma once
/// The Rafter place: the roof as a drawing to be filled in, and the cuts in large type.

#include "screens/app/context.h"

namespace bentbook::screens {

void rafter_screen(Context&);

}  // namespace bentbook::screens
