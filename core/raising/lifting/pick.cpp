#include "raising/lifting/pick.h"

#include <algorithm>

#include "frame/facts.h"
#include "raising/lifting/hand_raise.h"
#include "raising/lifting/slinging.h"
#include "raising/limits.h"

namespace bentbook {
namespace {

constexpr int kTooMany = 1'000'000;  ///< people, where the crew carries nothing

int people_for(const Crew& crew, double lb) {
  if (crew.each.count <= 0) return kTooMany;
  return static_cast<int>(libm::ceil(std::min<double>(lb / crew.each.lb() - 1e-9, kTooMany)));
}

bool has_posts(const Frame& frame, std::span<const int> timbers) {
  return std::any_of(timbers.begin(), timbers.end(),
                     [&](int t) { return frame.timbers[static_cast<std::size_t>(t)].kind == TimberKind::kPost; });
}

/// One way after the other, for one pick.
class Picking {
 public:
  Picking(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies, const Pick& bare, LiftBy asked)
      : frame_(frame), plan_(plan), bodies_(bodies), bare_(bare), asked_(asked) {
    if (!has_posts(frame, bare.timbers)) return;
    post_ = bare.timbers.size() == 1;
    const auto lying = lay_on_ground(frame, bare.timbers);
    bent_ = !post_ && lying && lying->timbers.size() == bare.timbers.size();
  }

  [[nodiscard]] Pick solve() const {
    std::optional<Pick> best;
    for (const LiftBy by : asked_ == LiftBy::kAsTheYard ? ways() : std::vector{asked_}) {
      Pick now = by_way(by);
      if (!now.refused()) return now;
      if (!best || nearer(now, *best)) best = std::move(now);
    }
    Pick pick = best ? *best : with_note(LiftBy::kCrane, {PickNoteId::kNoMachine, 0, 0});
    if (lifting_entered(plan_)) return pick;
    pick.open = true;
    if (std::any_of(pick.notes.begin(), pick.notes.end(),
                    [](const PickNote& note) { return note.id == PickNoteId::kNoRoom; }))
      pick.people = 0;
    std::erase_if(pick.notes, [](const PickNote& note) { return refuses(note.id); });
    return pick;
  }

 private:
  /// In the order in which they are asked.
  [[nodiscard]] std::vector<LiftBy> ways() const {
    std::vector<LiftBy> all;
    const BentsGoUp bents = bent_ ? plan_.bents : BentsGoUp::kAsTheYard;
    const bool carried = people_for(plan_.crew, bare_.weight_lb) <= limits::kCarriers;
    if (!bent_ && carried) all.push_back(LiftBy::kHands);
    if (bents != BentsGoUp::kTipUp)
      for (const LiftBy by : {LiftBy::kTelehandler, LiftBy::kCrane, LiftBy::kCraneTwo, LiftBy::kGinPole})
        if (in_yard(by)) all.push_back(by);
    if (!bent_ && !post_ && !carried) all.push_back(LiftBy::kHands);
    if ((bent_ || post_) && bents != BentsGoUp::kPick) all.push_back(LiftBy::kTipUp);
    if (!bent_ && plan_.poles) all.push_back(LiftBy::kPoles);
    return all;
  }

  [[nodiscard]] bool in_yard(LiftBy by) const {
    switch (by) {
      case LiftBy::kTelehandler:
        return plan_.telehandler.present;
      case LiftBy::kCrane:
        return plan_.crane.present;
      case LiftBy::kCraneTwo:
        return plan_.crane_two.present;
      case LiftBy::kGinPole:
        return plan_.gin_pole.present;
      case LiftBy::kPoles:
        return plan_.poles;
      default:
        return true;
    }
  }

  /// What it carries of what is wanted decides, a machine before hands.
  static bool nearer(const Pick& a, const Pick& b) {
    if (hangs(a.by) != hangs(b.by)) return hangs(a.by);
    return a.carries_lb > b.carries_lb;
  }

  [[nodiscard]] Pick by_way(LiftBy by) const {
    if (!in_yard(by)) return with_note(by, {PickNoteId::kNoMachine, 0, 0});
    switch (by) {
      case LiftBy::kHands:
        return by_hands();
      case LiftBy::kTipUp:
        return bent_ || post_ ? tipped_up() : with_note(by, {PickNoteId::kNotTipped, 0, 0});
      case LiftBy::kPoles:
        return by_crew(by, people_for(plan_.crew, bare_.weight_lb), limits::kTagLines, kTooMany);
      default:
        return from_a_hook(by);
    }
  }

  [[nodiscard]] Pick with_note(LiftBy by, const PickNote& note) const {
    Pick pick = bare_;
    pick.by = by;
    pick.notes.push_back(note);
    return pick;
  }

  /// `people` of whom `room` find a hold, while `lines` stay on the lines.
  [[nodiscard]] Pick by_crew(LiftBy by, int people, int lines, int room) const {
    Pick pick = bare_;
    pick.by = by;
    pick.people = people;
    pick.lines = lines;
    const int hands = std::max(0, std::min(room, plan_.crew.people - lines - pick.busy));
    // A bent's feet carry the rest of it.
    const double share = people > 0 ? static_cast<double>(hands) / people : 0;
    pick.carries_lb = by == LiftBy::kTipUp ? bare_.weight_lb * share : hands * plan_.crew.each.lb();
    if (people > room)
      pick.notes.push_back({PickNoteId::kNoRoom, static_cast<double>(people), static_cast<double>(room)});
    else if (people > hands)
      pick.notes.push_back(
          {PickNoteId::kMorePeople, static_cast<double>(pick.needed()), static_cast<double>(plan_.crew.people)});
    return pick;
  }

  [[nodiscard]] Pick by_hands() const {
    int room = limits::kHandsUpHigh;
    const bool high = bare_.cg.z > limits::kHandReach;
    if (!high && bare_.timbers.size() == 1)
      room = std::max(room, 2 * static_cast<int>(frame_.timbers[static_cast<std::size_t>(bare_.timbers[0])].length /
                                                 limits::kHandsApart));
    Pick pick = by_crew(LiftBy::kHands, people_for(plan_.crew, bare_.weight_lb), 0, room);
    if (high && !pick.refused()) pick.notes.push_back({PickNoteId::kUpHigh, libm::ceil(bare_.cg.z)});
    return pick;
  }

  [[nodiscard]] Pick tipped_up() const {
    const HandRaise raise = raise_by_hand(frame_, plan_, bodies_, bare_.timbers);
    Pick pick = by_crew(LiftBy::kTipUp, people_for(plan_.crew, raise.most_lb), limits::kTagLines, kTooMany);
    // A post is walked up: hands come nearer to its foot as it rises.
    if (bent_ && !plan_.poles && raise.hands_until < raise.balance)
      pick.notes.push_back({PickNoteId::kNoPikes, raise.hands_until, 0});
    return pick;
  }

  [[nodiscard]] Pick from_a_hook(LiftBy by) const {
    Pick pick = hung(by, Attitude::kAsPlaced);
    if (!pick.refused() || pick.timbers.size() != 1) return pick;
    // What turns over as it will lie may still come level and be set down at one end first.
    Pick level = hung(by, Attitude::kLevel);
    return level.refused() ? pick : level;
  }

  [[nodiscard]] Pick hung(LiftBy by, Attitude attitude) const {
    Pick pick = bare_;
    pick.by = by;
    pick.lines = limits::kTagLines;
    const PickPoints points = pick_points(frame_, pick.timbers, pick.cg, attitude);
    pick.hang_degrees = points.hang_degrees;
    sling_up(plan_, points, pick);
    const double by_gear = slung_lb(pick);
    if (by == LiftBy::kGinPole)
      by_gin_pole(pick);
    else
      by_chart(by == LiftBy::kTelehandler ? plan_.telehandler
               : by == LiftBy::kCrane     ? plan_.crane
                                          : plan_.crane_two,
               pick);
    pick.carries_lb = std::max(0.0, std::min(pick.carries_lb, by_gear));
    return pick;
  }

  /// What the gear carries as it is slung; what is not named is not counted here.
  static double slung_lb(const Pick& pick) {
    double lb = 1e9;
    for (const PickNote& note : pick.notes) {
      const bool weak = note.id == PickNoteId::kSlingWeak || note.id == PickNoteId::kShackleWeak;
      if (refuses(note.id)) lb = std::min(lb, weak && note.value > 0 ? pick.weight_lb * note.value2 / note.value : 0);
    }
    return lb;
  }

  void by_gin_pole(Pick& pick) const {
    const GinPole& pole = plan_.gin_pole;
    pick.rated = pole.rated.count > 0 && !pole.rated_by.empty();
    if (!pick.rated) {
      pick.notes.push_back({PickNoteId::kNotRated, 0, 0});
      return;
    }
    pick.carries_lb = pole.rated.lb();
    within(pick, pick.carries_lb);
  }

  void by_chart(const Crane& crane, Pick& pick) const {
    const Vec3 stack{plan_.stack_x.in(), plan_.stack_y.in(), 0};
    pick.crane = lift_by_crane(crane, stack, pick.cg, pick.weight_lb);
    const CraneLift& lift = pick.crane;
    if (!lift.at_stack || !lift.at_place) {
      const double radius = std::max(lift.radius_stack, lift.radius_place);
      pick.notes.push_back({PickNoteId::kPastChart, radius, longest_radius(crane)});
      return;
    }
    pick.rated = true;
    pick.carries_lb = pick.weight_lb + lift.margin_lb;
    within(pick, pick.carries_lb);
  }

  static void within(Pick& pick, double carries) {
    if (pick.weight_lb > carries)
      pick.notes.push_back({PickNoteId::kOverCapacity, pick.weight_lb, std::max(0.0, carries)});
    else if (pick.weight_lb > limits::kNearShare * carries)
      pick.notes.push_back({PickNoteId::kNearLimit, pick.weight_lb / carries});
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  std::span<const PickBody> bodies_;
  const Pick& bare_;
  LiftBy asked_;
  bool bent_ = false, post_ = false;
};

}  // namespace

bool refuses(PickNoteId id) {
  switch (id) {
    case PickNoteId::kAngleTooFlat:
    case PickNoteId::kSlingWeak:
    case PickNoteId::kSlingShort:
    case PickNoteId::kSlingsFew:
    case PickNoteId::kShackleWeak:
    case PickNoteId::kTurnsOver:
    case PickNoteId::kNoPoints:
    case PickNoteId::kOverCapacity:
    case PickNoteId::kPastChart:
    case PickNoteId::kNoMachine:
    case PickNoteId::kMorePeople:
    case PickNoteId::kNoRoom:
    case PickNoteId::kNoPikes:
    case PickNoteId::kNotRated:
    case PickNoteId::kNotTipped:
      return true;
    default:
      return false;
  }
}

bool Pick::refused() const {
  return std::any_of(notes.begin(), notes.end(), [](const PickNote& n) { return refuses(n.id); });
}

std::vector<PickBody> pick_bodies(const Frame& frame, const RaisingPlan& plan) {
  std::vector<PickBody> bodies;
  for (const Timber& timber : frame.timbers) {
    const TimberFacts facts = facts_of(timber);
    const double as_is = density_at(timber.species, timber.moisture);
    const double green = density_at(timber.species, timber.species.green_moisture);
    const double density = std::max(as_is, green);
    const double wet = facts.volume / 1728 * density * (1 + plan.loads.wet_per_cent / 100.0);
    bodies.push_back({libm::ceil(wet - 1e-9), facts.cg_world});
  }
  return bodies;
}

Pick solve_pick(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
                std::span<const int> timbers, LiftBy by, int busy) {
  Pick pick;
  pick.busy = busy;
  for (const int t : timbers)
    if (t >= 0 && static_cast<std::size_t>(t) < bodies.size() &&
        std::find(pick.timbers.begin(), pick.timbers.end(), t) == pick.timbers.end())
      pick.timbers.push_back(t);
  for (const int t : pick.timbers) {
    const PickBody& body = bodies[static_cast<std::size_t>(t)];
    pick.weight_lb += body.weight_lb;
    pick.cg = pick.cg + body.weight_lb * body.cg;
  }
  if (!(pick.weight_lb > 0)) return pick;
  pick.cg = (1 / pick.weight_lb) * pick.cg;
  return Picking(frame, plan, bodies, pick, by).solve();
}

Pick solve_pick(const Frame& frame, const RaisingPlan& plan, std::span<const int> timbers) {
  return solve_pick(frame, plan, pick_bodies(frame, plan), timbers);
}

bool can_pick(const Frame& frame, const RaisingPlan& plan, std::span<const PickBody> bodies,
              std::span<const int> timbers) {
  return !has_hook(plan) || !solve_pick(frame, plan, bodies, timbers).refused();
}

}  // namespace bentbook
