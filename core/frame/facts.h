#pragma once
/// Facts of one timber and of the frame as a graph.

#include <vector>

#include "frame/plan.h"
#include "roof/limits.h"

namespace bentbook {

/// Specific gravity at a moisture content on the volume at that moisture, from green and 12 % values: straight line
/// between 12 % and 30 %, the green value above. Source: SOURCES.md, "specific gravity".
[[nodiscard]] double gravity_at(const Species& species, double moisture);
/// lb per cubic foot: 62.4 · G · (1 + moisture / 100). Source: SOURCES.md, "density".
[[nodiscard]] double density_at(const Species& species, double moisture);

struct TimberFacts {
  double volume = 0;  ///< in³
  Vec3 cg;            ///< timber axes
  Vec3 cg_world;
  double weight_lb = 0;
  double board_feet = 0;  ///< nominal section, stock length. Source: SOURCES.md, "board feet"
  Length stock;           ///< the next whole number of steps that holds the length and the trim
};
/// `step`: by which stock is sold.
[[nodiscard]] TimberFacts facts_of(const Timber& timber, Length step = limits::kStockStep,
                                   Length trim = Length::inches(2));

/// Joints that touch a timber, in order.
[[nodiscard]] std::vector<int> joints_of(const Frame& frame, int timber);
/// The other one of a joint's two timbers.
[[nodiscard]] inline int other_timber(const Joint& joint, int timber) {
  return joint.member == timber ? joint.receiver : joint.member;
}
/// Marks of timbers that `before` has and `after` has not, in the order of `before`.
[[nodiscard]] std::vector<std::string> marks_gone(const Frame& before, const Frame& after);
/// Index by mark, −1 where there is none.
[[nodiscard]] int timber_by_mark(const Frame& frame, std::string_view mark);

}  // namespace bentbook
