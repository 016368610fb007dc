#pragma once
/// Inside picks: where slings can grip, widest apart first.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "frame/plan.h"

namespace bentbook {

/// How one timber is to hang: as it will stand, or level.
enum class Attitude : std::uint8_t { kAsPlaced, kLevel };

struct PickSpot {
  int timber = 0;
  double station = 0;
  Vec3 point;  ///< in the load's own frame
  Vec3 world;  ///< in place
};
struct PickWay {
  std::vector<PickSpot> spots;
};

/// One timber: its own axes; timbers together: the world's.
struct PickPoints {
  Vec3 cg, up;
  double hang_degrees = 0;
  double reach = 0;  ///< farthest that a point may be from the centre of gravity, along
  double clear = 0;  ///< upright: shortest sling that brings the hook past the upper end, a foot above it
  std::vector<PickWay> ways;
  /// Two points that far to either side, where there is wood.
  [[nodiscard]] std::optional<PickWay> way_at(double half) const;

  const Frame* frame = nullptr;
  std::vector<int> timbers;
  Vec3 along, square;  ///< plan axes of timbers together
  bool upright = false, four = false;
};
[[nodiscard]] PickPoints pick_points(const Frame& frame, std::span<const int> timbers, Vec3 cg_world,
                                     Attitude attitude);

}  // namespace bentbook
