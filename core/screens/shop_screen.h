#pragma once
/// The Shop place: what is left.

#include "screens/context.h"

namespace bentbook::screens {

void shop_screen(Context&);

}  // namespace bentbook::screens
