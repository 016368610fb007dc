#pragma once
/// The numbers by which the shop judges; sources in core/SOURCES.md.

namespace bentbook::limits {

/// A finished number and the plan's differ where they are farther apart than these, inches and degrees: half of
/// 1/64 in, a twentieth of a degree, which no rule or saw shows. Smaller: steps are flagged for nothing.
/// Source: SOURCES.md, "same number".
inline constexpr double kSameInches = 1.0 / 128, kSameDegrees = 0.05;
/// Inches that a hole in steel is wider than its pin; in wood it is tight. Source: SOURCES.md, "holes in steel".
inline constexpr double kOverInSteel = 1.0 / 16;
/// The same of a pin that is sold by the millimetre: bits are in halves of one, 21.5 for 20. Source: SOURCES.md, "holes
/// in steel".
inline constexpr double kOverInSteelMetric = 1.5 / 25.4, kBitStepMetric = 0.5 / 25.4;

}  // namespace bentbook::limits
