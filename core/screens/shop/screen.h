#pragma once
/// The Shop place: what is left.

#include "screens/app/context.h"

namespace bentbook::screens {

void shop_screen(Context&);

}  // namespace bentbook::screens
