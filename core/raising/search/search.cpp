#include "raising/search/search.h"

#include <algorithm>
#include <optional>
#include <string>

#include "frame/facts.h"
#include "numeric/index.h"
#include "raising/check.h"
#include "raising/check_temporaries.h"
#include "raising/holding.h"
#include "raising/insertion/assemblies.h"
#include "raising/search/compound.h"
#include "raising/search/search_depth.h"
#include "raising/search/search_exact.h"
#include "raising/search/search_improve.h"
#include "raising/search/search_space.h"

namespace bentbook {
namespace {

std::vector<std::string> marks_of(const Frame& frame, std::span<const int> timbers) {
  std::vector<std::string> marks;
  for (const int t : timbers) marks.push_back(frame.timbers[at(t)].mark);
  return marks;
}

std::vector<char> done_timbers(const Frame& frame, const RaisingPlan& plan) {
  std::vector<char> done(frame.timbers.size(), 0);
  for (const RaisingStep& step : plan.steps)
    if (step.done)
      for (const std::string& mark : marks_in(step)) {
        const int t = timber_by_mark(frame, mark);
        if (t >= 0) done[at(t)] = 1;
      }
  return done;
}

/// Pieces, but for those of which some is done already: they come timber by timber.
std::vector<Piece> pieces_left(const Frame& frame, const RaisingPlan& plan) {
  const std::vector<char> done = done_timbers(frame, plan);
  std::vector<Piece> pieces;
  for (Piece& piece : pieces_of(frame, plan)) {
    const auto is_done = [&](int t) { return done[at(t)] != 0; };
    if (std::none_of(piece.begin(), piece.end(), is_done)) {
      pieces.push_back(std::move(piece));
      continue;
    }
    for (const int t : piece) pieces.push_back({t});
  }
  return pieces;
}

/// King and queen posts come later, with what lies on them.
void leave_kings(const Frame& frame, Assembly& bent) {
  std::erase_if(bent.marks, [&](const std::string& mark) {
    const TimberKind kind = frame.timbers[at(timber_by_mark(frame, mark))].kind;
    return kind == TimberKind::kKingPost || kind == TimberKind::kQueenPost;
  });
}

/// The plan with those proposed assemblies that leave alone what the lead has put together or done, can be picked and
/// contradict nothing.
RaisingPlan with_proposals(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                           AssemblyStyle style, std::vector<Assembly>& too_heavy) {
  RaisingPlan made = plan;
  const std::vector<char> done = done_timbers(frame, plan);
  std::vector<char> taken = done;
  for (const Assembly& own : plan.assemblies)
    for (const std::string& mark : own.marks)
      if (const int t = timber_by_mark(frame, mark); t >= 0) taken[at(t)] = 1;
  for (const Assembly& offered : propose_assemblies(frame, blocking, style)) {
    Piece piece;
    Assembly proposed = offered;
    if (plan.kings == KingPosts::kWithRidge && style == AssemblyStyle::kBents) leave_kings(frame, proposed);
    for (const std::string& mark : proposed.marks) piece.push_back(timber_by_mark(frame, mark));
    const bool clear = std::none_of(piece.begin(), piece.end(), [&](int t) { return taken[at(t)] != 0; });
    if (!clear) continue;
    if (!judge.lifts(piece)) {
      too_heavy.push_back(proposed);
      continue;
    }
    made.assemblies.push_back(proposed);
    if (!precedence_of(frame, made, pieces_left(frame, made)).cycle.empty()) made.assemblies.pop_back();
  }
  return made;
}

/// Writes steps and temporaries as the lead would have.
class Writer {
 public:
  Writer(const RaisingPlan& plan, const Judge& judge) : plan_(plan), judge_(judge) {}

  RaisingPlan write(const Frame& frame, const SearchSpace& space, const std::vector<SearchStep>& steps) {
    RaisingPlan made = plan_;
    made.steps = space.done();
    int day = made.steps.empty() ? 1 : made.steps.back().day;
    names_.assign(judge_.temporaries().size(), {});
    for (const SearchStep& s : steps) {
      RaisingStep step;
      std::vector<int> held;
      for (const int q : s.set) held.insert(held.end(), space.piece(q).begin(), space.piece(q).end());
      step.set_first = held_pieces(frame, plan_, space.bodies(), held);
      step.marks = marks_of(frame, space.piece(s.piece));
      for (const int t : s.put_up) step.put_up.push_back(name_of(made, t));
      for (const int t : s.take_out) step.take_out.push_back(name_of(made, t));
      for (const int q : s.set) day = std::max(day, space.graph().day[at(q)]);
      day = std::max(day, space.graph().day[at(s.piece)]);
      step.day = day;
      made.steps.push_back(std::move(step));
    }
    return made;
  }

 private:
  /// The plan's own keep their names, new ones get the next that is free.
  const std::string& name_of(RaisingPlan& made, int temporary) {
    std::string& name = names_[at(temporary)];
    if (!name.empty()) return name;
    if (at(temporary) < plan_.temporaries.size()) {
      name = plan_.temporaries[at(temporary)].name;
      return name;
    }
    const auto taken = [&](const std::string& n) {
      return std::any_of(made.temporaries.begin(), made.temporaries.end(),
                         [&](const Temporary& t) { return t.name == n; });
    };
    do name = "T" + std::to_string(++number_);
    while (taken(name));
    made.temporaries.push_back(judge_.temporaries()[at(temporary)]);
    made.temporaries.back().name = name;
    return name;
  }

  const RaisingPlan& plan_;
  const Judge& judge_;
  std::vector<std::string> names_;
  int number_ = 0;
};

std::vector<Stuck> stuck_pieces(const Frame& frame, SearchSpace& space, Blocking& blocking, const SearchState& state) {
  std::vector<Stuck> all;
  for (int p = 0; p < space.count(); ++p) {
    if (state.in[at(p)] != 0) continue;
    Stuck stuck{marks_of(frame, space.piece(p)), StuckReason::kCantStand, {}};
    if (!space.lifts(p)) {
      stuck.reason = StuckReason::kCantPick;
    } else if (!may_come(space.graph(), p, state.in)) {
      stuck.reason = StuckReason::kSupport;
    } else if (!space.enters(state, p)) {
      stuck.reason = StuckReason::kCantGoIn;
      stuck.marks = marks_of(frame, blocking.entry(space.piece(p), state.timbers).blockers);
    } else if (const std::vector<int> out = space.shut_out(state, p); !out.empty()) {
      stuck.reason = StuckReason::kShutsOut;
      for (const int q : out)
        for (const std::string& mark : marks_of(frame, space.piece(q))) stuck.marks.push_back(mark);
    }
    all.push_back(std::move(stuck));
  }
  // What only waits for others last.
  std::stable_partition(all.begin(), all.end(), [](const Stuck& s) { return s.reason != StuckReason::kSupport; });
  return all;
}

/// One search with fixed pieces.
class Search {
 public:
  Search(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking, const SearchOptions& options,
         const SearchCallback& go_on)
      : frame_(frame), plan_(plan), judge_(judge), blocking_(blocking), options_(options), go_on_(go_on) {}

  FoundOrder run() {
    SearchSpace space(frame_, plan_, judge_, blocking_, pieces_left(frame_, plan_));
    result_.plan = plan_;
    if (!space.graph().cycle.empty()) {
      for (const Edge& e : space.graph().cycle) result_.cycle.push_back(frame_.timbers[at(e.first)].mark);
      result_.stuck.push_back({result_.cycle, StuckReason::kCycle, {}});
      return std::move(result_);
    }
    SearchClock clock(go_on_, space.count());
    result_.bound = space.bound();
    DepthFirst first = search_compound(frame_, plan_, space, clock);
    Sequence best = first.sequence;
    const bool compound = best.found;
    if (!compound) {
      search_single(space, clock, first);
      best = first.sequence;
      if (best.found) clock.found(best.cost);
    }
    if (!clock.stopped() && (options_.improve || !best.found)) go_further(space, clock, compound, best);
    result_.stopped = clock.stopped();
    result_.tried = clock.tried();
    if (best.found)
      keep(space, best);
    else
      give_up(space, first);
    return std::move(result_);
  }

 private:
  /// Steps of one piece each, where compound ones find no order.
  void search_single(SearchSpace& space, SearchClock& clock, DepthFirst& first) {
    const int most = std::max(options_.steps, 20 * space.count());
    for (const Preference preference : {Preference::kSills, Preference::kLevels}) {
      if (clock.stopped() || first.sequence.found) return;
      DepthFirst other = search_depth(space, clock, preference, most);
      if (other.sequence.found || other.farthest.placed > first.farthest.placed) first = std::move(other);
    }
  }
  void go_further(SearchSpace& space, SearchClock& clock, bool compound, Sequence& best) {
    if (space.count() - space.start().placed <= options_.exact_up_to) {
      OrderCost bound = result_.bound;
      const Sequence exact = search_exact(space, clock, 25 * options_.steps, bound);
      result_.bound = compound ? result_.bound : std::max(bound, result_.bound);
      // Compound steps may be cheaper than any order of single ones: then nothing is proven.
      if (exact.found && (!best.found || exact.cost <= best.cost)) {
        best = exact;
        result_.proven_optimal = true;
      }
      return;
    }
    if (best.found && !compound) improve_sequence(space, clock, options_.seed, options_.improving, best);
  }
  void keep(SearchSpace& space, const Sequence& best) {
    result_.cost = best.cost;
    result_.proven_optimal = result_.proven_optimal || best.cost == result_.bound;
    if (result_.proven_optimal) result_.bound = best.cost;
    result_.plan = Writer(plan_, judge_).write(frame_, space, best.steps);
    result_.found = true;
  }
  void give_up(SearchSpace& space, const DepthFirst& first) {
    result_.plan = Writer(plan_, judge_).write(frame_, space, first.part);
    result_.stuck = stuck_pieces(frame_, space, blocking_, first.farthest);
    const bool falls = std::any_of(result_.stuck.begin(), result_.stuck.end(),
                                   [](const Stuck& s) { return s.reason == StuckReason::kCantStand; });
    if (falls) result_.first_unstable = static_cast<int>(result_.plan.steps.size());
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  Judge& judge_;
  Blocking& blocking_;
  const SearchOptions& options_;
  const SearchCallback& go_on_;
  FoundOrder result_;
};

/// Where the whole frame does not stand with no temporary: what would move most, and no order is looked for.
FoundOrder whole_falls(const Frame& frame, const RaisingPlan& plan, Judge& judge) {
  FoundOrder found;
  found.plan = plan;
  std::vector<int> all;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t)
    if (frame.timbers[t].placed) all.push_back(static_cast<int>(t));
  const bool cycle = !precedence_of(frame, plan, pieces_left(frame, plan)).cycle.empty();  // that is said then
  if (all.empty() || cycle || judge.stands(all, {})) return found;
  constexpr std::size_t kNamed = 4;
  std::vector<std::string> moving;
  const StandingCheck check = judge.check(all, {}, {}, StandingDepth::kExplain);
  const auto add = [&](int t) {
    const std::string& mark = frame.timbers[at(t)].mark;
    if (moving.size() < kNamed && std::find(moving.begin(), moving.end(), mark) == moving.end()) moving.push_back(mark);
  };
  for (const Mode& mode : check.modes) add(mode.timber);
  double most = 0;
  for (const TimberMotion& m : check.fall) most = std::max(most, norm(m.move));
  for (const TimberMotion& m : check.fall)
    if (norm(m.move) > 0.8 * most) add(m.timber);
  found.stuck.push_back({std::move(moving), StuckReason::kWholeFalls, {}});
  return found;
}

}  // namespace

FoundOrder search_order(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                        const SearchOptions& options, const SearchCallback& go_on) {
  MemoJudge memo(judge);
  if (FoundOrder falls = whole_falls(frame, plan, memo); !falls.stuck.empty()) return falls;
  std::vector<RaisingPlan> tries;
  std::vector<Assembly> too_heavy;
  if (options.propose) {
    for (const AssemblyStyle style : {AssemblyStyle::kBents, AssemblyStyle::kWalls}) {
      RaisingPlan with = with_proposals(frame, plan, memo, blocking, style, too_heavy);
      if (with.assemblies.size() > plan.assemblies.size()) tries.push_back(std::move(with));
    }
  }
  tries.push_back(plan);
  FoundOrder best;
  for (std::size_t i = 0; i < tries.size(); ++i) {
    FoundOrder found = Search(frame, tries[i], memo, blocking, options, go_on).run();
    // Of orders that are not whole the one that gets farthest.
    const auto timbers = [](const RaisingPlan& p) {
      std::size_t sum = 0;
      for (const RaisingStep& step : p.steps) sum += step.set_first.size() + step.marks.size();
      return sum;
    };
    if (i == 0 || found.found || timbers(found.plan) > timbers(best.plan)) best = std::move(found);
    if (best.found || best.stopped) break;
  }
  // Put together lying down it might have gone.
  if (!best.found && !best.stopped)
    for (const Assembly& a : too_heavy) best.stuck.push_back({a.marks, StuckReason::kCantPick, {}});
  return best;
}

namespace {

/// The first step with a fault, but for who or what lifts it: an order is proposed all the same, and its check says
/// what is wanting. Nothing: no such fault; −1: of the whole order alone.
std::optional<int> bad_step(const OrderCheck& check) {
  std::optional<int> bad;
  for (const OrderFault& fault : check.faults)
    if (fault.id != OrderFaultId::kCantPick && (!bad || *bad < 0)) bad = fault.step;
  return bad;
}

/// Judged once more from nothing. What is taken out too early for that is taken out a step later; false: some step is
/// not good all the same.
bool holds_afresh(const Frame& frame, FoundOrder& found, Blocking& blocking) {
  constexpr int kTries = 6;
  for (int i = 0; i < kTries; ++i) {
    const std::unique_ptr<Judge> judge = make_judge(frame, found.plan);
    const OrderCheck check = check_order(frame, found.plan, *judge, blocking);
    const std::optional<int> first = bad_step(check);
    if (!first) return true;
    found.first_unstable = check.first_unstable;
    if (*first < 0) return false;
    const std::size_t bad = at(*first);
    RaisingStep& step = found.plan.steps[bad];
    const bool too_early =
        check.steps[bad].stands && !check.steps[bad].stands_after && bad + 1 < found.plan.steps.size();
    if (!too_early) return false;
    std::vector<std::string>& next = found.plan.steps[bad + 1].take_out;
    next.insert(next.end(), step.take_out.begin(), step.take_out.end());
    step.take_out.clear();
  }
  return false;
}

}  // namespace

FoundOrder search_order(const Frame& frame, const RaisingPlan& plan, const SearchOptions& options,
                        const SearchCallback& go_on) {
  const std::unique_ptr<Judge> judge = make_judge(frame, plan);
  Blocking blocking(frame);
  FoundOrder found = search_order(frame, plan, *judge, blocking, options, go_on);
  if (!found.found) return found;
  keep_until_plates(frame, found.plan);
  if (holds_afresh(frame, found, blocking)) {
    found.first_unstable = -1;
    return found;
  }
  found.found = found.proven_optimal = false;
  found.stuck.push_back({{}, StuckReason::kCantStand, {}});
  return found;
}

}  // namespace bentbook
