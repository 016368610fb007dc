#pragma once
/// Inside the frame solver: a roof with hipped ends over posts, plates and ties. Its hips, jacks and commons are those
/// of the roof over the plan's rectangle (roof/plan); here they get their marks and their joints with the frame's
/// plates, ridge beam and king posts.
///
/// What stands under the peaks is in frame/roofs/hip_peaks.h. Under one peak of four hips the king post is pointed:
/// each hip bears on its own facet, and a jack that comes between them as far as the post bears on it too.

#include "frame/placing/layout.h"

namespace bentbook {

/// Sides of Layout::roof.
enum class HipSide : std::uint8_t { kFirstEnd, kRight, kLastEnd, kLeft };

/// The roof alone, its first corner at the origin: X across the building, Y along it.
[[nodiscard]] RoofPlan hip_roof_of(const FramePlan& plan);

/// Peaks and rafters. Errors: kTooSmall ("bays", limit: all bays together: the hips would cross before they meet their
/// own side's), kImpossible ("hips.pitch": the ends' rafters do not reach down to their plates), and those of the roof
/// by the plan's own fields.
[[nodiscard]] Result<void> lay_out_hips(const FramePlan& plan, Layout& layout);

void place_hip_rafters(Work& work, Layout& layout);
/// Peaks that nothing carries, feet that nothing ties.
void say_hips(Work& work, const Layout& layout);

}  // namespace bentbook
