#include "frame/joints/end_joint.h"

#include <utility>

#include "frame/joints/end_view.h"
#include "frame/joints/joint_table.h"
#include "frame/limits.h"

namespace bentbook {
namespace {

Bearing bearing_of(Meeting meeting) {
  switch (meeting) {
    case Meeting::kBraceEnd:
      return Bearing::kBraces;
    case Meeting::kRafterPeak:
    case Meeting::kCollarRafter:
    case Meeting::kGirtPost:
      return Bearing::kButts;
    case Meeting::kTiePost:
    case Meeting::kPurlinRafter:
    case Meeting::kJoistTie:
    case Meeting::kRafterRidge:
      return Bearing::kHangsFrom;
    default:
      return Bearing::kBearsOn;
  }
}

bool receiver_is_carried(Meeting meeting) {
  return meeting == Meeting::kPostTop || meeting == Meeting::kKingTop || meeting == Meeting::kQueenTop;
}

/// The plan's joint for the meeting, or what was chosen for this end; one that cannot be had there is not used.
const JointType& joint_for(Work& work, const EndMeeting& meeting) {
  const JointType& planned = work.plan.joints[static_cast<std::size_t>(meeting.meeting)];
  const int index = work.override_of[static_cast<std::size_t>(meeting.member)];
  if (index < 0) return planned;
  const Override& o = work.plan.overrides[static_cast<std::size_t>(index)];
  const bool a = meeting.end == End::kA;
  if (!(a ? o.has_joint_a : o.has_joint_b)) return planned;
  Timber& timber = work.timber(meeting.member);
  const JointType& chosen = a ? o.joint_a : o.joint_b;
  if (!fits(meeting.meeting, kind_of(chosen)) || row_of(kind_of(chosen)).at_end == nullptr) {
    work.add_finding(FindingId::kJointUnfit, timber.mark, work.timber(meeting.receiver).mark);
    return planned;
  }
  (a ? timber.overridden.joint_a : timber.overridden.joint_b) = true;
  return chosen;
}

}  // namespace

bool begin_end_joint(Work& work, const EndMeeting& meeting, JointKind kind, double housing, EndView& view) {
  if (!see_end(work, meeting, housing, view)) {
    work.add_finding(FindingId::kJointUnfit, work.timber(meeting.member).mark, work.timber(meeting.receiver).mark);
    return false;
  }
  Joint& joint = begin_joint(work, meeting.meeting, kind, meeting.member, meeting.receiver);
  joint.bearing = bearing_of(meeting.meeting);
  joint.end = meeting.end;
  joint.where = view.o;
  joint.past_face = view.proud;
  if (receiver_is_carried(meeting.meeting)) std::swap(joint.carried, joint.carrier);
  if (housing > 0 && view.proud > housing + limits::kProudUnsaid)
    warn_joint(work, view.receiver, WarningId::kHousingDeep, to_local(work.timber(view.receiver).at, view.o).x,
               view.proud, housing);
  return true;
}

void join_end(Work& work, const EndMeeting& meeting) {
  if (meeting.member < 0 || meeting.receiver < 0) return;
  EndView view;
  if (meeting.plain) {
    if (!begin_end_joint(work, meeting, JointKind::kHousedButt, 0, view)) return;
    cut_butt(work, view);
    // A butt without a housing was asked for: that it is.
    const auto* butt = std::get_if<HousedButt>(&joint_for(work, meeting));
    if (butt != nullptr && butt->housing == Length{}) return;
    const double station = to_local(work.timber(meeting.member).at, view.o).x;
    return warn_joint(work, meeting.member, WarningId::kMadePlain, station, 0, 0);
  }
  const JointType& type = joint_for(work, meeting);
  if (const auto at_end = row_of(kind_of(type)).at_end; at_end != nullptr) return at_end(work, meeting, type);
  // A bird's mouth over a ridge beam that is not there: the rafter ends against what stands in its place.
  if (begin_end_joint(work, meeting, kind_of(type), 0, view)) cut_butt(work, view);
}

}  // namespace bentbook
