#pragma once
/// Statics of a load on sling legs. Legs run from their points on the load to one hook that hangs plumb over the centre
/// of gravity; a leg only pulls. Any frame fixed to the load, `up` being what is up as it hangs. Inches, pounds.
///
/// One leg carries all. Two legs carry what the sines of their angles from the plumb line say (unequal legs, points of
/// unequal height: as they are). Three legs: the one balance there is. Four legs cannot be made alike enough to share:
/// each is counted with the most that it carries when any one of the others hangs slack, which for a load in its middle
/// is two legs of four. Factor on a leg's straight share: 1 / sin of its angle from level:
/// 90° 1.000, 60° 1.155, 45° 1.414, 30° 2.000.
/// Source: SOURCES.md, "sling legs".

#include <optional>
#include <span>
#include <vector>

#include "geometry/vec.h"

namespace bentbook {

/// 1 / sin; 0 for angles that are not above 0.
[[nodiscard]] double sling_factor(double degrees_from_level);

struct SlingLeg {
  Vec3 point;              ///< as given
  double length = 0;       ///< hook to point
  double from_level = 90;  ///< degrees
  double tension = 0;      ///< lb, the most that it is counted with
};
struct Hang {
  Vec3 hook;
  std::vector<SlingLeg> legs;  ///< as the points were given
  double least_angle = 90, most_tension = 0;
  /// Points off the plumb plane of hook and centre of gravity: how far two legs let the load lean over, degrees.
  double lean = 0;
  /// The lowest point over the centre of gravity, along `up`; not above 0: it would turn over.
  double above_cg = 0;
};

/// The hook as high as a leg of `longest` lets it be; what other legs are shorter is to be taken up. Nothing: no points
/// or more than four, `longest` does not reach, or the hook does not hang between its points (a leg would have to
/// push).
[[nodiscard]] std::optional<Hang> hang_on_legs(std::span<const Vec3> points, Vec3 cg, Vec3 up, double weight,
                                               double longest);
/// The same with the hook so high that its flattest leg is at that angle from level.
[[nodiscard]] std::optional<Hang> hang_at_angle(std::span<const Vec3> points, Vec3 cg, Vec3 up, double weight,
                                                double degrees_from_level);

}  // namespace bentbook
