#pragma once
/// Inside the frame solver: sills, posts, plates, ties, girts, joists.

#include "frame/placing/layout.h"

namespace bentbook {

void place_sills(Work& work, Layout& layout);
void place_posts(Work& work, Layout& layout);
void place_plates(Work& work, Layout& layout);
void place_ties(Work& work, Layout& layout);
void place_girts(Work& work, Layout& layout);
void place_joists(Work& work, Layout& layout);

}  // namespace bentbook
