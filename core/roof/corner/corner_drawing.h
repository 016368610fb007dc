#pragma once
/// Drawings of a corner where two roofs meet; inches. Figure keys of given values are the members of CornerInput, so
/// that a tapped figure edits that one; keys of answers stand at each drawing, with _other for the other roof's.

#include "draw/drawing.h"
#include "roof/corner/corner_cuts.h"

namespace bentbook {

/// From above: eaves, ridges, the hip or valley in its thickness, jacks and the last commons; x along the first roof's
/// eave. Given: eave_angle, pitch, pitch_other, run, spacing. Answers: plan.
[[nodiscard]] draw::Drawing corner_plan_drawing(const CornerInput& input, const RoofCorner& corner);

/// The hip or valley from its side, x level from the wall corner, y from the plates' top. Answers: hip_length, to_cut,
/// rise, hip_slope; facts: hip_run.
[[nodiscard]] draw::Drawing corner_along_drawing(const CornerInput& input, const RoofCorner& corner);
/// Its foot larger. Given: hip_depth, overhang where there is one. Answers: hip_heel, hip_seat, hip_slope.
[[nodiscard]] draw::Drawing corner_foot_drawing(const CornerInput& input, const RoofCorner& corner);

/// Across it, looking up it, with both roofs. Given: hip_breadth. Answers: backing; of an unbacked hip drop, and shift
/// where it is moved.
[[nodiscard]] draw::Drawing corner_across_drawing(const CornerInput& input, const RoofCorner& corner);

/// A timber's four faces laid flat, top first, the cut's line across them and its waste hatched. Answers: arris_0 to
/// arris_3 (arris_marks), angles from_length on the top and off_square on the side next to it. Facts: face_top,
/// face_side, face_bottom, face_far. Boards and fascias have their first face alone, and from_length.
[[nodiscard]] draw::Drawing corner_cut_drawing(const CornerCut& cut);

}  // namespace bentbook
