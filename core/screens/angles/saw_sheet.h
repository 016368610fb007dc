#pragma once
/// What a saw makes of a cut, as both the Angles and the Rafter place show it.

#include <string_view>

#include "cut/setting.h"
#include "screens/app/context.h"

namespace bentbook::screens {

/// The saw in use; a row that leads to the saws.
void saw_row(Context&, ItemKey prefix);
/// The saw in use by its name in the places.
[[nodiscard]] const Saw& saw_in_use(const Context&);

/// What the saw's own scale is set to in large type and drawn, what that costs, then the ways to make the cut, the
/// easier one first: along the line on the side with the blade square, on top with the blade tilted. `label` names the
/// cut. A cut that this saw or section refuses is answered with the reason.
void saw_sheet(Context&, ItemKey prefix, std::string_view label, const Saw& saw, const Section& section,
               Angle off_square);

}  // namespace bentbook::screens
