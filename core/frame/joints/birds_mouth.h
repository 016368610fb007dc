#pragma once
/// Bird's mouth: a rafter over a level timber.

#include "frame/joints/meeting.h"
#include "measure/length.h"

namespace bentbook {

class Fields;
struct Work;

/// Rafter notched over plate, purlin or ridge beam.
struct BirdsMouth {
  Length seat = Length::inches(7, 2);  ///< level; the plumb cut stands at the receiver's outer face
  friend bool operator==(const BirdsMouth&, const BirdsMouth&) = default;
};
void describe(Fields& fields, BirdsMouth& joint);

/// Of a rafter over a level timber; the plumb cut at the receiver's downhill face.
void join_birdsmouth(Work& work, Meeting meeting, int member, int receiver);

}  // namespace bentbook
