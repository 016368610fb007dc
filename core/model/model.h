#pragma once
/// solve(): from what the user said to everything the screens show. The one place that wires the modules together.

#include <optional>

#include "book/kit.h"
#include "book/places.h"
#include "cut/flip_test.h"
#include "cut/mitre.h"
#include "cut/setting.h"

namespace bentbook {

struct AnglesModel {
  Result<Triangle> triangle;
  SlopeFacts facts;             ///< of the triangle's angle; zero when it failed or is vertical
  Saw saw;                      ///< the chosen one
  Result<Setting> plumb, seat;  ///< off square by the angle, and by its complement
  Result<Mitre> mitre;
  Result<Angle> scale_error;  ///< of the flip test
};

struct RafterModel {
  Result<RafterPair> pair;
  /// The saw's setting for each of Rafter::cuts, left and right; empty where the rafter failed.
  FixedList<std::optional<Setting>, 6> settings_left, settings_right;
};

struct Model {
  AnglesModel angles;
  RafterModel rafter;
};

[[nodiscard]] AnglesModel solve_angles(const Kit& kit, const AnglesInput& input);
[[nodiscard]] RafterModel solve_rafter_place(const Kit& kit, std::string_view saw, const RafterInput& input);
[[nodiscard]] Model solve(const Kit& kit, const Places& places);

}  // namespace bentbook
