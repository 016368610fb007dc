#pragma once
/// Drawings of the Rafter place, in the roof's own position: x across the building from the left wall line, y up from
/// the left plate; inches.
///
/// Figure keys of given values are the keys of rafter_fields.h, so that a tapped figure edits that input; of answers,
/// the names of Rafter's members with _left or _right: rise_ line_length_ ridge_deduction_ tip_to_tip_ peak_height_
/// rafter_top_ ridge_top_ seat_ heel_ birdsmouth_depth_ plumb_depth_ sheathing_plumb_ overhang_, and angles slope_.
/// Values that follow from others (seat where the heel is given) are kAnswer under the same key.

#include "draw/drawing.h"
#include "roof/rafter.h"

namespace bentbook {

/// The whole roof from the gable: both rafters, plates, ridge. Keys: span or run, pitch_left with in_12_left where it
/// is a triangle (pitch_right when
/// unlike; slope_… where measured), peak_height_left, line_length_left, overhang_left; when unlike also
/// run_left, line_length_right, overhang_right, plate_height_right.
/// `triangle`: a rise in 12 is drawn as one; large type has no room for it.
[[nodiscard]] draw::Drawing roof_drawing(const RafterInput& input, const RafterPair& pair, bool triangle = true);

/// The words by which the peak, the bird's mouth and the tail are opened, each beside its place on a roof_drawing: keys
/// part.peak, part.foot, part.tail. They stand on the right, whose dimensions are the left's where both are alike.
void name_parts(draw::Drawing& roof, const RafterPair& pair);

/// Close-ups in place, the right side mirrored. The foot on its plate: seat, heel, overhang, pitch, plate, depth. The
/// peak: ridge and ridge_deduction, or ridge_beam and ridge_seat (beam_seat_right where it follows), and slope.
[[nodiscard]] draw::Drawing foot_drawing(const RafterInput& input, const RafterPair& pair, Side side);
[[nodiscard]] draw::Drawing peak_drawing(const RafterInput& input, const RafterPair& pair, Side side);

}  // namespace bentbook
