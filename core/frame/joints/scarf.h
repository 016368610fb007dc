#pragma once
/// Halved scarf with square ends, over a post.

#include "frame/joints/meeting.h"
#include "frame/joints/pins.h"

namespace bentbook {

class Fields;
struct Work;

/// Two lengths of one plate, ridge or sill joined over a post: halved scarf with square ends.
struct Scarf {
  Length length = Length::inches(24);
  Length clearance{};
  int pegs = 2;
  PinPattern peg{Length::inches(1), 1, Length::inches(4), Length::inches(3), {}};
  friend bool operator==(const Scarf&, const Scarf&) = default;
};
void describe(Fields& fields, Scarf& joint);
/// Inches from the scarf's middle to its peg `i`: evenly between the rows that stand their distance from either butt.
[[nodiscard]] double peg_from_middle(const Scarf& scarf, int i);

/// Of two pieces in one line at x (along the member); the receiver goes on.
void join_scarf(Work& work, Meeting meeting, int member, int receiver, double at, const Scarf& scarf);

}  // namespace bentbook
