#pragma once
/// Inside the frame solver: timbers entered by hand among the plan's own.

#include "frame/placing/work.h"

namespace bentbook {

void place_added(Work& work);

}  // namespace bentbook
