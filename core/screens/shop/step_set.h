#pragma once
/// What a saw or a tool is set to at a step of work, in words and numbers.

#include "screens/shop/work_shown.h"

namespace bentbook::screens {

/// What is marked or stopped at as large as can be; an angle as the saw's scale reads it, "Square" where all is square;
/// the other numbers below. `sheet`: of the step's timber.
void step_set(ShownWork&, const WorkStep& step, const Sheet& sheet);

}  // namespace bentbook::screens
