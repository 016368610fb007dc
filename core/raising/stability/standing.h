#pragma once
/// Will it stand? What stands is rigid timbers, each joined to others and to the ground by what its joints hold at that
/// moment. Two checks: mechanisms (motions that nothing holds back) and feasible forces (whether forces that the joints
/// can give hold every load case). A result without faults means "no collapse found, as assumed", never "safe": a
/// competent person decides, local codes and licensed practice rule. World axes, inches, pounds.
///
/// What a joint holds before the lead changes it (HoldChange). Source: SOURCES.md, "what joints hold".
// clang-format off
///   | joint                 | holds                                                                                 |
///   |-----------------------|---------------------------------------------------------------------------------------|
///   | post on the ground    | a point; presses; sideways (and turning on the spot) and uplift when posts_anchored   |
///   | sill on the ground    | presses at its corners; sideways and uplift when posts_anchored                       |
///   | knife plate           | a point both ways, and no turning about the member's own axis; only with its pins in; |
///   |                       | what sits on it presses as on a tenon's shoulder                                      |
///   | tenon                 | a point: its shoulder presses; its cheeks and edges hold across the tenon both ways   |
///   |                       | and against turning about the member's own axis; its peg pulls only where changed     |
///   | brace's tenon         | a point: presses along the brace; holds across it (its own weight), against turning   |
///   | housed or plain butt  | what its faces press on                                                               |
///   | half-dovetail         | what its slope, shoulder and housing press on; its cheeks hold sideways; its wedges   |
///   |                       | and pegs hold uplift and pulling only where changed                                   |
///   | bird's mouth          | seat and heel press; uplift, along the plate and out of the heel only where changed   |
///   | rafter peak           | its faces press; a tongue's cheeks hold sideways                                      |
///   | half lap              | seat and shoulder press, the notch's sides hold the member; its peg pulls only where  |
///   |                       | changed                                                                               |
///   | scarf                 | seat and butts press, its pegs hold sideways; uplift and pulling only where changed   |
// clang-format on
/// HoldChange, for all joints of a kind: `sideways` holds level across both ways (for a tenon: false takes it away),
/// `uplift` holds the carried piece down, `pulls` holds the member's end in, along its axis. Where the plan fastens
/// with the step (FastenWhen), all three, for every kind that the lead has not changed. A joint that is fastened later
/// (RaisingPlan::later) holds what its wood does, a knife plate nothing. Pegs, pins, screws and nailed
/// braces carry what they are rated for, in each direction; unrated ones the low figures of limits.h. Guys pull, props
/// press, diagonals do both up to limits::kMostSlenderness (free length over thickness), else pull. There is no
/// friction, and no moment in a joint beyond what faces make that press at their corners. Faces that have another one
/// opposite in the same joint, or a screw or peg that keeps them shut, press along one line across the member only.
///
/// Load cases, λ multiplies what is in brackets: own weight × kLightShare and × kHeavyShare, each + λ (a push from one
/// of eight directions at every timber's centre of gravity: the greater of push_per_cent of its weight and the
/// stop-wind on it, limits::kWindPressure and kTimberDrag on its projected area, no shielding; and
/// out_of_plumb_per_mille of its weight the same way); own weight × the same + λ (a person on a timber's axis at the
/// first and at the last of its joints that stand). Forces for those two make forces for every joint between, since a
/// mean of two sets of forces is one too. The margin is the largest λ that forces can be found for, at most
/// limits::kMostFactor; 0 where even λ = 0 fails. Source: SOURCES.md, "statics".

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/limits.h"
#include "raising/plan.h"

namespace bentbook {

inline constexpr int kGround = -1;

enum class HoldKind : std::uint8_t {
  kPress,      ///< wood on wood
  kAcross,     ///< a tenon's cheeks, a notch's sides, a tongue
  kPin,        ///< a knife plate's point, pegs and screws where they are counted
  kFoot,       ///< the ground under a post or sill
  kTemporary,  ///< a guy, diagonal or prop
};

/// One force of unit size: along `direction` on timber `a` at `point`, against it on `b`. One-way: not less than 0.
struct HoldRow {
  int a = 0, b = kGround;  ///< indices in Frame::timbers
  Vec3 point, direction;
  bool two_way = false;
  double limit = 0;  ///< lb, 0: limits::kMostForce (contacts); two-way: of either sign
  HoldKind kind = HoldKind::kPress;
  int joint = -1;      ///< index in Frame::joints
  int temporary = -1;  ///< index in StandingModel::temporaries
};

struct StandingBody {
  Vec3 cg;
  double weight_lb = 0;  ///< at the frame's own moisture
  bool placed = false;   ///< what is not placed never stands
  double push_lb[8]{};   ///< by direction, out of plumb counted in
  bool wind_rules[8]{};  ///< the wind's part is the greater one
  Vec3 end_a, end_b;     ///< of its axis
};

struct StandingModel {
  std::vector<StandingBody> bodies;       ///< by timber
  std::vector<HoldRow> rows;              ///< joints first, by joint, then the ground's, by timber, then temporaries'
  std::vector<Temporary> temporaries;     ///< the plan's, then added ones
  std::vector<int> temporary_row;         ///< by temporary; −1: it holds nothing (unknown mark, no length)
  std::vector<std::vector<int>> touches;  ///< by timber: its rows, in order
  RaisingLoads loads;
  FastenerRatings ratings;
  std::vector<Vec3> joint_at;  ///< by joint
  std::vector<int> joint_member, joint_receiver, joint_carrier;
  std::vector<char> joint_pinned;  ///< a knife plate: nothing before its pins are in
  std::vector<int> bent;           ///< by timber, −1: of none
  std::vector<TimberKind> timber_kind;
  std::vector<Vec3> axis;  ///< by timber, end A to B
  std::vector<double> length;
  double ground_z = 0;
};

[[nodiscard]] StandingModel make_standing_model(const Frame& frame, const RaisingPlan& plan);
/// Its index. The model knows the frame's timbers by mark.
int add_temporary(StandingModel& model, const Frame& frame, const Temporary& temporary);

enum class WorldAxis : std::uint8_t { kAcross, kAlong, kUp };  ///< X, Y, Z
enum class ModeKind : std::uint8_t {
  kRacks,   ///< `bent` (or, −1, several timbers with `timber`) leans over along `axis`
  kSwings,  ///< `timber` swings about an end (at_end_a or not), its far end moving along `axis`
  kTurns,   ///< `timber` turns about its own axis
  kSlides,  ///< `timber` goes along `axis` as it is
  kMoves,   ///< `timber` and others move otherwise, most of all along `axis`
};
/// A small motion, the largest travel of any timber's end or centre scaled to 1.
struct TimberMotion {
  int timber = 0;
  Vec3 move;  ///< of the centre of gravity
  Vec3 turn;  ///< radians an inch of that travel, about the centre of gravity
};
struct Mode {
  ModeKind kind = ModeKind::kMoves;
  int timber = 0;  ///< that moves most
  int bent = -1;
  WorldAxis axis = WorldAxis::kAlong;
  bool at_end_a = true;
  std::vector<TimberMotion> motions;  ///< of what moves, in order
};

enum class LoadKind : std::uint8_t { kPush, kPerson };
struct LoadCase {
  LoadKind kind = LoadKind::kPush;
  bool heavy = false;  ///< weight × 1.15, else × 0.9
  int direction = 0;   ///< kPush: eighths of a turn from +X toward +Y
  int timber = -1;     ///< kPerson: on it
  Vec3 point;          ///< kPerson
  friend bool operator==(const LoadCase&, const LoadCase&) = default;
};

/// Pounds that hang on a timber that stands, straight down: of a piece set into it and held there.
struct HungWeight {
  int timber = 0;  ///< index in Frame::timbers
  Vec3 at;         ///< world
  double lb = 0;
};

enum class StandingWarningId : std::uint8_t {
  kOneWayOnly,   ///< no mechanism, yet forces fail: `timber`, `joint`: what would have to hold the other way too
  kOnOneBrace,   ///< without `temporary` (or, −1, the brace `timber`) it falls: forces looked at beside what comes
  kHookStaysOn,  ///< `timber` is not held yet
  kPinsNotIn,    ///< `joint` of `timber` holds nothing before its pins are in
  kNotForNight,  ///< said of all that stands only by temporaries or is not whole: no overnight wind, ask an engineer
  kNoRating,     ///< `temporary` has no rating: a low figure counts
  kLoose,        ///< `temporary` holds nothing: a mark is unknown or does not stand
};
struct StandingWarning {
  StandingWarningId id = StandingWarningId::kOneWayOnly;
  int timber = -1, joint = -1, temporary = -1;
  friend bool operator==(const StandingWarning&, const StandingWarning&) = default;
};

enum class StandingDepth : std::uint8_t {
  kRigid,    ///< mechanisms counted, not described
  kStands,   ///< and whether every case holds at λ = 1
  kExplain,  ///< modes, margin, rows and warnings too
};

struct StandingCheck {
  int mechanisms = 0;              ///< dimension of the null space, one-way rows counted as two-way
  double least_singular = 0;       ///< smallest pivot counted as held, of rows and columns brought to size 1 (kExplain)
  std::vector<Mode> modes;         ///< kExplain; as many as mechanisms
  bool forces = false;             ///< every load case holds at λ ≥ 1 (looked at only without mechanisms)
  double factor = 0;               ///< kExplain: margin of the worst case, in thousandths; else 1 or 0
  LoadCase worst;                  ///< where not `forces`, or kExplain
  std::vector<int> hangs_on;       ///< kExplain: rows of the model that keep λ from growing, most first
  std::vector<TimberMotion> fall;  ///< where forces fail: how it begins to go
  std::vector<StandingWarning> warnings;
  bool not_decided = false;  ///< the solver found neither forces nor a proof that there are none: counted as a fall
  [[nodiscard]] bool stands() const { return mechanisms == 0 && forces; }
};

/// Checks one set after another and keeps what it can use again. Answers do not depend on what was asked before.
/// The model must outlive it; temporaries may be added to it meanwhile.
class StandingRun {
 public:
  explicit StandingRun(const StandingModel& model);
  ~StandingRun();
  StandingRun(StandingRun&&) noexcept;
  StandingRun& operator=(StandingRun&&) noexcept;
  /// Indices out of range, doubled or not placed are passed over; nothing standing stands. `coming`: those of `timbers`
  /// that have just come, for the warnings.
  [[nodiscard]] StandingCheck check(std::span<const int> timbers, std::span<const int> temporaries,
                                    StandingDepth depth = StandingDepth::kExplain, std::span<const int> coming = {});
  [[nodiscard]] bool rigid(std::span<const int> timbers, std::span<const int> temporaries);
  [[nodiscard]] bool stands(std::span<const int> timbers, std::span<const int> temporaries);
  /// What it remembers, for a copy of its model to which temporaries were added.
  [[nodiscard]] StandingRun on(const StandingModel& more) const;

  struct Memory;

 private:
  std::unique_ptr<Memory> memory_;
};

[[nodiscard]] StandingCheck check_standing(const StandingModel& model, std::span<const int> timbers,
                                           std::span<const int> temporaries,
                                           StandingDepth depth = StandingDepth::kExplain,
                                           std::span<const int> coming = {});

/// Diagonals, as few as are found, that with `temporaries` make it stand. From posts to stakes in the ground; from what
/// moves to what it is joined to, on both sides of the joint, to other timbers near, or (guys) to the ground. First one
/// for each mechanism, each time the one that holds back most of what still moves; then, case by case that fails, the
/// one that is in its way most; then those that turn out not to be needed are taken out again. More than
/// limits::kMostBraces are not tried. Names are left empty.
struct BraceProposal {
  bool cures = false;  ///< with them it stands
  std::vector<Temporary> braces;
  int at_least = 0;  ///< no fewer can do: mechanisms, each brace holds one
};
[[nodiscard]] BraceProposal propose_braces(const StandingModel& model, const Frame& frame, StandingRun& run,
                                           std::span<const int> timbers, std::span<const int> temporaries);

}  // namespace bentbook
