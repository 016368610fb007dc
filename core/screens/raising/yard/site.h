#pragma once
/// The yard from above, where something of it is given its place.

#include "raising/drawings/site_drawing.h"
#include "screens/raising/yard/drawn.h"

namespace bentbook::screens {

/// Its place as two figures to tap; or it is put where the drawing itself is tapped.
void site_part(Context&, const Frame&, const RaisingShown&, InYard what);

}  // namespace bentbook::screens
