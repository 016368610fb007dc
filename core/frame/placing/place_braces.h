#pragma once
/// Inside the frame solver: knee braces, by their legs to the outer shoulders.

#include "frame/placing/layout.h"

namespace bentbook {

void place_braces(Work& work, Layout& layout);

}  // namespace bentbook
