#pragma once
/// Drawings of the Angles place. Figure keys are the input's or answer's own names, so that a tap can edit them.

#include "cut/mitre.h"
#include "cut/setting.h"
#include "cut/triangle.h"
#include "draw/drawing.h"

namespace bentbook {

/// The slope triangle. Dimensions: "rise", "run", "slope_length", angle "slope"; kGiven where `input` gives it, else
/// kAnswer.
[[nodiscard]] draw::Drawing triangle_drawing(const TriangleInput& input, const Triangle& triangle);

/// The side face of a timber with the cut drawn on it, waste hatched. Keys: "depth" (given), "breadth" (given, note),
/// "travel" (fact), angle "set_to" (answer) between the square line and the cut.
[[nodiscard]] draw::Drawing cut_on_timber_drawing(const Setting& setting, const Section& section);

/// The two graduations and the exact line between them, far larger than life: rays from the near arris, the exact one
/// as the cut line. Notes "below" and "above" stand at the graduations, "exact" at the cut; dimensions "arris_below"
/// and "arris_above" along the far arris. The true figures are in `setting`; only the drawing is stretched.
[[nodiscard]] draw::Drawing graduation_drawing(const Setting& setting);

/// Two members and their mitre. Keys: angle "between" (given), "depth_a", "depth_b" (given), angles "off_square_a",
/// "off_square_b" (answers), "line" (fact).
[[nodiscard]] draw::Drawing mitre_drawing(Angle between, Length depth_a, Length depth_b, const Mitre& mitre);

/// The flip test, the gap drawn larger than life. Keys: "flip_gap" (given), "flip_depth" (given), angle "scale_error"
/// (answer).
[[nodiscard]] draw::Drawing flip_drawing(Length gap, Length depth, Angle error);

}  // namespace bentbook
