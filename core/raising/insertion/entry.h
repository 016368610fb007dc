#pragma once
/// The way in of timbers that come in together, where others stand: along which straight ways, by which short moves, or
/// what is in the way and what to do instead. World axes, inches.
///
/// A way is free where the solids (pockets taken out, pegs not in) overlap nowhere on it by more than
/// `limits::kTouching`. Tried, in this order:
///
/// 1. lowered straight from above;
/// 2. lowered beside its place and slid in;
/// 3. straight in from far away;
/// 4. slid in, and brought from far away along another line;
/// 5. with standing timbers spread apart;
/// 6. swung about an end.
///
/// A timber that is spread takes along what it would push, and nothing else: no pins are in there yet. Its foot turns
/// on the sill, so it leans, and the opening is measured at the lower edge, where it is narrowest.
/// Directions: the ways of the joints between what comes and the rest of the frame (Joint::ways, reversed where the
/// receiver comes), the building's axes and the coming timber's own. Nothing comes through the ground, which lies at
/// the frame's lowest point.

#include <cstdint>
#include <vector>

#include "geometry/vec.h"
#include "raising/limits.h"

namespace bentbook {

enum class MoveKind : std::uint8_t {
  kLower,   ///< straight down from above everything
  kSlide,   ///< straight along `direction`
  kSpread,  ///< `who`, standing, yields along `direction` by `distance` at the joint and closes again at the end
  kSwing,   ///< turned into place about `pivot`: axis `direction`, right-handed, from `distance` radians short of it
};
struct Move {
  MoveKind kind = MoveKind::kLower;
  Vec3 direction{0, 0, -1};  ///< of travel, length 1
  double distance = 0;
  Vec3 pivot;
  std::vector<int> who;  ///< kSpread: the standing timbers that give way; else empty: all that comes
  friend bool operator==(const Move&, const Move&) = default;
};

enum class RemedyKind : std::uint8_t {
  kWithBent,     ///< put it together with `timbers` lying down and raise them as one
  kLeaveLoose,   ///< leave `timbers` out (or loose enough to come off) until this is in
  kChangeJoint,  ///< `joint` keeps it out: a joint open on the side it comes from would not
  kMoveApart,    ///< `timbers` and this one take the same room: the plan has to change
};
struct Remedy {
  RemedyKind kind = RemedyKind::kWithBent;
  std::vector<int> timbers;
  int joint = -1;  ///< index in Frame::joints
  friend bool operator==(const Remedy&, const Remedy&) = default;
};

/// Indices are those in Frame::timbers, in order.
struct Entry {
  bool free = false;
  std::vector<Move> path;     ///< free: in order of time; the last move ends in place
  std::vector<int> blockers;  ///< not free: the standing timbers in the way that has fewest of them
  std::vector<Move> blocked;  ///< not free: that way
  bool ground = false;        ///< not free: the ground is in that way too
  std::vector<Remedy> remedies;
  friend bool operator==(const Entry&, const Entry&) = default;
};

struct EntryLimits {
  double spread_most = limits::kMostSpread;  ///< inches, at the joint
  bool springing = true;                     ///< whether spreading and swinging are tried at all
};

}  // namespace bentbook
