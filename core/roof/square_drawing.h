#pragma once
/// The framing square on the rafter's top edge, and the steps that it makes.

#include "draw/drawing.h"
#include "roof/rafter.h"

namespace bentbook {

/// What the square's body holds at each step: 12 in, of a square marked in millimetres 300.
[[nodiscard]] Length square_run(bool metric);

/// Stepping off with the body held at `run`: what the tongue holds, a step along the timber, and how many whole ones
/// there are in the rafter's run and in its tail, with what is left of each, level.
struct SquareSteps {
  Length run, rise, along;
  int steps = 0, tail_steps = 0;
  Length odd, tail_odd;
};
[[nodiscard]] SquareSteps square_steps(const Rafter& rafter, Length run);

/// The timber lies flat, top edge up; the square's heel points into it, the body's run and the tongue's rise on the
/// edge. Dimensions: "square_run" and "square_rise" along the square's outer edges, "step_length" along the timber.
[[nodiscard]] draw::Drawing square_drawing(const Rafter& rafter, Length depth);

}  // namespace bentbook
