#pragma once
/// Inside the steps: what is sawn. Where the saw is stopped, and the settings of a tenon, lap, scarf or bird's mouth.

#include "shop/step_numbers.h"

namespace bentbook {

/// Where the saw's line meets an edge of the face ridden.
struct Stop {
  double at = 0;
  Face edge = Face::kNear;
};
/// `low`: at the edge of the low coordinate.
[[nodiscard]] Stop stop_at(const Timber& timber, const CutPlane& plane, Face face, bool low);
/// At the low edge where the line reaches it.
[[nodiscard]] Stop stop_of(const Timber& timber, const SawCut& cut);
/// Table, tilt and stop.
void saw_numbers(const BladeAngles& blade, const Stop& stop, std::vector<StepNumber>& out);
[[nodiscard]] SawSetup setup_of(const SawCut& cut, const Stop* stop);

/// `step`: a bench step of `feature` that has saw cuts. In the shop's order.
[[nodiscard]] std::vector<StepSetting> sawn_settings(const Sheet& sheet, const Timber& timber, const Feature& feature,
                                                     const BenchStep& step);

}  // namespace bentbook
