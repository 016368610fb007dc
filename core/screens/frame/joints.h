#pragma once
/// The Frame place's joints: which one at which kind of meeting, or at one timber's end, and its measures.

#include <string>

#include "frame/plan.h"
#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_joints_page();                               ///< which joint at which meeting
[[nodiscard]] Page frame_end_page(const std::string& mark, End end);  ///< the joint at one end of one timber
/// The joint of a timber's own end that can be set apart; nullptr: there is none.
[[nodiscard]] const Joint* joint_at_end(const Frame& frame, int timber, End end);

}  // namespace bentbook::screens
