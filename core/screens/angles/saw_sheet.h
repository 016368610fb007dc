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

/// The setting in large type, the graduations drawn larger than life with what each costs, travel, and from how many
/// faces. `label` names the cut. A cut that this saw or section refuses is answered with the reason.
void saw_sheet(Context&, ItemKey prefix, std::string_view label, const Saw& saw, const Section& section,
               Angle off_square);

}  // namespace bentbook::screens
