#pragma once
/// Housed or plain butt: the member's end cut to the receiver's face, or let into it whole.

#include "measure/length.h"

namespace bentbook {

class Fields;
struct EndMeeting;
struct EndView;
struct Work;

/// Member cut to the receiver's face or let into it, nothing else.
struct HousedButt {
  Length housing = Length::inches(1);  ///< 0: plain butt
  friend bool operator==(const HousedButt&, const HousedButt&) = default;
};
void describe(Fields& fields, HousedButt& joint);

void join_butt(Work& work, const EndMeeting& meeting, const HousedButt& type);
/// The end against the shoulder plane that `view` has, whatever the joint is called.
void cut_butt(Work& work, const EndView& view);

}  // namespace bentbook
