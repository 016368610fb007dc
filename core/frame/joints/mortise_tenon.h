#pragma once
/// Mortise and tenon, square or oblique, shouldered or housed, pegged.

#include "frame/joints/pins.h"

namespace bentbook {

class Fields;
struct EndMeeting;
struct Work;

/// Tenon on the member, mortise in the receiver, pegs across both; shouldered or housed.
struct MortiseTenon {
  Length thickness = Length::inches(2);      ///< a quarter to a third of the member
  Length length = Length::inches(4);         ///< from the shoulder
  Length shoulder_top{}, shoulder_bottom{};  ///< taken off the tenon's width at z hi and z lo
  Length housing{};                          ///< depth that the whole member is let in; 0: shouldered
  Length depth_clearance = Length::inches(1, 8);
  int pegs = 1;
  PinPattern peg{Length::inches(1), 1, Length::inches(3, 2), Length::inches(3), {}};
  Length drawbore = Length::inches(1, 8);  ///< hole in the tenon nearer to the shoulder (1/16 to 1/8)
  friend bool operator==(const MortiseTenon&, const MortiseTenon&) = default;
};
void describe(Fields& fields, MortiseTenon& joint);

void join_tenon(Work& work, const EndMeeting& meeting, const MortiseTenon& type);

}  // namespace bentbook
