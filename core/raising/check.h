#pragma once
/// The lead's own order, judged step by step: can it go in, does it stand when the sling comes off and after what is
/// taken out, are supports and wishes kept. "Good" says that no fault was found as assumed, never that it is safe.

#include <cstdint>
#include <string>
#include <vector>

#include "frame/plan.h"
#include "raising/insertion/blocking.h"
#include "raising/lifting/pick.h"
#include "raising/order_judge.h"
#include "raising/plan.h"

namespace bentbook {

enum class OrderFaultId : std::uint8_t {
  kUnknownMark,       ///< `marks` names no timber of the frame
  kNotPlaced,         ///< …a timber that has no place in the building
  kTwice,             ///< …a timber that an earlier step has (value: that step's index)
  kSupportMissing,    ///< marks[0] comes before what carries it: the others
  kWishCycle,         ///< `marks`: each must stand before the next one, the last before the first (step −1)
  kWishBroken,        ///< `wish`; `marks`: the two (kDay: the one) that break it
  kCantGoIn,          ///< see StepCheck::entry; `marks`: the blockers
  kCantStand,         ///< see StepCheck; said of every step, first_unstable is the first
  kCantPick,          ///< more than yard and crew carry; `marks`: what comes; `note` and its values say why
  kUnknownTemporary,  ///< `marks`: its name
  kTemporaryTwice,    ///< put up while it is up
  kTemporaryNotUp,    ///< taken out while it is not up
  kTemporaryLoose,    ///< marks[0]: its name; an end of it is at marks[1], which does not stand
  kTemporariesLeft,   ///< `marks`: names; nothing takes them out (step −1)
  kTemporaryIdle,     ///< `marks`: names; from this step on what stands needs none of them
  kHangsOnOne,        ///< the lead wants a spare: without marks[0], a temporary's name, it falls
  kHeldTooHeavy,      ///< marks[0] is set first and held; value: lb to hold, value2: lb that people at it can
  kHandsShort,        ///< value: people wanted for what is held, value2: people free for it
  kNotSeated,         ///< marks[0] is set first, into nothing that stands: the others carry it
  kNotCaught,         ///< marks[0] is set first, and what comes is not joined to it
  kNoSuchJoint,       ///< `marks`: two timbers, said to be fastened later and not joined (step −1)
  kHeldFalls,         ///< `marks` are set first, and what stands does not bear them until the main piece closes
  kWholeFalls,        ///< all that the order brings does not stand, as assumed, with no temporary (step −1)
};
inline constexpr int kOrderFaults = 23;

struct OrderFault {
  OrderFaultId id = OrderFaultId::kUnknownMark;
  int step = -1;  ///< index in RaisingPlan::steps, −1: of the whole order
  std::vector<std::string> marks;
  int wish = -1;  ///< index in RaisingPlan::wishes
  double value = 0, value2 = 0;
  PickNoteId note = PickNoteId::kAngleFlat;  ///< kCantPick: what refuses it
  friend bool operator==(const OrderFault&, const OrderFault&) = default;
};

/// A piece set before the main ones.
struct SetCheck {
  int timber = 0;
  HeldBy by = HeldBy::kHands;
  int hands = 0;  ///< people who hold it; 0: something else does
  double lb = 0;  ///< what they hold
  Entry entry;    ///< past what stands and what is set before it
};

/// Indices in Frame::timbers and RaisingPlan::temporaries, in order.
struct StepCheck {
  int step = 0;
  std::vector<SetCheck> set;            ///< set first, in order of time
  std::vector<int> main;                ///< what closes on them, all at once
  std::vector<int> timbers;             ///< both: all that comes in
  std::vector<int> stood;               ///< what stands before
  std::vector<int> temporaries_before;  ///< up when it begins
  std::vector<int> temporaries;         ///< up when the sling comes off
  std::vector<int> temporaries_after;   ///< up at the end of the step
  Entry entry;                          ///< of what closes
  StandingCheck standing;               ///< when the sling comes off, with `temporaries`
  bool bears = true;                    ///< what stands bears what is set first, until it is caught
  bool stands = false;                  ///< …its verdict
  bool stands_after = false;            ///< at the end, with `temporaries_after`
  bool bare = false;                    ///< what stands at its end stands with no temporary
  int hangs_on = -1;  ///< the temporary without which alone it falls, looked for where the plan wants a spare
  bool lifts = false;
  bool day_goes_back = false;  ///< an earlier day than the step before it
  bool good = false;           ///< it goes in, stands before and after, can be picked, and no fault names it
};

struct OrderCheck {
  std::vector<StepCheck> steps;    ///< one to each of the plan's
  std::vector<OrderFault> faults;  ///< in order of steps, those of the whole order first
  std::vector<int> left_out;       ///< placed timbers that no step brings
  int first_bad = -1;              ///< index of the first step that is not good
  int first_unstable = -1;         ///< …that does not stand
  [[nodiscard]] bool good() const { return faults.empty() && first_bad < 0; }
};

/// How a timber may come in: what is pegged, pinned or screwed as it closes does not spread.
[[nodiscard]] EntryLimits entry_limits(const RaisingPlan& plan);

/// Whether two plans differ in nothing that a judge looks at except their steps, so that one judge serves both.
[[nodiscard]] bool same_judgement(const RaisingPlan& a, const RaisingPlan& b);

/// `depth`: how much each step says of its standing; kExplain costs far more than the verdict.
[[nodiscard]] OrderCheck check_order(const Frame& frame, const RaisingPlan& plan,
                                     StandingDepth depth = StandingDepth::kStands);
/// The same with a judge and a blocking graph that are there already.
[[nodiscard]] OrderCheck check_order(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                                     StandingDepth depth = StandingDepth::kStands);
/// The same answer, sooner. `before` is the check of the plan `was`, on the same frame. Where the plans have the
/// same_judgement, a step is taken over if the same timbers stand before it, the same come in and the same temporaries
/// are up; else all is checked.
[[nodiscard]] OrderCheck check_order_again(const Frame& frame, const RaisingPlan& plan, Judge& judge,
                                           Blocking& blocking, const OrderCheck& before, const RaisingPlan& was);

}  // namespace bentbook
