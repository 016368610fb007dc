#pragma once
/// Common and jack rafters: in each plane, at the spacing along its wall.

#include <vector>

#include "roof/plan/line_timbers.h"

namespace bentbook {

/// Appends the rafters of all planes, cut against the timbers of the lines beside them. They stand at whole spacings
/// from the first corner of the first side that runs their way, or each wall's `from_middle`, so that those of two
/// planes meet at a ridge; and flush with a gable's wall and its overhang's end. One that begins in a valley is notched
/// where it still comes over its plate. What ends before it lies over its plate, or is shorter than
/// limits::kShortestJack, is left out.
void place_face_rafters(const RoofPlan& plan, const RoofShape& shape, const std::vector<LineRoom>& rooms,
                        bool from_middle, std::vector<RoofTimber>& timbers);

}  // namespace bentbook
