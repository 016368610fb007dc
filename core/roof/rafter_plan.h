#pragma once
/// Inside the rafter: the checked inputs of both sides, and where the ridge falls. Inches and tangents in double.

#include "roof/rafter.h"

namespace bentbook {

struct SidePlan {
  double tan = 0, cos = 1, sin = 0;
  double run = 0, seat = 0, heel = 0;
  double plate_height = 0;
};

struct RoofPlan {
  SidePlan left, right;
  double span = 0;
};

/// Errors as solve_rafters.
[[nodiscard]] Result<RoofPlan> plan_roof(const RafterInput& input);

/// `field` with "_left" or "_right": the place of an Error.
[[nodiscard]] std::string side_key(const char* field, Side side);

}  // namespace bentbook
