#pragma once
/// A timber that was entered by hand, and what is cut into it. Inches; x from end A's tip.

#include "draw/drawing.h"
#include "frame/plan.h"

namespace bentbook {

/// From the side, its top up, with the outline of what is cut in. Given: "length", "end_a.angle", "end_b.angle".
[[nodiscard]] draw::Drawing hand_drawing(const HandTimber& timber);
/// From above, its far face up. Given: "end_a.tilt", "end_b.tilt".
[[nodiscard]] draw::Drawing hand_top_drawing(const HandTimber& timber);
/// Its section, standing on its breadth. Given: "wood.nominal.breadth", "wood.nominal.depth".
[[nodiscard]] draw::Drawing hand_section_drawing(const HandTimber& timber);
/// One thing cut into it, as one looks on its face, torn off to both sides; its arris at the lower coordinate is below.
/// Given, by their paths in the feature: "station", "offset", and "along", "across", or "diameter" of a hole; "depth",
/// save of a tenon.
[[nodiscard]] draw::Drawing hand_feature_drawing(const HandTimber& timber, const HandFeature& feature);

}  // namespace bentbook
