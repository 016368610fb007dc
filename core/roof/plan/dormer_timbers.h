#pragma once
/// What a dormer is made of: headers between trimmers, its ridge and valleys, its rafters, and its walls in the
/// simplest whole form: corner posts on the trimmers, plates at its sides and face. Studs and what closes the walls are
/// not here.

#include <vector>

#include "roof/plan/dormer_shape.h"
#include "roof/plan/face_rafters.h"

namespace bentbook {

/// Appends headers, ridge and valleys, the rooms of the lines' timbers to `rooms`. What is answered goes to
/// place_face_rafters, which places the trimmers.
[[nodiscard]] RoofOpening place_dormer_opening(const RoofPlan& plan, const RoofShape& shape, const DormerShape& dormer,
                                               std::vector<RoofTimber>& timbers, std::vector<LineRoom>& rooms);

/// Fits headers and valleys to the trimmers that were placed, and appends the dormer's plates, posts and rafters. A
/// rafter whose tail would come too near to the roof ends at the wall line; where its plate has run into the roof and
/// its valley has not come out of the trimmer none can stand: one there is moved to the plate's end.
void place_dormer(const RoofPlan& plan, const RoofShape& shape, const DormerShape& dormer, const RoofOpening& opening,
                  const std::vector<LineRoom>& rooms, std::vector<RoofTimber>& timbers);

}  // namespace bentbook
