#pragma once
/// A frame's common rafter as one is worked out alone.

#include <optional>

#include "frame/plan.h"
#include "roof/rafter.h"

namespace bentbook {

/// The pair over a gable frame's plates with the frame's pitches, plates, overhang, section, mouth and peak; sheathing,
/// trim, load and what else a frame does not say as in `rest`. Nothing for a lean-to and for principals. Where rafters
/// run under their tops' ridge line against a beam, the beam is a board of its breadth.
[[nodiscard]] std::optional<RafterInput> common_rafter_of(const FramePlan& plan, const RafterInput& rest = {});

}  // namespace bentbook
