#pragma once
/// A crane or telehandler by the user's own load chart: read at the next longer radius, never between rows; hook block
/// and rigging are taken off what it says. Radius: level distance from the crane's middle of swing. Source: SOURCES.md,
/// "crane chart".

#include <optional>

#include "geometry/vec.h"
#include "raising/plan.h"

namespace bentbook {

struct ChartReading {
  double radius = 0;    ///< inches, as it is
  Length row_radius;    ///< of the row that is read
  Weight row_capacity;  ///< as it stands there
  double net_lb = 0;    ///< less hook block and rigging; may be below 0
};
/// Nothing: past the chart's longest radius, or the chart is empty. Rows in any order; of two with one radius the
/// lesser counts.
[[nodiscard]] std::optional<ChartReading> read_chart(const Crane& crane, double radius);
[[nodiscard]] double crane_radius(const Crane& crane, Vec3 place);
/// Radius of the chart's longest row, inches; 0: no rows.
[[nodiscard]] double longest_radius(const Crane& crane);

struct CraneLift {
  double radius_stack = 0, radius_place = 0;       ///< inches: where it is picked up, where it is set down
  std::optional<ChartReading> at_stack, at_place;  ///< nothing: past the chart
  bool within = false;                             ///< both readings are there and carry it
  double margin_lb = 0;                            ///< lesser net capacity less the weight; where both are there
  double share = 0;                                ///< weight over the lesser net capacity; 0: no capacity
};
[[nodiscard]] CraneLift lift_by_crane(const Crane& crane, Vec3 stack, Vec3 place, double weight_lb);

}  // namespace bentbook
