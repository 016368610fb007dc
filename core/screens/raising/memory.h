#pragma once
/// What the Raising place remembers between frames: what was worked out and of which plan, what is being picked, how
/// far a picture has moved. Nothing of it is stored.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "raising/lifting/hand_raise.h"
#include "raising/lifting/pick.h"
#include "raising/lists.h"
#include "screens/frame/solid_memory.h"
#include "tasks/raising_task.h"

namespace bentbook::screens {

struct RaisingMemory {
  /// What a figure is of: it holds while all of this is the same.
  struct Of {
    std::shared_ptr<const Result<Frame>> frame;
    RaisingPlan plan;
    int step = -1;  ///< −1: the whole order
    friend bool operator==(const Of&, const Of&) = default;
  };

  /// What a task answers, or why it did not; asked for again when what it is of has changed.
  template <class What>
  struct Answered {
    Of of, asked;
    bool running = false;
    std::optional<What> what;
    std::string failure;
  };
  Answered<OrderCheck> check;
  Answered<StepExplained> explained;

  /// The pick of one step; cheap, yet nothing for every frame.
  struct Picked {
    Of of;
    std::vector<int> coming;         ///< indices in Frame::timbers
    std::vector<double> weights_lb;  ///< of each, as it is now
    Pick pick;
    std::optional<OnTheGround> ground;
    std::optional<HandRaise> hand;
  } picked_step;
  struct Lists {
    Of of;
    std::vector<TruckLoad> loads;
    std::vector<LayDownStack> stacks;
  } lists;

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

  std::optional<FoundOrder> found;
  std::shared_ptr<const Result<Frame>> found_of;

  SolidMemory picture;              ///< of a step
  std::string picture_of;           ///< what its camera was fitted to
  SolidMemory tapping;              ///< of the frame, to be tapped
  std::vector<std::string> picked;  ///< tapped, in this order
  int mode = -1;                    ///< of the explained step, shown moving
  double moving_since_ms = -1;      ///< < 0: nothing moves
};

}  // namespace bentbook::screens
