#pragma once
/// The framing square on the rafter's top edge, and the steps that it makes.

#include "draw/drawing.h"
#include "roof/rafter.h"

namespace bentbook {

/// The timber lies flat, top edge up; the square's heel points into it, the body's 12 and the tongue's rise on the
/// edge. Dimensions: "square_run" and "square_rise" along the square's outer edges, "step_length" along the timber.
[[nodiscard]] draw::Drawing square_drawing(const Rafter& rafter, Length depth);

}  // namespace bentbook
