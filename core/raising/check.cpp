#include "raising/check.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
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
        up_(plan.temporaries.size(), 0),
        supports_(supports_of(frame)) {}

  OrderCheck run() {
    say_cycle();
    for (std::size_t s = 0; s < plan_.steps.size(); ++s) add_step(static_cast<int>(s));
    say_wishes();
    sort_by(check_.faults, [](const OrderFault& a, const OrderFault& b) { return a.step < b.step; });
    for (const OrderFault& f : check_.faults)
      if (f.step >= 0) check_.steps[at(f.step)].good = false;
    for (StepCheck& step : check_.steps) {
      if (!step.good && check_.first_bad < 0) check_.first_bad = step.step;
      if (!(step.stands && step.stands_after) && check_.first_unstable < 0) check_.first_unstable = step.step;
    }
    for (std::size_t t = 0; t < frame_.timbers.size(); ++t)
      if (frame_.timbers[t].placed && step_of_[t] < 0) check_.left_out.push_back(static_cast<int>(t));
    return std::move(check_);
  }

 private:
  const std::string& mark(int t) const { return frame_.timbers[at(t)].mark; }
  void say(OrderFaultId id, int step, std::vector<std::string> marks, int wish = -1, double value = 0) {
    check_.faults.push_back({id, step, std::move(marks), wish, value, 0});
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

  /// Marks into timbers; each comes once.
  std::vector<int> coming_of(int s) {
    std::vector<int> coming;
    for (const std::string& name : plan_.steps[at(s)].marks) {
      const int t = timber_by_mark(frame_, name);
      if (t < 0) {
        say(OrderFaultId::kUnknownMark, s, {name});
      } else if (!frame_.timbers[at(t)].placed) {
        say(OrderFaultId::kNotPlaced, s, {name});
      } else if (step_of_[at(t)] >= 0) {
        say(OrderFaultId::kTwice, s, {name}, -1, step_of_[at(t)]);
      } else {
        step_of_[at(t)] = s;
        coming.push_back(t);
      }
    }
    sort_up(coming);
    return coming;
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

  void say_support(const StepCheck& step) {
    for (const int t : step.timbers) {
      const std::vector<int> missing = missing_support(supports_[at(t)], stands_);
      if (missing.empty()) continue;
      std::vector<std::string> marks{mark(t)};
      for (const int carrier : missing) marks.push_back(mark(carrier));
      say(OrderFaultId::kSupportMissing, step.step, std::move(marks));
    }
  }

  const StepCheck* known(const StepCheck& step) const {
    if (before_ == nullptr) return nullptr;
    for (const StepCheck& old : before_->steps)
      if (old.timbers == step.timbers && old.temporaries == step.temporaries &&
          old.temporaries_after == step.temporaries_after && old.stood == step.stood)
        return &old;
    return nullptr;
  }
  void judge(StepCheck& step) {
    if (const StepCheck* old = known(step)) {
      step.entry = old->entry;
      step.standing = old->standing;
      step.stands = old->stands;
      step.stands_after = old->stands_after;
      step.lifts = old->lifts;
      return;
    }
    std::vector<int> now;
    std::merge(step.stood.begin(), step.stood.end(), step.timbers.begin(), step.timbers.end(), std::back_inserter(now));
    step.entry = blocking_.entry(step.timbers, step.stood);
    step.lifts = step.timbers.empty() || judge_.lifts(step.timbers);
    step.standing = now.empty() ? nothing() : judge_.check(now, step.temporaries, step.timbers, depth_);
    step.stands = step.standing.stands();
    step.stands_after =
        step.temporaries_after == step.temporaries ? step.stands : judge_.stands(now, step.temporaries_after);
  }

  /// Before anything stands.
  static StandingCheck nothing() {
    StandingCheck check;
    check.forces = true;
    return check;
  }

  void warn(StepCheck& step) {
    const int s = step.step;
    const auto add = [&](StepWarningId id, const std::vector<int>& who, double value) {
      StepWarning w{id, {}, value};
      for (const int t : who) w.marks.push_back(mark(t));
      step.warnings.push_back(std::move(w));
    };
    for (std::size_t i = 0; i < step.entry.path.size(); ++i) {
      const Move& m = step.entry.path[i];
      if (m.kind == MoveKind::kSlide && i > 0) add(StepWarningId::kSlidesIn, step.timbers, m.distance);
      if (m.kind == MoveKind::kSpread) add(StepWarningId::kSpreads, m.who, m.distance);
      if (m.kind == MoveKind::kSwing) add(StepWarningId::kSwings, step.timbers, m.distance * 180 / libm::kPi);
    }
    if (s > 0 && plan_.steps[at(s)].day < plan_.steps[at(s - 1)].day)
      add(StepWarningId::kDayGoesBack, {}, plan_.steps[at(s)].day);
  }

  void add_step(int s) {
    StepCheck step;
    step.step = s;
    step.stood = stood_;
    step.timbers = coming_of(s);
    for (const int t : step.timbers) stands_[at(t)] = 1;
    put_up(s);
    step.temporaries = all_up();
    take_out(s);
    step.temporaries_after = all_up();
    say_support(step);
    judge(step);
    warn(step);
    say_verdict(step);
    std::vector<int> now;
    std::merge(stood_.begin(), stood_.end(), step.timbers.begin(), step.timbers.end(), std::back_inserter(now));
    stood_.swap(now);
    check_.steps.push_back(std::move(step));
  }
  void say_verdict(StepCheck& step) {
    step.good = step.entry.free && step.stands && step.stands_after && step.lifts;
    if (!step.entry.free) {
      std::vector<std::string> marks;
      for (const int t : step.entry.blockers) marks.push_back(mark(t));
      say(OrderFaultId::kCantGoIn, step.step, std::move(marks));
    }
    if (!(step.stands && step.stands_after)) say(OrderFaultId::kCantStand, step.step, {});
    if (!step.lifts) {
      std::vector<std::string> marks;
      for (const int t : step.timbers) marks.push_back(mark(t));
      say(OrderFaultId::kCantPick, step.step, std::move(marks), -1, solve_pick(frame_, plan_, step.timbers).weight_lb);
    }
  }

  int step_by_mark(const std::string& name) const {
    const int t = timber_by_mark(frame_, name);
    return t < 0 ? -1 : step_of_[at(t)];
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
      const int first = step_of_[at(e.first)], second = step_of_[at(e.second)];
      if (second >= 0 && (first < 0 || first >= second)) say_once(e, second);
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
  std::vector<char> up_;
  std::vector<Support> supports_;
  std::vector<int> stood_;
  OrderCheck check_;
};

}  // namespace

bool same_judgement(const RaisingPlan& a, const RaisingPlan& b) {
  return a.temporaries == b.temporaries && a.crane == b.crane && a.gear == b.gear && a.crew == b.crew &&
         a.loads == b.loads && a.holds == b.holds && a.posts_anchored == b.posts_anchored && a.stack_x == b.stack_x &&
         a.stack_y == b.stack_y;
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
