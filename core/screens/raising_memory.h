#pragma once
/// What the Raising place remembers between frames: what was worked out off the frame and of which plan, what is being
/// picked, how far a picture has moved. Nothing of it is stored.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "answers/raising_task.h"
#include "screens/solid_memory.h"

namespace bentbook::screens {

struct RaisingMemory {
  using Solved = std::shared_ptr<const Result<Frame>>;

  /// The order's check, or why there is none; asked for again when frame or plan change.
  struct Checked {
    Solved of;
    RaisingPlan plan;
    std::optional<OrderCheck> check;
    std::string failure;
  } checked, asked;
  bool checking = false;

  /// One step, looked at closely.
  struct Explained {
    Solved of;
    RaisingPlan plan;
    int step = -1;
    std::optional<StepExplained> what;
    std::string failure;
  } explained, wanted;
  bool explaining = false;

  std::optional<FoundOrder> found;
  Solved found_of;

  SolidMemory picture;              ///< of a step
  SolidMemory tapping;              ///< of the frame, to be tapped
  std::vector<std::string> picked;  ///< tapped, in this order
  int mode = -1;                    ///< of the explained step, shown moving
  double moving_since_ms = -1;      ///< < 0: nothing moves
};

}  // namespace bentbook::screens
