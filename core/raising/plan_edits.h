#pragma once
/// Edits of what the lead says, each in place.

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "frame/plan.h"
#include "raising/plan.h"

namespace bentbook {

/// Marks of placed timbers that no step brings, in the frame's order.
[[nodiscard]] std::vector<std::string> marks_left(const Frame& frame, const RaisingPlan& plan);
/// A step more at the end, on the day of the last one.
void add_step(RaisingPlan& plan, std::vector<std::string> marks, std::vector<SetPiece> set_first = {});
/// Takes a step out and puts it in so that it comes to stand at `to` (both are places of steps); likewise what belongs
/// to the steps.
template <class Step>
void move_step(std::vector<Step>& steps, int from, int to) {
  const auto at = [&](int i) { return steps.begin() + i; };
  if (from < to)
    std::rotate(at(from), at(from + 1), at(to + 1));
  else
    std::rotate(at(to), at(from), at(from + 1));
}
/// From that step on nothing is done on an earlier day than it.
void day_from(RaisingPlan& plan, int step);
/// Whether something after that step is.
[[nodiscard]] bool goes_back(const RaisingPlan& plan, int step);
/// Takes a name into a step's list, or out of it.
void toggle_name(std::vector<std::string>& names, std::string_view name);

/// A name that no temporary has yet: "T4".
[[nodiscard]] std::string free_temporary_name(const RaisingPlan& plan);
/// The temporary of that name; nullptr: none.
[[nodiscard]] Temporary* find_temporary(RaisingPlan& plan, std::string_view name);
/// Leads its upper end to a timber of the frame: a post is held three quarters up, any other in its middle. Where it
/// has no other end it goes to the ground at 45°, away from the building: across it from an eave, else along it.
/// Stations and places are whole steps. Source: SOURCES.md, "temporary braces".
void hold_timber(const Frame& frame, Temporary& temporary, const std::string& mark, Length step);
/// Leads its other end to a timber, to where the stick comes nearest to 45°; to the ground where `mark` is empty.
void lead_to(const Frame& frame, Temporary& temporary, const std::string& mark, Length step);
/// Takes it out, of the steps too.
void drop_temporary(RaisingPlan& plan, std::string_view name);
/// Adds proposed braces under names of their own, put up in that step.
void take_braces(RaisingPlan& plan, int step, const std::vector<Temporary>& braces);

/// The lead's change for a kind of joint, begun where there is none: it holds nothing then.
HoldChange& hold_change(RaisingPlan& plan, JointKind joint);
void drop_hold_change(RaisingPlan& plan, JointKind joint);

/// Leaves the joints between two timbers to be fastened after the raising, or takes that back.
void toggle_later(RaisingPlan& plan, const JointName& joint);
/// Leaves all of them.
void leave_for_later(RaisingPlan& plan, std::span<const JointName> joints);

}  // namespace bentbook
