#pragma once
/// Two rafters against each other at the peak.

#include "frame/joints/pins.h"

namespace bentbook {

class Fields;
struct Work;

/// Two rafters against each other at the peak: plumb cuts, or a tongue in the right one's fork.
struct RafterPeak {
  bool tongue_and_fork = true;
  Length thickness = Length::inches(2);     ///< of the tongue
  Length clearance = Length::inches(1, 8);  ///< at the tongue's tip
  PinPattern peg{Length::inches(1), 1, Length::inches(2), Length::inches(3), {}};
  friend bool operator==(const RafterPeak&, const RafterPeak&) = default;
};
void describe(Fields& fields, RafterPeak& joint);

/// Left and right rafter against each other on the plumb plane X = x; where one is −1 the other is cut plumb there.
void join_peak(Work& work, int left, int right, double x);

}  // namespace bentbook
