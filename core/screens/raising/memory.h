#pragma once
/// What the Raising place remembers between frames: what was worked out and of what, what is being picked, how far a
/// picture has moved. Nothing of it is stored.

#include <optional>
#include <string>
#include <vector>

#include "raising/lifting/hand_raise.h"
#include "raising/lifting/pick.h"
#include "raising/lists.h"
#include "screens/frame/solid_memory.h"
#include "tasks/fingerprint.h"

namespace bentbook::screens {

struct RaisingMemory {
  /// The pick of one step; cheap, yet nothing for every frame.
  struct Picked {
    Fingerprint of = 0;              ///< of the step
    std::vector<int> coming;         ///< indices in Frame::timbers
    std::vector<double> weights_lb;  ///< of each, wet
    Pick pick;
    std::optional<OnTheGround> ground;
    std::optional<HandRaise> hand;
  } picked_step;
  struct Lists {
    Fingerprint of = 0;
    std::vector<TruckLoad> loads;
    std::vector<LayDownStack> stacks;
  } lists;

  float verdict_height = 0;  ///< as it stood last, px

  /// The order's rows as they lie, from the first one's top, px.
  struct Row {
    float top = 0, height = 0;
  };
  std::vector<Row> order_rows;
  /// A step that a finger takes to another place in the order.
  struct Drag {
    int step = -1;  ///< −1: none
    int to = -1;    ///< where it would come to stand
    bool moved = false;
    float grab = 0;                  ///< from its row's top to the finger
    float from_y = 0;                ///< the finger on the screen when it went down
    double last_ms = 0;              ///< of the frame before
    std::vector<RaisingStep> steps;  ///< the order when it was lifted
    std::vector<Row> rows;           ///< …and how it lay
    std::vector<float> shown;        ///< tops of the rows while they make room
  } drag;

  SolidMemory picture;              ///< of a step
  std::string picture_of;           ///< what its camera was fitted to
  SolidMemory tapping;              ///< of the frame, to be tapped
  std::vector<std::string> picked;  ///< tapped, in this order
  std::vector<SetPiece> set_first;  ///< tapped to be set before what is tapped next
  bool asked_to_take = false;       ///< whether the order that was found may replace one's own
  bool placing = false;             ///< the yard is tapped for a place
  std::string charted;              ///< the machine whose chart was touched last
  std::size_t chart_row = 0;        ///< …and which of its rows
  int mode = -1;                    ///< of the explained step, shown moving
  double moving_since_ms = -1;      ///< < 0: nothing moves
};

}  // namespace bentbook::screens
