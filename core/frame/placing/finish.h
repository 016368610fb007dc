#pragma once
/// Inside the frame solver: moves origins to the tips, clips contacts, finds what is alike; afterwards the frame is
/// whole.

#include "frame/placing/work.h"

namespace bentbook {

void finish(Work& work);

}  // namespace bentbook
