#pragma once
/// Elevations of a frame, with the plan's givens on them.

#include "draw/drawing.h"
#include "frame/plan.h"

namespace bentbook {

/// The bent with this label, seen along Y: x across the building, y up from the floor. Figures: span, plate_left,
/// pitch_left, eave_overhang (given); the same with _right where it differs; peak_top (answer, set aside); in_12_left
/// (quiet), the level side of a pitch's triangle.
[[nodiscard]] draw::Drawing bent_drawing(const FramePlan& plan, const Frame& frame, int label);

/// The right wall and its roof side, seen from outside: x along the ridge. Figures: bay:<label> (given, up to
/// kMostBaysShown bays), gable_overhang (given), length (answer: outside of the end posts).
[[nodiscard]] draw::Drawing wall_drawing(const FramePlan& plan, const Frame& frame);
inline constexpr std::size_t kMostBaysShown = 6;

/// The bent with what its options measure. Figures, all given: those of bent_drawing but span and peak_top, and as the
/// plan has them tie_drop, queen_inset, collar_rise (of a gable), brace_leg_post, brace_leg_beam.
[[nodiscard]] draw::Drawing options_drawing(const FramePlan& plan, const Frame& frame);

/// The gable over the long side, at one scale. Figures, all given: span, plate, pitch, length (outside of the end
/// posts).
[[nodiscard]] draw::Drawing building_drawing(const FramePlan& plan, const Frame& frame);

}  // namespace bentbook
