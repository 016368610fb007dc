#pragma once
/// The numbers by which a roof of any plan judges; sources in core/SOURCES.md.

#include "measure/length.h"

namespace bentbook::limits {

/// Sides of a plan: fewer close no roof, more make the app wait. Source: SOURCES.md, "slips of the finger".
inline constexpr int kLeastSides = 3, kMostSides = 64;
/// A side of the plan, and the farthest that a corner may lie from the origin. Source: SOURCES.md, "slips of the
/// finger".
inline constexpr Length kShortestSide = Length::inches(6), kFarthestCorner = Length::feet(1000);
/// Heights of plates, and overhangs. Source: SOURCES.md, "slips of the finger".
inline constexpr Length kHighestPlate = Length::feet(200), kMostOverhang = Length::feet(12);
/// Degrees of a roof plane. Source: SOURCES.md, "slips of the finger".
inline constexpr double kFlattestPlane = 0.5, kSteepestPlane = 80;
/// Sine of the least angle between two neighbouring sides: nearer to straight they have no corner, or no hip that could
/// be cut. Source: SOURCES.md, "slips of the finger".
inline constexpr double kLeastCorner = 0.02;
/// Sections and spacings. Source: SOURCES.md, "slips of the finger".
inline constexpr Length kThinnestTimber = Length::inches(1, 2), kThickestTimber = Length::inches(48),
                        kLeastSpacing = Length::inches(4), kMostSpacing = Length::feet(40);
/// So many rafters that the app would stand still. Source: SOURCES.md, "slips of the finger".
inline constexpr int kMostRafters = 5000;
/// A drawing of a plan with more sides has no room for all their lengths, in usual and in large type. Source:
/// SOURCES.md, "drawing".
inline constexpr int kMostSidesMeasured = 12, kMostMeasuredLarge = 4;
/// Inches: fascias nearer to each other in height line up. Source: SOURCES.md, "fascias".
inline constexpr double kFasciaApart = 1.0 / 32;
/// Inches along its top: a shorter jack is left out, a block fills its place. Source: SOURCES.md, "shortest jack".
inline constexpr double kShortestJack = 6;

/// Dormers of a plan: more make the app wait. Source: SOURCES.md, "slips of the finger".
inline constexpr int kMostDormers = 32;
/// Inches between trimmers: a narrower opening is none. Source: SOURCES.md, "slips of the finger".
inline constexpr double kNarrowestOpening = 12;
/// Inches: the shortest corner post of a dormer at its shorter side, and what stays free between a dormer's tails and
/// the rafters below them, for the roof's deck and covering. Source: SOURCES.md, "dormers".
inline constexpr double kShortestDormerPost = 6, kUnderDormerTails = 2;

}  // namespace bentbook::limits
