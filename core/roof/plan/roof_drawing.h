#pragma once
/// A roof of any plan from above: its walls, tails, ridges, hips and valleys, and every rafter. Inches, x and y as the
/// plan has them.

#include "draw/drawing.h"
#include "roof/plan/limits.h"
#include "roof/plan/solve_roof.h"

namespace bentbook {

/// Dormers have no figures on a plan; −1 for a dormer: none is chosen.
inline constexpr int kDormersUnnamed = -2;
/// Given: "side.0", "side.1" … on each side's plane, "length.0" … of each wall, "dormer.0" … on each dormer, and
/// "dormer.0.centre" of `dormer`, from its side's corner. Of a plan with more sides than
/// `most_measured` only the chosen one's length. `roof`: nullptr where the plan gives none, then the walls
/// stand alone. `chosen`: a side whose wall is drawn as the one that is worked on; −1: none.
[[nodiscard]] draw::Drawing roof_plan_drawing(const RoofPlan& plan, const RoofSolution* roof, int chosen,
                                              int most_measured = limits::kMostSidesMeasured,
                                              int dormer = kDormersUnnamed);

/// A dormer from the front and, beside that, from the side, cut in its middle. x across or inward from the wall line, y
/// over its side's plate. Given: "width", "plate_height", "pitch", "overhang", "face".
[[nodiscard]] draw::Drawing dormer_drawing(const RoofSolution& roof, int dormer);

}  // namespace bentbook
