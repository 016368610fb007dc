#pragma once
/// A plan's sections side by side at one scale.

#include <span>

#include "draw/drawing.h"
#include "frame/plan.h"

namespace bentbook {

/// In rows of `columns`. Figures, by the section's word in the plan: "post.breadth", "post.depth" (given) and "post",
/// its name. Inches; what lies level is drawn standing on its breadth.
[[nodiscard]] draw::Drawing sections_drawing(const FramePlan& plan, std::span<const TimberKind> kinds, int columns);

}  // namespace bentbook
