#pragma once
/// What a saw or a mitre may be; sources in core/SOURCES.md.

#include "measure/slope.h"

namespace bentbook::limits {

/// A scale that is off by more is set wrong, not in error. Source: SOURCES.md, "slips of the finger".
inline constexpr Angle kMostScaleError = Angle::degrees(5);
/// The coarsest scale: one mark between square and 90°. Source: SOURCES.md, "slips of the finger".
inline constexpr Angle kCoarsestStep = Angle::degrees(45);
/// Between two members that meet; outside of it they lie in one line or on each other.
/// Source: SOURCES.md, "slips of the finger".
inline constexpr Angle kLeastMitre = Angle::degrees(1), kMostMitre = Angle::degrees(179);

}  // namespace bentbook::limits
