#pragma once
/// What the lead says about the raising: the order, temporary braces, wishes, gear, crew, limits. Plain values, kept in
/// the book. Timbers are named by their marks: what the plan no longer has is kept and said, never dropped.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "frame/joints/joint.h"
#include "measure/length.h"
#include "measure/weight.h"
#include "raising/limits.h"

namespace bentbook {

/// A point of a placed timber, by its station from end A's tip along its axis.
struct TimberPoint {
  std::string mark;
  Length station{};
  friend bool operator==(const TimberPoint&, const TimberPoint&) = default;
};

enum class TemporaryKind : std::uint8_t {
  kGuy,       ///< rope or cable to an anchor in the ground: pulls alone
  kDiagonal,  ///< nailed 2x between two timbers or to a stake: pulls; presses up to limits::kMostSlenderness
  kProp,      ///< post or shore: presses alone
};
inline constexpr std::array<std::string_view, 3> kTemporaryWords = {"guy", "diagonal", "prop"};

/// A temporary brace. It runs from a point of a timber to a point of another one, or, where `to.mark` is empty, to a
/// point of the ground. A rating of 0 is not known: a diagonal then counts as FastenerRatings says, guys and props for
/// limits::kUnratedBraceLb, and the app says so.
struct Temporary {
  std::string name;  ///< also its id, "T1"
  TemporaryKind kind = TemporaryKind::kDiagonal;
  TimberPoint from, to;
  Length ground_x{}, ground_y{}, ground_z{};  ///< world; where `to.mark` is empty
  Length thickness = Length::inches(3, 2);    ///< diagonals: the thinner side
  Weight rated{};                             ///< of piece, nails and anchor, the least of them
  friend bool operator==(const Temporary&, const Temporary&) = default;
};

/// Timbers put together lying down and raised as one.
struct Assembly {
  std::string name;
  std::vector<std::string> marks;
  friend bool operator==(const Assembly&, const Assembly&) = default;
};

/// Who or what holds a piece that is set before the step's main piece closes on it.
enum class HeldBy : std::uint8_t {
  kHands,
  kCleat,  ///< a block nailed under it
  kRope,
  kPeg,  ///< one peg through its tenon, on which it may still turn
};
inline constexpr std::array<std::string_view, 4> kHeldWords = {"hands", "cleat", "rope", "peg"};

/// A piece set into what stands and held there until the step's main piece catches it: a knee brace under the plate, a
/// girt between two bents, the rafter opposite.
struct SetPiece {
  std::string mark;
  HeldBy by = HeldBy::kHands;
  friend bool operator==(const SetPiece&, const SetPiece&) = default;
};

/// By what a pick goes up: raising/lifting/pick.h says how it is judged.
enum class LiftBy : std::uint8_t {
  kAsTheYard,  ///< the first of the others that carries it
  kHands,
  kTipUp,  ///< a bent or a post about its feet, by hands, then pikes
  kTelehandler,
  kCrane,
  kCraneTwo,
  kGinPole,
  kPoles,  ///< poles and ropes, the crew pulling
};
inline constexpr std::array<std::string_view, 8> kLiftByWords = {"as_the_yard", "hands",     "tip_up",   "telehandler",
                                                                 "crane",       "crane_two", "gin_pole", "poles"};

/// One pick: a timber, or an assembly's timbers, or nothing but temporary braces put up and taken out.
struct RaisingStep {
  std::vector<std::string> marks;     ///< what comes in, all at once
  std::vector<std::string> put_up;    ///< temporaries that stand before the sling comes off
  std::vector<std::string> take_out;  ///< temporaries taken out at the end of the step
  int day = 1;
  bool done = false;
  std::vector<SetPiece> set_first;  ///< in order of time, before `marks`
  LiftBy by = LiftBy::kAsTheYard;   ///< as the lead says
  friend bool operator==(const RaisingStep&, const RaisingStep&) = default;
};

enum class WishKind : std::uint8_t {
  kBefore,     ///< all of `marks` before all of `others`
  kTogether,   ///< `marks` in one pick
  kDay,        ///< `marks` on `number`'s day
  kStartFrom,  ///< the bent labelled `number` first
};
inline constexpr std::array<std::string_view, 4> kWishWords = {"before", "together", "day", "start_from"};
struct Wish {
  WishKind kind = WishKind::kBefore;
  std::vector<std::string> marks, others;
  int number = 1;
  friend bool operator==(const Wish&, const Wish&) = default;
};

/// A row of the crane's own load chart.
struct ChartRow {
  Length radius;
  Weight capacity;
  friend bool operator==(const ChartRow&, const ChartRow&) = default;
};
/// A crane or telehandler. Its chart is read at the next longer radius, never between rows; block and rigging are taken
/// off what it says.
struct Crane {
  bool present = false;
  std::vector<ChartRow> chart;
  Weight hook_block{}, rigging{};
  Length x{}, y{};  ///< where it stands, world
  friend bool operator==(const Crane&, const Crane&) = default;
};

/// A gin pole or shear legs. Without a rated load and who rated it nothing hangs from it.
struct GinPole {
  bool present = false;
  Weight rated{};
  std::string rated_by;
  friend bool operator==(const GinPole&, const GinPole&) = default;
};

/// How bents go up that are put together lying down.
enum class BentsGoUp : std::uint8_t {
  kAsTheYard,  ///< picked where something in the yard carries them, else tipped up
  kTipUp,      ///< by hand about their feet
  kPick,       ///< picked, or not at all
};
inline constexpr std::array<std::string_view, 3> kBentsWords = {"as_the_yard", "tip_up", "pick"};

enum class GearKind : std::uint8_t { kSling, kShackle, kSpreader };
inline constexpr std::array<std::string_view, 3> kGearWords = {"sling", "shackle", "spreader"};
/// A piece of the user's own gear. `rated`: as its tag says, straight pull; `choked`: the tag's figure for a choker,
/// 0: the tag gives none and it may not be choked.
struct LiftingGear {
  std::string name;
  GearKind kind = GearKind::kSling;
  Length length = Length::feet(8);
  Weight rated{}, choked{};
  int count = 2;
  friend bool operator==(const LiftingGear&, const LiftingGear&) = default;
};

struct Crew {
  int people = 6;
  Weight each = Weight::pounds(limits::kHandLb);  ///< the crew's own limit per person
  bool entered = false;                           ///< the lead said so, even where it is what the app begins with
  std::string on_lines, on_poles;                 ///< who, by name, as the lead writes it; "": not said
  friend bool operator==(const Crew&, const Crew&) = default;
};

/// What the lead lets a kind of joint hold, against what the app assumes (standing.h). Looser wants a reason.
struct HoldChange {
  JointKind joint = JointKind::kMortiseTenon;
  bool sideways = false, uplift = false, pulls = false;
  std::string reason;
  friend bool operator==(const HoldChange&, const HoldChange&) = default;
};

/// When pegs, pins and screws go in.
enum class FastenWhen : std::uint8_t {
  kLater,     ///< after the raising, or on the lead's word for a kind of joint (HoldChange)
  kWithStep,  ///< those of every joint that a step closes, before the sling comes off
};
inline constexpr std::array<std::string_view, 2> kFastenWords = {"later", "with_step"};

/// The joints between two timbers, in whichever order they are named.
struct JointName {
  std::string one, other;
  friend bool operator==(const JointName& a, const JointName& b) {
    return (a.one == b.one && a.other == b.other) || (a.one == b.other && a.other == b.one);
  }
};

/// What one fastener carries, as the lead or the engineer says; 0: not known, then a low figure of limits.h counts and
/// the app says so. A pin is a knife plate's; a nailed brace is counted whole, with the nails at its weaker end.
struct FastenerRatings {
  Weight peg{}, pin{}, screw{}, nailed_brace{};
  std::string source;  ///< where the figures come from
  friend bool operator==(const FastenerRatings&, const FastenerRatings&) = default;
};

/// Where king and queen posts belong: raised with their bents, or set later, with what lies on them.
enum class KingPosts : std::uint8_t { kWithRidge, kWithBents };
inline constexpr std::array<std::string_view, 2> kKingWords = {"with_ridge", "with_bents"};

/// What every step is checked against.
struct RaisingLoads {
  int wind_mph = limits::kStopWindMph;       ///< at which the crew stops; no shielding
  int push_per_cent = limits::kPushPerCent;  ///< of the weight, from eight directions, where that is more than the wind
  Weight person = Weight::pounds(limits::kPersonLb);  ///< at any joint in reach
  int out_of_plumb_per_mille = limits::kOutOfPlumbPerMille;
  int wet_per_cent = limits::kWetPerCent;  ///< added to the weights of picks
  friend bool operator==(const RaisingLoads&, const RaisingLoads&) = default;
};

struct Truck {
  Length length = Length::feet(24);
  Weight carries = Weight::pounds(10'000);
  friend bool operator==(const Truck&, const Truck&) = default;
};

struct RaisingPlan {
  std::vector<RaisingStep> steps;  ///< the lead's order; what is in none of them is not yet in the order
  std::vector<Temporary> temporaries;
  std::vector<Assembly> assemblies;
  std::vector<Wish> wishes;
  Crane crane, crane_two, telehandler;
  GinPole gin_pole;
  bool poles = false;  ///< pikes, poles and ropes are there
  BentsGoUp bents = BentsGoUp::kAsTheYard;
  std::vector<LiftingGear> gear;
  Crew crew;
  RaisingLoads loads;
  std::vector<HoldChange> holds;
  FastenWhen fasten = FastenWhen::kLater;
  std::vector<JointName> later;  ///< of kWithStep: those left for after the raising, whatever `holds` says
  FastenerRatings ratings;
  bool spare = false;  ///< no step may hang on one temporary brace
  KingPosts kings = KingPosts::kWithRidge;
  bool posts_anchored = true;  ///< feet are screwed or bolted down before the sling comes off
  Truck truck;
  Length stack_x = Length::feet(-20), stack_y{};  ///< where the timbers lie, world
  friend bool operator==(const RaisingPlan&, const RaisingPlan&) = default;
};

/// Whether a machine stands in the yard from whose hook things hang.
[[nodiscard]] inline bool has_hook(const RaisingPlan& plan) {
  return plan.crane.present || plan.crane_two.present || plan.telehandler.present || plan.gin_pole.present;
}
/// Whether the lead said who and what lifts: until then no pick is judged.
[[nodiscard]] inline bool lifting_entered(const RaisingPlan& plan) {
  const Crew start;
  const bool crew = plan.crew.entered || plan.crew.people != start.people || plan.crew.each != start.each;
  return crew || has_hook(plan) || plan.poles || !plan.gear.empty();
}

}  // namespace bentbook
