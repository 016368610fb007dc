#pragma once
/// One pick: what it weighs, by what it goes up, and by which figures: hands, where it is slung, what the legs pull,
/// which of the user's gear and which reading of a load chart carries it. It proposes; a competent person decides.
/// World axes, inches, pounds.
///
/// By what, where the lead does not say it for the step. What limits::kCarriers carry goes by hand, whatever stands in
/// the yard; else by telehandler, crane one, crane two or gin pole, the first that carries it; else by more hands, each
/// person the crew's limit, pairs along a piece as there is room, up high no more than limits::kHandsUpHigh. What has
/// posts is tipped up about its feet by hands, then pikes, where no machine carries it (a bent as the lead says:
/// RaisingPlan::bents); else by poles and ropes, where the crew pulls it all: no tackle is counted. Of what hangs, is
/// tipped or pulled up two stay on the lines; who holds what is set first lifts nothing. Where nothing carries it, the
/// one that comes nearest is told, a machine before hands. Until crew or gear is entered (lifting_entered) nothing is
/// refused for want of people: the pick is `open`. Source: SOURCES.md, "by hand", "hands up high", "room for hands".
///
/// Weight: the heavier of the timber at the plan's moisture and green, and wet_per_cent on top. What is made out of
/// steel (plates, pins) is not in it: put it into the crane's rigging.
///
/// Points. One timber as it will lie, or level: two, alike far from the centre of gravity along it, up to the quarter
/// points, on its upper face; nearer together where the user's slings are too short for 60° from level. A timber that
/// will stand (60° and steeper): one, above its centre of gravity, on a sling that brings the hook past its upper end.
/// Timbers together, hanging as they will stand: two points on what is topmost, alike far from the centre of gravity in
/// plan along the longer way; four where the other way is more than limits::kFlat to either side.
///
/// Gear. Legs grip the wood as chokers, with the tag's choker figure; a sling whose tag has none is counted straight,
/// to a fitting (kNeedsFitting). The lightest of the user's slings that carries it at limits::kSlingWarn or steeper is
/// taken; else a spreader, with plumb legs, where one carries it; else the best there is, and what is wrong with it is
/// said.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/lifting/crane.h"
#include "raising/lifting/sling.h"
#include "raising/plan.h"

namespace bentbook {

/// What lifting needs to know of a timber, by its index; found once for many picks.
struct PickBody {
  /// Wet_per_cent counted in, up to whole pounds, so that parts as they are printed add up to the whole.
  double weight_lb = 0;
  Vec3 cg;  ///< world
};
[[nodiscard]] std::vector<PickBody> pick_bodies(const Frame& frame, const RaisingPlan& plan);

enum class PickNoteId : std::uint8_t {
  kAngleFlat,     ///< a leg below limits::kSlingWarn; value: its degrees from level
  kAngleTooFlat,  ///< …limits::kSlingRefuse: refused
  kNoSlings,      ///< the gear has none; value: lb that each leg must carry, value2: inches that it must be long
  kSlingWeak,     ///< refused: none carries it; value: lb a leg, value2: the most that one of them carries
  kSlingShort,    ///< refused: none is long enough; value: inches wanted, value2: the longest
  kSlingsFew,     ///< refused: not enough of one kind; value: wanted, value2: the most of one kind
  kNeedsFitting,  ///< the sling may not be choked: it wants a fitting that carries value lb
  kShackleWeak,   ///< refused: no shackles carry value lb each; value2: the most
  kNoShackles,    ///< the gear has none
  kSpreader,      ///< hangs from a spreader
  kTakeUp,        ///< legs are unlike: one is taken up by value inches
  kSlides,        ///< hangs at value degrees: stop the slings from sliding along it
  kLeans,         ///< leans over by value degrees as it hangs
  kTurnsOver,     ///< refused: points are not above the centre of gravity; value: inches above
  kNoPoints,      ///< refused: nothing topmost on both sides of the centre of gravity
  kTwoOfFour,     ///< of four legs two are counted
  kNoMachine,     ///< refused: what is to lift it is not in the yard
  kOverCapacity,  ///< refused: value: weight, value2: net capacity
  kPastChart,     ///< refused: value: radius, value2: the chart's longest, inches
  kNearLimit,     ///< value: share of the net capacity
  kMorePeople,    ///< refused: value: people wanted with lines and what is held, value2: the crew
  kNoRoom,        ///< refused: value: people wanted, value2: how many find a hold there
  kNoPikes,       ///< refused: a bent is out of reach of hands from value degrees on, and there are no pikes and ropes
  kNotRated,      ///< refused: the gin pole has no rated load, or nobody is named who rated it
  kNotTipped,     ///< refused: only a bent or a post is tipped up
  kUpHigh,        ///< set by hand from a deck or staging; value: whole inches up, to its centre of gravity
};
inline constexpr int kPickNotes = 26;
/// Whether it refuses the pick.
[[nodiscard]] bool refuses(PickNoteId id);

struct PickNote {
  PickNoteId id = PickNoteId::kAngleFlat;
  double value = 0, value2 = 0;
  friend bool operator==(const PickNote&, const PickNote&) = default;
};

/// Whether it hangs from a hook.
[[nodiscard]] constexpr bool hangs(LiftBy by) { return by >= LiftBy::kTelehandler && by <= LiftBy::kGinPole; }

struct PickLeg {
  int timber = 0;
  double station = 0;  ///< from end A's tip
  Vec3 at;             ///< world, the timber in its place
  double length = 0, from_level = 90, tension = 0;
};

struct Pick {
  std::vector<int> timbers;
  double weight_lb = 0;
  Vec3 cg;                  ///< world, in place
  double hang_degrees = 0;  ///< one timber: how far its end B hangs above its end A
  LiftBy by = LiftBy::kHands;
  bool open = false;          ///< neither crew nor gear is entered, and it is more than a crew to begin with lifts
  double carries_lb = 0;      ///< the most that goes up by that, there
  bool rated = false;         ///< …as a chart or a tag says; only then is there a margin
  int people = 0;             ///< not hanging: who lift, at the crew's own limit each; 0: beyond_hands
  int lines = 0;              ///< on tag lines or ropes
  int busy = 0;               ///< …who hold what is set first
  std::vector<PickLeg> legs;  ///< hanging; empty: kNoPoints
  double least_angle = 90, most_tension = 0;
  int sling = -1, shackle = -1, spreader = -1;  ///< indices in RaisingPlan::gear
  double sling_carries = 0;                     ///< lb, one leg, as it is used
  bool choked = false;
  CraneLift crane;  ///< by telehandler or crane
  std::vector<PickNote> notes;
  [[nodiscard]] bool refused() const;
  /// No gear is entered, and where it goes hands do not lift at all.
  [[nodiscard]] bool beyond_hands() const { return open && people == 0; }
  [[nodiscard]] int needed() const { return people + lines + busy; }
  [[nodiscard]] double margin_lb() const { return carries_lb - weight_lb; }  ///< where it is rated
};

/// Indices in Frame::timbers; those out of range are passed over. Nothing to lift: weight 0, no notes. `by`: as the
/// lead says; `busy`: people who hold what is set first.
[[nodiscard]] Pick solve_pick(const Frame& frame, const RaisingPlan& plan, std::span<const int> timbers);
[[nodiscard]] Pick solve_pick(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                              std::span<const int> timbers, LiftBy by = LiftBy::kAsTheYard, int busy = 0);

/// For the search: false where a machine stands in the yard and nothing carries it. Where none does an order is
/// proposed all the same, and its check says who is wanting.
[[nodiscard]] bool can_pick(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                            std::span<const int> timbers);

}  // namespace bentbook
