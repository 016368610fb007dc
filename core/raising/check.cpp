#include "raising/check.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/check_temporaries.h"
#include "raising/fasteners.h"
#include "raising/holding.h"
#include "raising/lifting/pick.h"
#include "raising/order.h"

namespace bentbook {
namespace {

class Checker {
 public:
  Checker(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking, StandingDepth depth,
          const OrderCheck* before)
      : frame_(frame),
        plan_(plan),
        judge_(judge),
        blocking_(blocking),
        depth_(depth),
        before_(before),
        stands_(frame.timbers.size(), 0),
        step_of_(frame.timbers.size(), -1),
        turn_of_(frame.timbers.size(), -1),
        up_(plan.temporaries.size(), 0),
        supports_(supports_of(frame)),
        bodies_(pick_bodies(frame, plan)),
        limits_(entry_limits(plan)) {}

  OrderCheck run() {
    say_cycle();
    for (std::size_t s = 0; s < plan_.steps.size(); ++s) add_step(static_cast<int>(s));
    say_wishes();
    say_later();
    for (std::size_t t = 0; t < frame_.timbers.size(); ++t)
      if (frame_.timbers[t].placed && step_of_[t] < 0) check_.left_out.push_back(static_cast<int>(t));
    say_left_up(plan_, check_);
    say_idle(frame_, plan_, step_of_, check_);
    sort_by(check_.faults, [](const OrderFault& a, const OrderFault& b) { return a.step < b.step; });
    for (const OrderFault& f : check_.faults)
      if (f.step >= 0) check_.steps[at(f.step)].good = false;
    for (StepCheck& step : check_.steps) {
      if (!step.good && check_.first_bad < 0) check_.first_bad = step.step;
      if (!(step.stands && step.stands_after) && check_.first_unstable < 0) check_.first_unstable = step.step;
    }
    return std::move(check_);
  }

 private:
  const std::string& mark(int t) const { return frame_.timbers[at(t)].mark; }
  void say(OrderFaultId id, int step, std::vector<std::string> marks, int wish = -1, double value = 0,
           double value2 = 0) {
    check_.faults.push_back({id, step, std::move(marks), wish, value, value2, {}});
  }

  void say_cycle() {
    const Precedence graph = precedence_of(frame_, plan_, pieces_of(frame_, plan_));
    if (graph.cycle.empty()) return;
    std::vector<std::string> marks;
    int wish = -1;
    for (const Edge& e : graph.cycle) {
      marks.push_back(mark(e.first));
      wish = wish < 0 ? e.wish : wish;
    }
    say(OrderFaultId::kWishCycle, -1, std::move(marks), wish);
  }

  /// The timber of a mark that comes now; −1: it does not, and why is said.
  int coming(int s, const std::string& name) {
    const int t = timber_by_mark(frame_, name);
    if (t < 0) {
      say(OrderFaultId::kUnknownMark, s, {name});
    } else if (!frame_.timbers[at(t)].placed) {
      say(OrderFaultId::kNotPlaced, s, {name});
    } else if (step_of_[at(t)] >= 0) {
      say(OrderFaultId::kTwice, s, {name}, -1, step_of_[at(t)]);
    } else {
      step_of_[at(t)] = s;
      turn_of_[at(t)] = turn_;
      return t;
    }
    return -1;
  }
  /// Marks into timbers; each comes once.
  void read_marks(StepCheck& step) {
    for (const SetPiece& piece : plan_.steps[at(step.step)].set_first) {
      ++turn_;
      const int t = coming(step.step, piece.mark);
      if (t < 0) continue;
      const bool hands = piece.by == HeldBy::kHands;
      step.set.push_back(
          {t, piece.by, hands ? hands_for(frame_, plan_, bodies_, t) : 0, held_lb(frame_, bodies_, t), {}});
      step.timbers.push_back(t);
    }
    ++turn_;
    for (const std::string& name : plan_.steps[at(step.step)].marks)
      if (const int t = coming(step.step, name); t >= 0) step.main.push_back(t);
    sort_up(step.main);
    step.timbers.insert(step.timbers.end(), step.main.begin(), step.main.end());
    sort_up(step.timbers);
  }

  int temporary(const std::string& name) const {
    for (std::size_t i = 0; i < plan_.temporaries.size(); ++i)
      if (plan_.temporaries[i].name == name) return static_cast<int>(i);
    return -1;
  }
  std::vector<int> all_up() const {
    std::vector<int> all;
    for (std::size_t i = 0; i < up_.size(); ++i)
      if (up_[i] != 0) all.push_back(static_cast<int>(i));
    return all;
  }
  void put_up(int s) {
    for (const std::string& name : plan_.steps[at(s)].put_up) {
      const int i = temporary(name);
      if (i < 0) {
        say(OrderFaultId::kUnknownTemporary, s, {name});
        continue;
      }
      if (up_[at(i)] != 0) say(OrderFaultId::kTemporaryTwice, s, {name});
      up_[at(i)] = 1;
      for (const TimberPoint* end : {&plan_.temporaries[at(i)].from, &plan_.temporaries[at(i)].to}) {
        if (end->mark.empty() && end == &plan_.temporaries[at(i)].to) continue;
        const int t = timber_by_mark(frame_, end->mark);
        if (t < 0 || stands_[at(t)] == 0) say(OrderFaultId::kTemporaryLoose, s, {name, end->mark});
      }
    }
  }
  void take_out(int s) {
    for (const std::string& name : plan_.steps[at(s)].take_out) {
      const int i = temporary(name);
      if (i < 0) say(OrderFaultId::kUnknownTemporary, s, {name});
      if (i >= 0 && up_[at(i)] == 0) say(OrderFaultId::kTemporaryNotUp, s, {name});
      if (i >= 0) up_[at(i)] = 0;
    }
  }

  /// Whether what comes is joined to a set piece, or it has both its ends in what stands by then.
  bool caught(const StepCheck& step, int timber) const {
    int ends = 0;
    for (const int j : joints_of(frame_, timber)) {
      const Joint& joint = frame_.joints[at(j)];
      const int other = other_timber(joint, timber);
      if (std::binary_search(step.timbers.begin(), step.timbers.end(), other)) return true;
      ends += stands_[at(other)] != 0 ? 1 : 0;
    }
    return ends > 1;
  }
  /// What is held while the step closes.
  void say_held(const StepCheck& step) {
    int hands = 0, otherwise = 0;
    for (const SetCheck& piece : step.set) {
      const std::string& name = mark(piece.timber);
      const double most = limits::kHandsOnOne * plan_.crew.each.lb();
      if (piece.lb > most) say(OrderFaultId::kHeldTooHeavy, step.step, {name}, -1, piece.lb, most);
      hands += piece.hands;
      otherwise += piece.by == HeldBy::kHands ? 0 : 1;
      if (!caught(step, piece.timber)) say(OrderFaultId::kNotCaught, step.step, {name});
    }
    if (hands > hands_free(plan_)) say(OrderFaultId::kHandsShort, step.step, {}, -1, hands, hands_free(plan_));
    if (otherwise > limits::kMostHeldOtherwise)
      say(OrderFaultId::kHandsShort, step.step, {}, -1, otherwise, limits::kMostHeldOtherwise);
  }
  /// Each set piece wants its seat when it comes.
  void say_seats(const StepCheck& step) {
    std::vector<char> now = stands_;
    for (const SetCheck& piece : step.set) {
      now[at(piece.timber)] = 1;
      const std::vector<int> missing = missing_support(supports_[at(piece.timber)], now);
      if (missing.empty()) continue;
      std::vector<std::string> marks{mark(piece.timber)};
      for (const int carrier : missing) marks.push_back(mark(carrier));
      say(OrderFaultId::kNotSeated, step.step, std::move(marks));
    }
  }

  void say_support(const StepCheck& step) {
    for (const int t : step.main) {
      const std::vector<int> missing = missing_support(supports_[at(t)], stands_);
      if (missing.empty()) continue;
      std::vector<std::string> marks{mark(t)};
      for (const int carrier : missing) marks.push_back(mark(carrier));
      say(OrderFaultId::kSupportMissing, step.step, std::move(marks));
    }
  }

  static bool same_set(const StepCheck& a, const StepCheck& b) {
    return std::equal(a.set.begin(), a.set.end(), b.set.begin(), b.set.end(),
                      [](const SetCheck& x, const SetCheck& y) { return x.timber == y.timber && x.by == y.by; });
  }
  const StepCheck* known(const StepCheck& step) const {
    if (before_ == nullptr) return nullptr;
    for (const StepCheck& old : before_->steps)
      if (old.timbers == step.timbers && old.main == step.main && same_set(old, step) &&
          old.temporaries_before == step.temporaries_before && old.temporaries == step.temporaries &&
          old.temporaries_after == step.temporaries_after && old.stood == step.stood)
        return &old;
    return nullptr;
  }
  void judge(StepCheck& step) {
    if (const StepCheck* old = known(step)) {
      step.set = old->set;
      step.entry = old->entry;
      step.standing = old->standing;
      step.stands = old->stands;
      step.stands_after = old->stands_after;
      step.bears = old->bears;
      step.bare = old->bare;
      step.hangs_on = old->hangs_on;
      return;
    }
    std::vector<int> now;
    std::merge(step.stood.begin(), step.stood.end(), step.timbers.begin(), step.timbers.end(), std::back_inserter(now));
    std::vector<int> there = step.stood;
    for (SetCheck& piece : step.set) {
      const int alone[] = {piece.timber};
      piece.entry = blocking_.entry(alone, there, limits_);
      there.insert(std::lower_bound(there.begin(), there.end(), piece.timber), piece.timber);
    }
    step.entry = blocking_.entry(step.main, there, limits_);
    step.bears = bears(step);
    step.standing = now.empty() ? nothing() : judge_.check(now, step.temporaries, step.timbers, depth_);
    step.stands = step.standing.stands();
    step.stands_after =
        step.temporaries_after == step.temporaries ? step.stands : judge_.stands(now, step.temporaries_after);
    step.hangs_on = hangs_on(step, now);
    step.bare = !step.temporaries_after.empty() && step.stands_after && judge_.rigid(now, {}) && judge_.stands(now, {});
  }

  /// What stood before the step, with its set pieces; where that does not stand by itself it is said of the step
  /// before.
  bool bears(const StepCheck& step) {
    if (step.set.empty() || step.stood.empty() || check_.steps.empty() || !check_.steps.back().stands_after)
      return true;
    std::vector<HeldTimber> held;
    held.reserve(step.set.size());
    for (const SetCheck& piece : step.set) held.push_back({piece.timber, piece.by});
    return judge_.bears(step.stood, step.temporaries_before, hung_while_closing(frame_, bodies_, held, step.stood));
  }

  /// Before anything stands.
  static StandingCheck nothing() {
    StandingCheck check;
    check.forces = true;
    return check;
  }

  void add_step(int s) {
    StepCheck step;
    step.step = s;
    step.stood = stood_;
    step.temporaries_before = all_up();
    read_marks(step);
    say_seats(step);
    say_held(step);
    for (const int t : step.timbers) stands_[at(t)] = 1;
    put_up(s);
    step.temporaries = all_up();
    take_out(s);
    step.temporaries_after = all_up();
    say_support(step);
    judge(step);
    say_pick(step);
    step.day_goes_back = s > 0 && plan_.steps[at(s)].day < plan_.steps[at(s - 1)].day;
    say_verdict(step);
    if (step.hangs_on >= 0) say(OrderFaultId::kHangsOnOne, s, names({step.hangs_on}));
    std::vector<int> now;
    std::merge(stood_.begin(), stood_.end(), step.timbers.begin(), step.timbers.end(), std::back_inserter(now));
    stood_.swap(now);
    check_.steps.push_back(std::move(step));
  }
  std::vector<std::string> names(const std::vector<int>& temporaries) const {
    std::vector<std::string> all;
    all.reserve(temporaries.size());
    for (const int i : temporaries) all.push_back(plan_.temporaries[at(i)].name);
    return all;
  }
  /// Where the lead wants a spare: the temporary without which alone it falls, before or after some are taken out.
  int hangs_on(const StepCheck& step, const std::vector<int>& now) const {
    if (!plan_.spare || !step.stands || !step.stands_after) return -1;
    const bool same = step.temporaries == step.temporaries_after;
    for (const std::vector<int>* up : {&step.temporaries, &step.temporaries_after}) {
      if (same && up == &step.temporaries_after) break;
      for (const int i : *up) {
        std::vector<int> less = *up;
        std::erase(less, i);
        if (!judge_.rigid(now, less) || !judge_.stands(now, less)) return i;
      }
    }
    return -1;
  }
  void say_cant_go_in(int s, const Entry& entry) {
    std::vector<std::string> marks;
    for (const int t : entry.blockers) marks.push_back(mark(t));
    say(OrderFaultId::kCantGoIn, s, std::move(marks));
  }
  void say_verdict(StepCheck& step) {
    step.good = step.entry.free && step.stands && step.stands_after && step.lifts;
    for (const SetCheck& piece : step.set)
      if (!piece.entry.free) say_cant_go_in(step.step, piece.entry);
    if (!step.entry.free) say_cant_go_in(step.step, step.entry);
    if (!(step.stands && step.stands_after)) say(OrderFaultId::kCantStand, step.step, {});
    if (step.bears) return;
    std::vector<std::string> held;
    held.reserve(step.set.size());
    for (const SetCheck& piece : step.set) held.push_back(mark(piece.timber));
    say(OrderFaultId::kHeldFalls, step.step, std::move(held));
  }
  /// By what the main pieces go up, past those who hold what is set first.
  void say_pick(StepCheck& step) {
    int busy = 0;
    for (const SetCheck& piece : step.set) busy += piece.hands;
    const LiftBy by = plan_.steps[at(step.step)].by;
    const Pick pick = solve_pick(frame_, plan_, bodies_, step.main, by, busy);
    step.lifts = !pick.refused();
    for (const PickNote& note : pick.notes) {
      if (!refuses(note.id)) continue;
      std::vector<std::string> marks;
      for (const int t : step.main) marks.push_back(mark(t));
      say(OrderFaultId::kCantPick, step.step, std::move(marks), -1, note.value, note.value2);
      check_.faults.back().note = note.id;
    }
  }

  int step_by_mark(const std::string& name) const {
    const int t = timber_by_mark(frame_, name);
    return t < 0 ? -1 : step_of_[at(t)];
  }
  /// A joint that is none would be counted while the paper says that it is not.
  void say_later() {
    if (plan_.fasten != FastenWhen::kWithStep) return;
    for (const JointName& joint : plan_.later) {
      const int member = timber_by_mark(frame_, joint.one), receiver = timber_by_mark(frame_, joint.other);
      if (std::none_of(frame_.joints.begin(), frame_.joints.end(),
                       [&](const Joint& it) { return it.member == member && it.receiver == receiver; }))
        say(OrderFaultId::kNoSuchJoint, -1, {joint.one, joint.other});
    }
  }
  void say_wishes() {
    for (std::size_t w = 0; w < plan_.wishes.size(); ++w) {
      const Wish& wish = plan_.wishes[w];
      const int index = static_cast<int>(w);
      for (const std::vector<std::string>* list : {&wish.marks, &wish.others})
        for (const std::string& name : *list)
          if (timber_by_mark(frame_, name) < 0) say(OrderFaultId::kUnknownMark, -1, {name}, index);
      if (wish.kind == WishKind::kDay) say_day(wish, index);
      if (wish.kind == WishKind::kTogether) say_together(wish, index);
    }
    for (const Edge& e : edges_of(frame_, plan_)) {
      if (e.wish < 0 || plan_.wishes[at(e.wish)].kind == WishKind::kDay) continue;
      // What is set first in a step comes before what closes on it.
      const int first = turn_of_[at(e.first)], second = turn_of_[at(e.second)];
      if (second >= 0 && (first < 0 || first >= second)) say_once(e, step_of_[at(e.second)]);
    }
  }
  void say_once(const Edge& e, int step) {
    const bool said = std::any_of(check_.faults.begin(), check_.faults.end(), [&](const OrderFault& f) {
      return f.id == OrderFaultId::kWishBroken && f.wish == e.wish && f.step == step;
    });
    if (!said) say(OrderFaultId::kWishBroken, step, {mark(e.first), mark(e.second)}, e.wish);
  }
  void say_day(const Wish& wish, int index) {
    for (const std::string& name : wish.marks) {
      const int s = step_by_mark(name);
      if (s >= 0 && plan_.steps[at(s)].day != wish.number)
        say(OrderFaultId::kWishBroken, s, {name}, index, plan_.steps[at(s)].day);
    }
  }
  void say_together(const Wish& wish, int index) {
    std::string first_mark;
    int first = -1;
    for (const std::string& name : wish.marks) {
      const int s = step_by_mark(name);
      if (s < 0) continue;
      if (first >= 0 && s != first) say(OrderFaultId::kWishBroken, std::max(s, first), {first_mark, name}, index);
      if (first >= 0) continue;
      first = s;
      first_mark = name;
    }
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  Judge& judge_;
  Blocking& blocking_;
  StandingDepth depth_;
  const OrderCheck* before_;
  std::vector<char> stands_;
  std::vector<int> step_of_;
  std::vector<int> turn_of_;  ///< by timber: when it comes, counted over all steps, their set pieces one by one
  int turn_ = 0;
  std::vector<char> up_;
  std::vector<Support> supports_;
  std::vector<PickBody> bodies_;
  EntryLimits limits_;
  std::vector<int> stood_;
  OrderCheck check_;
};

}  // namespace

EntryLimits entry_limits(const RaisingPlan& plan) {
  EntryLimits limits;
  const bool fastened = plan.fasten == FastenWhen::kWithStep ||
                        std::any_of(plan.holds.begin(), plan.holds.end(), [](const HoldChange& h) { return h.pulls; });
  if (fastened) limits.spread_most = 0;
  return limits;
}

bool same_judgement(const RaisingPlan& a, const RaisingPlan& b) {
  return a.temporaries == b.temporaries && a.crane == b.crane && a.crane_two == b.crane_two &&
         a.telehandler == b.telehandler && a.gin_pole == b.gin_pole && a.poles == b.poles && a.bents == b.bents &&
         a.gear == b.gear && a.crew == b.crew && a.loads == b.loads && a.holds == b.holds && a.fasten == b.fasten &&
         a.later == b.later && a.ratings == b.ratings && a.spare == b.spare && a.posts_anchored == b.posts_anchored &&
         a.stack_x == b.stack_x && a.stack_y == b.stack_y;
}

OrderCheck check_order(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                       StandingDepth depth) {
  return Checker(frame, plan, judge, blocking, depth, nullptr).run();
}

OrderCheck check_order_again(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                             const OrderCheck& before, const RaisingPlan& was) {
  return Checker(frame, plan, judge, blocking, StandingDepth::kStands, same_judgement(plan, was) ? &before : nullptr)
      .run();
}

OrderCheck check_order(const Frame& frame, const RaisingPlan& plan, StandingDepth depth) {
  const std::unique_ptr<Judge> judge = make_judge(frame, plan);
  Blocking blocking(frame);
  return check_order(frame, plan, *judge, blocking, depth);
}

}  // namespace bentbook
