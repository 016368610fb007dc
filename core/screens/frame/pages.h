#pragma once
/// Pages pushed from the Frame place.

#include <string>

#include "frame/plan.h"
#include "screens/app/pages.h"

namespace bentbook::screens {

[[nodiscard]] Page frame_options_page();   ///< kinds of timbers, spacings, girts, species
[[nodiscard]] Page frame_bays_page();      ///< bays one by one
[[nodiscard]] Page frame_sections_page();  ///< nominal sections by kind
[[nodiscard]] Page frame_joints_page();    ///< which joint at which meeting
[[nodiscard]] Page frame_list_page();      ///< all timbers
[[nodiscard]] Page frame_view_page();      ///< the frame as solids
[[nodiscard]] Page frame_sheet_page(std::string mark);
[[nodiscard]] Page frame_end_page(const std::string& mark, End end);  ///< the joint at one end of one timber
[[nodiscard]] Page frame_species_page(std::string mark);
[[nodiscard]] Page frame_defects_page(std::string mark);  ///< wane, knots, checks, heart
[[nodiscard]] Page frame_hand_page(std::string mark);     ///< a timber entered by hand

/// The joint of a timber's own end that can be set apart; nullptr: there is none.
[[nodiscard]] const Joint* joint_at_end(const Frame& frame, int timber, End end);

}  // namespace bentbook::screens
