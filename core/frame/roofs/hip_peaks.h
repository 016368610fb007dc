#pragma once
/// Inside the frame solver: what stands under the places where the hips of a roof with hipped ends meet, and what is
/// said where nothing does.
///
/// A king post stands under the ridge's end, its outer face no farther out than that: hips that reach lower than the
/// ridge clear it. A ridge that is shorter than its king post lies over the middle of it.

#include "frame/placing/layout.h"

namespace bentbook {

/// False: four hips meet at one peak.
[[nodiscard]] bool has_hip_ridge(const Layout& layout);
/// Whether a bent's king post stands under the ridge, or under the one peak.
[[nodiscard]] bool king_stands(const FramePlan& plan, const Layout& layout, int bent);
/// Whether it stands there near enough to where the hips meet that it carries them.
[[nodiscard]] bool carries_peak(const FramePlan& plan, const Layout& layout, int bent);
/// The least height, over a place, at which one of the hips' undersides lies if it goes on so far.
[[nodiscard]] double under_hips(const Layout& layout, Vec3 place);
/// Top of the pointed king post.
[[nodiscard]] double under_one_peak(const Layout& layout);

/// Each peak that nothing carries, with the bays that would set a king post under it; whether there was none.
bool say_peaks(Work& work, const Layout& layout);

}  // namespace bentbook
