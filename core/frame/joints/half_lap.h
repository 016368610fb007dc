#pragma once
/// Half lap, of an end on a timber or of two at a corner.

#include "frame/joints/pins.h"

namespace bentbook {

class Fields;
struct EndMeeting;
struct Work;

/// Half of each taken off where two cross or one ends on the other; the member keeps its upper (or outer) half.
struct HalfLap {
  int pegs = 1;
  PinPattern peg{Length::inches(1), 1, Length::inches(3), Length::inches(3), {}};
  friend bool operator==(const HalfLap&, const HalfLap&) = default;
};
void describe(Fields& fields, HalfLap& joint);

/// The member's end on the receiver's `facing` side.
void join_lap(Work& work, const EndMeeting& meeting, const HalfLap& type);

}  // namespace bentbook
