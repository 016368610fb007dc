#pragma once
/// Roofs of any plan to begin with over a book's own building.

#include <array>

#include "frame/plan.h"
#include "roof/plan/roof_plan.h"

namespace bentbook {

/// Rectangle, L, T, U, with a bay: as wide as the frame and `along` long, with its pitch, plates, overhang, commons and
/// spacing, its sizes by what the frame's wood is bought by. Wings and bays are a third to a half of the building, in
/// whole feet or 300 mm: shapes to be changed, not proportions to be built.
[[nodiscard]] std::array<RoofPlan, 5> roof_shapes(const FramePlan& frame, Length along);

}  // namespace bentbook
