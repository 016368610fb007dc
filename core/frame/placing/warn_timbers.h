#pragma once
/// Inside the frame solver: what one timber has to be minded for once everything is cut: features that meet, bearings
/// cut into, pins too close, the section left, defects.

#include "frame/placing/work.h"

namespace bentbook {

void warn_timbers(Work& work);

}  // namespace bentbook
