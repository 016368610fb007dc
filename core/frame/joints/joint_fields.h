#pragma once
/// Joints as files have them: `type` says which measures follow.

#include "frame/joints/joint.h"
#include "measure/fields.h"

namespace bentbook {

/// With its default measures.
[[nodiscard]] JointType joint_of_kind(JointKind kind);

void describe(Fields&, JointType&);

/// Members by meeting.
struct JointsByMeeting {
  std::array<JointType, kMeetings>& joints;
};
void describe(Fields&, JointsByMeeting&);

}  // namespace bentbook
