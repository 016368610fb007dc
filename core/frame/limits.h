#pragma once
/// The numbers by which a frame judges; sources in core/SOURCES.md. What a joint measures at most stands with the
/// joint.

#include "measure/length.h"

namespace bentbook::limits {

// Wood.

/// Moisture, per cent: above the first the wood's volume stays what it is green, below the second it is taken as dry.
/// Source: SOURCES.md, "specific gravity".
inline constexpr double kGreenMoisture = 30, kDryMoisture = 12;
/// lb/ft³. Source: SOURCES.md, "density".
inline constexpr double kWaterDensity = 62.4;

// Joints.

/// Pin diameters from the end and from the edge toward which the pin presses; nearer is said.
/// Source: SOURCES.md, "pin distances".
inline constexpr double kEndDiameters = 7, kEdgeDiameters = 4;
/// Inches across the grain beyond which pins in one steel plate split the shrinking wood.
/// Source: SOURCES.md, "pin spread".
inline constexpr double kMostPinSpread = 5;
/// Inches of wood between the pins or pegs of two joints. Source: SOURCES.md, "pins of two joints".
inline constexpr double kPinMargin = 0.5;
/// Share of the section that is left at the weakest place before it is said. Larger: more is said.
/// Source: SOURCES.md, "section left".
inline constexpr double kLeastSection = 0.5;
/// Inches that a timber may stand past its design face, as sawn wood does, before it is said that what is let in there
/// comes deeper. Larger: less is said. Source: SOURCES.md, "proud wood".
inline constexpr double kProudUnsaid = 0.5;
/// A tenon thicker than the first share of the member has cheeks too thin to bear and is brought down to the second.
/// Source: SOURCES.md, "tenons".
inline constexpr double kMostTenonShare = 0.6, kTenonParts = 3;

/// Wood that stays between a mortise and the end of its timber where a post stands under that end.
/// Source: SOURCES.md, "relish".
inline constexpr Length kRelish = Length::inches(2);

// Frame.

/// How far under the plates a tie may lie and still take the rafters' outward push. Larger: a thrust goes unsaid.
/// Source: SOURCES.md, "low tie".
inline constexpr Length kLowTie = Length::feet(2);
/// A new plan's bays are alike and no wider. Source: SOURCES.md, "bays".
inline constexpr Length kUsualBay = Length::feet(14);
/// How far inside of the place where hips meet a king post's outer face may stand and carry it yet. Larger: a peak that
/// hangs on its ridge goes unsaid. Source: SOURCES.md, "carried peaks".
inline constexpr Length kPeakPast = Length::inches(16);
/// How far past the end of its ridge a king post's outer face may stand: what a tape or a printed size rounds off.
/// Larger: a post stands under hips. Source: SOURCES.md, "king posts at a peak".
inline constexpr Length kPastRidge = Length::inches(1, 16);
/// A ridge that is shorter than its king post is broad lies over the middle of it where it is so long: a tenon and the
/// wood past it at both of its ends. Larger: a post that would carry it is left out.
/// Source: SOURCES.md, "king posts at a peak".
inline constexpr Length kShortestRidge = kRelish * 3;
/// A new plan's rafters bear on their plates at least so long. Source: SOURCES.md, "rafter seats".
inline constexpr double kLeastSeat = 1.5;
/// A new plan deepens its commons up to this for such seats. Larger: fewer notches are said, of heavier rafters.
/// Source: SOURCES.md, "rafter seats".
inline constexpr Length kDeepestCommon = Length::inches(12);
/// Where a new plan's plates are lower than the first, its knee braces' legs are the second, so that they clear the
/// wall girts. Source: SOURCES.md, "knee braces".
inline constexpr Length kLowPlate = Length::feet(9), kShortBrace = Length::feet(2);

// Slips of the finger.

/// The largest measure of a building. Source: SOURCES.md, "slips of the finger".
inline constexpr Length kMostBuilding = Length::feet(1000);
/// Of a section. Source: SOURCES.md, "slips of the finger".
inline constexpr Length kLeastSide = Length::inches(1), kMostSide = Length::inches(48);
/// Degrees of a roof. Source: SOURCES.md, "slips of the finger".
inline constexpr double kFlattestRoof = 0.5, kSteepestRoof = 80;
/// Per cent, and lb/ft². Source: SOURCES.md, "slips of the finger".
inline constexpr double kMostMoisture = 300, kMostRoofLoad = 1000;

}  // namespace bentbook::limits
