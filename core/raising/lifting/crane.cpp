#include "raising/lifting/crane.h"

#include <algorithm>

namespace bentbook {

std::optional<ChartReading> read_chart(const Crane& crane, double radius) {
  if (!(radius >= 0)) return std::nullopt;
  const ChartRow* best = nullptr;
  for (const ChartRow& row : crane.chart) {
    // A hair's breadth past the row still reads that row: places are computed.
    if (row.radius.in() + 1e-6 < radius) continue;
    if (best == nullptr || row.radius < best->radius || (row.radius == best->radius && row.capacity < best->capacity))
      best = &row;
  }
  if (best == nullptr) return std::nullopt;
  ChartReading reading;
  reading.radius = radius;
  reading.row_radius = best->radius;
  reading.row_capacity = best->capacity;
  reading.net_lb = best->capacity.lb() - crane.hook_block.lb() - crane.rigging.lb();
  return reading;
}

double crane_radius(const Crane& crane, Vec3 place) {
  const double x = place.x - crane.x.in(), y = place.y - crane.y.in();
  return libm::sqrt(x * x + y * y);
}

double longest_radius(const Crane& crane) {
  double longest = 0;
  for (const ChartRow& row : crane.chart) longest = std::max(longest, row.radius.in());
  return longest;
}

CraneLift lift_by_crane(const Crane& crane, Vec3 stack, Vec3 place, double weight_lb) {
  CraneLift lift;
  lift.radius_stack = crane_radius(crane, stack);
  lift.radius_place = crane_radius(crane, place);
  lift.at_stack = read_chart(crane, lift.radius_stack);
  lift.at_place = read_chart(crane, lift.radius_place);
  if (!lift.at_stack || !lift.at_place) return lift;
  const double net = std::min(lift.at_stack->net_lb, lift.at_place->net_lb);
  lift.margin_lb = net - weight_lb;
  lift.share = net > 0 ? weight_lb / net : 0;
  lift.within = lift.margin_lb >= 0;
  return lift;
}

}  // namespace bentbook
