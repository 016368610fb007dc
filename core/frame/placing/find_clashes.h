#pragma once
/// Inside the frame solver: timbers that take the same room though no joint says so.

#include "frame/placing/work.h"

namespace bentbook {

void find_clashes(Work& work);

}  // namespace bentbook
