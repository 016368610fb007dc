#pragma once
/// Crane, slings, crew and truck, as the lead says.

#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page raising_gear_page();
[[nodiscard]] Page raising_piece_page(std::size_t piece);  ///< of the lead's own gear; an index
[[nodiscard]] Page raising_truck_page();                   ///< what brings the timbers, and where they lie

}  // namespace bentbook::screens
