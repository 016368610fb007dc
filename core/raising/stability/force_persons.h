#pragma once
/// Persons on timbers: most are held by the joints near them, whatever else changes.

#include "raising/limits.h"
#include "raising/stability/prover.h"

namespace bentbook {

/// A heavy case's weight beyond the light one's, in light ones: (kHeavyShare − kLightShare) / kLightShare.
inline constexpr double kMoreWeight = 0.25 / 0.9;
/// Inches. Source: SOURCES.md, "rounding".
inline constexpr double kSameStation = 1e-6;
/// PersonHold::station of a case.
[[nodiscard]] double person_station(const StandingModel& model, const LoadCase& load);

/// Whether every row bears the heavy weight with the light one's forces grown alike.
[[nodiscard]] bool heavy_fits(const StandingModel& model, const Proof& proof);

}  // namespace bentbook
