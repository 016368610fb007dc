#pragma once
/// The numbers by which a roof judges; sources in core/SOURCES.md.

#include "measure/slope.h"

namespace bentbook::limits {

/// Share of a rafter's depth that a bird's mouth may take, codes differing on which counts where: away from a support,
/// and at one. Both are shown and neither is a verdict. Larger: a weak place goes unsaid.
/// Source: SOURCES.md, "notches".
inline constexpr double kNotchAway = 1.0 / 6, kNotchAtSupport = 0.25;
/// A notch over a corner's plates weakens nothing but the tail: what must be left of the timber, square to it, and how
/// far the tail may then reach, level; inches. Source: SOURCES.md, "tail notches".
inline constexpr double kLeastTail = 3.5, kFarthestTail = 24;
/// Lengths in which timber is bought. Source: SOURCES.md, "stock lengths".
inline constexpr Length kStockStep = Length::feet(2);
/// Between the eaves of a corner; outside of it they are as good as parallel and no hip or valley stands between them.
/// Source: SOURCES.md, "slips of the finger".
inline constexpr Angle kLeastEaves = Angle::degrees(1), kMostEaves = Angle::degrees(179);
/// Between an eave and the hip, in plan: nearer to it one pitch is so much the steeper that there is no corner left.
/// Source: SOURCES.md, "slips of the finger".
inline constexpr Angle kLeastPlan{Angle::kPerDegree / 1000};
/// lb/ft²: beyond it an entry is a slip. Source: SOURCES.md, "slips of the finger".
inline constexpr double kMostRafterLoad = 10'000;

}  // namespace bentbook::limits
