#pragma once
/// What one step makes of the marks on a face: the picture on its card.

#include <optional>

#include "frame/sheet/face_marks.h"
#include "shop/steps.h"

namespace bentbook {

/// On the face that is up, else on the first face that has something of the step; nothing where the step marks or cuts
/// nothing. Lines that other steps make of the same joint stay, but not as `now`.
[[nodiscard]] std::optional<FaceMarks> step_marks(const Timber& timber, const Sheet& sheet, const WorkStep& step);

}  // namespace bentbook
