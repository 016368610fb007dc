#pragma once
/// Inside the frame solver: knee braces, and dragon ties across a hip roof's corners, by their legs to the outer
/// shoulders.

#include "frame/placing/layout.h"

namespace bentbook {

void place_braces(Work& work, Layout& layout);
void place_dragon_ties(Work& work, Layout& layout);

}  // namespace bentbook
