#pragma once
/// How much of the timber a rafter's cut crosses: what a saw's setting for it is judged by.

#include "cut/saw.h"
#include "roof/rafter.h"

namespace bentbook {

/// The section with its depth brought down to what the cut crosses, square to the rafter: a seat ends at the heel,
/// length · cos(off square). Other cuts go from edge to edge.
[[nodiscard]] Section crossed_by(const Rafter& rafter, const CutAngle& cut, const Section& section);

}  // namespace bentbook
