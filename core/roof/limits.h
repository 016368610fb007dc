#pragma once
/// The numbers by which a roof judges; sources in core/SOURCES.md.

#include "measure/length.h"

namespace bentbook::limits {

/// Share of a rafter's depth that a bird's mouth may take, codes differing on which counts where: away from a support,
/// and at one. Both are shown and neither is a verdict. Larger: a weak place goes unsaid.
/// Source: SOURCES.md, "notches".
inline constexpr double kNotchAway = 1.0 / 6, kNotchAtSupport = 0.25;
/// Lengths in which timber is bought. Source: SOURCES.md, "stock lengths".
inline constexpr Length kStockStep = Length::feet(2);
/// lb/ft²: beyond it an entry is a slip. Source: SOURCES.md, "slips of the finger".
inline constexpr double kMostRafterLoad = 10'000;

}  // namespace bentbook::limits
