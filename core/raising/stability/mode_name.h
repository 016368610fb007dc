#pragma once
/// What a mechanism's mode is called: a timber swings, turns or slides, a bent racks, several move.

#include <vector>

#include "raising/stability/standing.h"

namespace bentbook {

/// Scales the motions as TimberMotion says and leaves out what stays.
[[nodiscard]] Mode name_mode(const StandingModel& model, std::vector<TimberMotion> motions);

}  // namespace bentbook
