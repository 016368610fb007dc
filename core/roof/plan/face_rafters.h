#pragma once
/// Common and jack rafters: in each plane, at the spacing along its wall.

#include <vector>

#include "roof/plan/line_timbers.h"

namespace bentbook {

/// An opening that a dormer makes in a plane, u along the side's wall and v level inward from it.
struct RoofOpening {
  int side = -1;
  double from = 0, to = 0;       ///< u: inner faces of its trimmers
  std::vector<double> trimmers;  ///< u: their middles
  double low = 0;                ///< v: lower face of the lower header; where there is none the tails are cut too
  int low_header = -1;           ///< in the timbers
  double high = 0, past = 0;     ///< v: faces of the upper header
  int high_header = -1;
  std::vector<int> valleys;  ///< lines of a gable dormer's, left and right: jacks run from them to the header
  double ridge_room = 0;     ///< …but none so near to the middle
  // What was placed:
  std::vector<int> placed;       ///< the trimmers, −1 where the cuts left none
  std::vector<double> stations;  ///< u: middles of the rafters that it cuts
};

/// Appends the rafters of all sides' planes, cut against the timbers of the lines beside them. They stand at whole
/// spacings from the first corner of the first side that runs their way, or each wall's `from_middle`, so that those of
/// two planes meet at a ridge; and flush with a gable's wall and its overhang's end. One that begins in a valley is
/// notched where it still comes over its plate. What ends before it lies over its plate, or is shorter than
/// limits::kShortestJack, is left out. Beside an opening stand its trimmers, in it rafters end at its headers.
void place_face_rafters(const RoofPlan& plan, const RoofShape& shape, const std::vector<LineRoom>& rooms,
                        bool from_middle, std::vector<RoofOpening>& openings, std::vector<RoofTimber>& timbers);

}  // namespace bentbook
