#pragma once
/// A member's end against a receiver: which joint is made there.

#include "frame/placing/work.h"

namespace bentbook {

/// A member's end at a receiver. `facing`: which way the receiver's face looks. `opposed`: another one may come from
/// the far side.
struct EndMeeting {
  Meeting meeting = Meeting::kTiePost;
  int member = -1;
  End end = End::kA;
  int receiver = -1;
  Vec3 facing;
  bool opposed = false;
  double most = 1e9;   ///< a tenon may be no longer
  bool plain = false;  ///< cut to the face alone: the receiver is scarfed here
  double relish = 0;   ///< wood that a mortise leaves before the receiver's end, where one comes that near
};
/// Makes the joint that the plan, or the timber's own end, has there. Does nothing when a timber is −1.
void join_end(Work& work, const EndMeeting& meeting);

}  // namespace bentbook
