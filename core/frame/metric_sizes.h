#pragma once
/// Usual sizes where wood and steel are bought by the millimetre.

#include "frame/plan.h"
#include "roof/plan/roof_plan.h"

namespace bentbook {

/// The size that stands where inches have this one: 200 mm for 8 in, 20 for 3/4. 25 mm to the inch in steps of 5; less
/// than an inch, what is sold. Source: SOURCES.md, "metric sizes".
[[nodiscard]] Length metric_size(Length usual);

/// Each measure of a joint, or of a plan with its joints and sections, at its metric size. Bays stay.
[[nodiscard]] KnifePlate in_millimetres(KnifePlate plate);
[[nodiscard]] JointType in_millimetres(JointType joint);
[[nodiscard]] FramePlan in_millimetres(FramePlan plan);
/// …of a roof, but for its walls.
[[nodiscard]] RoofPlan in_millimetres(RoofPlan plan);

/// Whether a section is one of millimetres.
[[nodiscard]] bool is_by_millimetres(const Section& section);

}  // namespace bentbook
