#pragma once
/// Can it go in? For timbers that come in together and the set that stands: along which straight ways, by which short
/// moves, or what is in the way and what to do instead. World axes, inches.
///
/// A way counts as free where the solids (pockets taken out, pegs not in) nowhere take the same room on it by more
/// than `limits::kTouching`. Tried, in this order: lowered straight from above; lowered beside its place and slid in;
/// straight in from far away; slid in and brought from far away along another line; with standing timbers spread apart;
/// swung about an end. What spreads takes along what it would push, and only it (no pins are in there yet); its feet
/// turn on the sills, so that the move of its joint stands for a tilt: so far that the opening is enough at the lower
/// edge too. Directions: the ways of the joints between what comes and the rest of the frame (Joint::ways, turned round
/// where the receiver comes), the building's axes and the coming timber's own. Nothing comes through the ground, which
/// lies at the frame's lowest point.

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/insertion/move_cells.h"
#include "raising/limits.h"
#include "raising/plan.h"

namespace bentbook {

enum class MoveKind : std::uint8_t {
  kLower,   ///< straight down from above everything
  kSlide,   ///< straight along `direction`
  kSpread,  ///< `who`, standing, gives way along `direction` by `distance` at the joint and closes again at the end
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
  kChangeJoint,  ///< `joint` keeps it out: one that is open on the side it comes from would not
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
  std::vector<Move> path;     ///< in order of time; its last one ends in place
  std::vector<int> blockers;  ///< not free: what stands in the way that has the fewest in it
  std::vector<Move> blocked;  ///< not free: that way
  bool ground = false;        ///< not free: the ground is in that way too
  std::vector<Remedy> remedies;
  friend bool operator==(const Entry&, const Entry&) = default;
};

struct EntryLimits {
  double spread_most = limits::kMostSpread;  ///< inches, at the joint
  bool springing = true;                     ///< whether spreading and swinging are tried at all
};

/// Whether an assembly can be put together lying down, part by part, each along a straight way (or two).
struct Together {
  bool possible = false;
  std::vector<int> order;  ///< of its timbers
  std::vector<int> stuck;  ///< not possible: those that hold each other
};

/// The directional blocking graph of a frame, found out as it is asked for and then kept. Answers do not depend on
/// what was asked before.
class Blocking {
 public:
  /// The frame must outlive it.
  explicit Blocking(const Frame& frame);
  ~Blocking();
  Blocking(Blocking&&) noexcept;
  Blocking& operator=(Blocking&&) noexcept;

  [[nodiscard]] int count() const;
  /// Timbers out of range, not placed, or already standing are passed over.
  [[nodiscard]] Entry entry(std::span<const int> coming, std::span<const int> standing, const EntryLimits& limits = {});
  /// Whether it can come in by straight ways alone: cheap once asked for about these timbers.
  [[nodiscard]] bool straight(std::span<const int> coming, std::span<const int> standing);
  /// The same, and which timbers of the frame, standing or not, lie in the way found: as long as none of them stands,
  /// that way stays free.
  [[nodiscard]] bool clear_way(std::span<const int> coming, std::span<const int> standing, std::vector<int>& in_it);
  [[nodiscard]] Together together(std::span<const int> timbers);
  [[nodiscard]] const MoveBody& body(int timber);
  /// Whether two timbers take the same room where they belong.
  [[nodiscard]] bool clash(int a, int b);

  struct Inside;  ///< blocking_inside.h
  [[nodiscard]] const Inside& graph() const { return *inside_; }

 private:
  std::unique_ptr<Inside> inside_;
};

enum class AssemblyStyle : std::uint8_t { kBents, kWalls };

/// What could be put together lying down and raised as one. kBents: what stands in a bent's plane from the posts to
/// the tie and what it carries there; kWalls: posts, plates, girts and braces of an eave wall. Both: pairs of rafters
/// that hold each other at the peak, with their collar. Only assemblies of two timbers or more that can be put
/// together (what keeps one from that is left out); a timber is in one of them at most.
[[nodiscard]] std::vector<Assembly> propose_assemblies(const Frame& frame, Blocking& blocking,
                                                       AssemblyStyle style = AssemblyStyle::kBents);

}  // namespace bentbook
