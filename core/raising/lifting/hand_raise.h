#pragma once
/// Raising a bent by hand, about its feet, and the bent while it lies on the ground. Inches, pounds, degrees. It
/// proposes; a competent person decides, and nobody stands under it.
///
/// The bent turns about its foot line: the lower edge of the feet on the side that was down. Force square to the bent
/// at the height z_lift: lying, Σ W z / z_lift (levers about the foot); at a tilt a from level,
/// W (z_c cos a − d sin a) / z_lift, z_c the height and d the distance behind the foot line of the centre of gravity
/// when upright. It is out of balance until tan a = z_c / d; before that the back guy has to be tight, past it the bent
/// wants to go over by itself. Hands reach limits::kHandReach, then poles take over. A rope to an anchor on the
/// ground ahead pulls what its lever needs. Source: SOURCES.md, "levers".

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/lifting/pick.h"

namespace bentbook {

struct RaiseRow {
  double tilt = 0;     ///< degrees from level
  double push_lb = 0;  ///< square to the bent at z_lift, by all hands or poles; below 0: it has to be held back
  double rope_lb = 0;  ///< pull of a rope instead, from z_lift to the anchor; 0: none is needed, or it has no lever
};

struct HandRaise {
  double weight_lb = 0;
  double foot_z = 0;           ///< world
  double cg_height = 0;        ///< z_c
  double cg_behind = 0;        ///< d
  double lift_height = 0;      ///< z_lift
  double most_lb = 0;          ///< push when it leaves the ground
  int people = 0;              ///< for that, at the crew's own limit each
  double hands_until = 90;     ///< tilt at which z_lift is out of reach
  double balance = 90;         ///< tilt past which it goes over by itself
  double anchor_ahead = 0;     ///< inches from the foot line to the rope's anchor
  std::vector<RaiseRow> rows;  ///< every 10°, the last at the balance point or 90°
};
/// `anchor_ahead` 0: limits::kAnchorShare times z_lift. No timbers: all 0.
[[nodiscard]] HandRaise raise_by_hand(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                                      std::span<const int> timbers, double anchor_ahead = 0);

/// Which way is down while it lies: seen as it will stand, the side toward `down`.
enum class FaceDownWhy : std::uint8_t {
  kFewer,      ///< less stands out on that side
  kReference,  ///< no difference: the reference faces up, where they can be seen and measured from
};
struct BlockUnder {
  int timber = 0;
  double station = 0;  ///< from end A's tip
};
struct Diagonal {
  int from = 0, to = 0;  ///< posts: from one's foot to the other's top
  double length = 0;     ///< along their axes' ends, as designed
};
/// Timbers so slender that lifting the bent flat bends them: free length over thickness square to the bent.
struct Slender {
  int timber = 0;
  double ratio = 0;
};
struct OnTheGround {
  std::vector<int> timbers;  ///< of those given, what lies in the plane
  Vec3 down;                 ///< world direction, of the bent as it will stand, that lies down
  FaceDownWhy why = FaceDownWhy::kFewer;
  int stands_out_down = 0, stands_out_up = 0;  ///< timbers past the posts' faces
  double block_height = 0;                     ///< under the posts' faces
  std::vector<BlockUnder> blocks;
  std::vector<Diagonal> diagonals;  ///< to be measured equal where they are of one length here
  std::vector<int> toe_stops;       ///< timbers whose feet have to be stopped
  std::vector<Slender> strongbacks;
};
/// Of the timbers what lies in one plane, by the posts. Nothing where they are no bent: fewer than two, all level, or
/// thicker than limits::kFlat to both sides of their middle plane.
[[nodiscard]] std::optional<OnTheGround> lay_on_ground(const Frame& frame, std::span<const int> timbers);

}  // namespace bentbook
