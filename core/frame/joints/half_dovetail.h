#pragma once
/// Wedged half-dovetail tenon, of a tie in a post or a joist in a beam. The tenon's lower edge falls toward its tip;
/// the mortise's lower side falls with it, and its upper side stays level, higher than the tenon by that fall and some
/// play: so the tenon goes in over its place, or down along the slope, and lies down on it. A pair of folding wedges
/// over the tenon fills what is left: while they are in, it cannot rise, and so it cannot draw.
/// Where the receiver has less than an inch of wood over the wedges, as at a joist whose top is flush with the beam's,
/// the mortise is open at its top and nothing is wedged: the member is dropped in.
/// Slope, play and what holds it are *common practice*; strength is the engineer's.

#include "frame/joints/pins.h"

namespace bentbook {

class Fields;
struct EndMeeting;
struct Work;

struct HalfDovetail {
  bool through = true;  ///< to the receiver's far face, flush; where another may come from there: `length`
  Length length = Length::inches(4);  ///< of a stopped one, from the shoulder
  Length thickness = Length::inches(2);
  int one_in = 8;                                 ///< the lower edge falls 1 in so much of the tenon's length
  Length play = Length::inches(1, 8);             ///< over the tenon, besides the fall; the wedges fill both
  Length housing{};                               ///< depth that the whole member is let in; 0: shouldered
  Length depth_clearance = Length::inches(1, 8);  ///< at the tip of a stopped one
  int pegs = 0;
  PinPattern peg{Length::inches(1), 1, Length::inches(3, 2), Length::inches(3), {}};
  friend bool operator==(const HalfDovetail&, const HalfDovetail&) = default;
};
void describe(Fields& fields, HalfDovetail& joint);

void join_half_dovetail(Work& work, const EndMeeting& meeting, const HalfDovetail& type);

}  // namespace bentbook
