#pragma once
/// A temporary brace where it is nailed: what it runs between in elevation, from the gable where it runs rather across
/// the building, else from the side. Inches.

#include <string_view>

#include "draw/drawing.h"
#include "frame/drawings/elevation.h"
#include "raising/plan.h"
#include "raising/temporary_line.h"

namespace bentbook {

/// From which side it is seen.
[[nodiscard]] Elevation elevation_of(const TemporaryLine& line);

/// Given, by their paths in the temporary: "from.mark" and "to.mark" at its ends, "from.station" and "to.station" along
/// their timbers from end A; of an end on the ground "ground_x" from the building's middle, or "ground_y" from the
/// first bent, and "to.mark" says so. Told: "length" of the stick. Empty where it does not run anywhere
/// (temporary_line.h).
[[nodiscard]] draw::Drawing temporary_drawing(const Frame& frame, const Temporary& temporary);

}  // namespace bentbook
