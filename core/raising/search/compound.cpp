#include "raising/search/compound.h"

#include <algorithm>
#include <optional>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/holding.h"

namespace bentbook {
namespace {

/// New temporaries in one step, at most. Source: SOURCES.md, "search effort".
constexpr int kMostNew = 8;

enum class Policy : std::uint8_t { kTiers, kBays };

/// A piece's place in the building from the ground up.
int tier_of(TimberKind kind) {
  switch (kind) {
    case TimberKind::kSill:
      return 0;
    case TimberKind::kPost:
    case TimberKind::kTie:
      return 1;
    case TimberKind::kGirt:
    case TimberKind::kJoist:
      return 2;
    case TimberKind::kBrace:
      return 3;
    case TimberKind::kPlate:
    case TimberKind::kDragonTie:
      return 4;
    case TimberKind::kKingPost:
    case TimberKind::kQueenPost:
      return 5;
    case TimberKind::kRidgeBeam:
      return 6;
    case TimberKind::kPrincipalRafter:
    case TimberKind::kCollar:
    case TimberKind::kHipRafter:
      return 7;
    default:
      return 8;
  }
}

/// A step that could come next.
struct Choice {
  SearchState after;
  SearchStep step;
  [[nodiscard]] int cost() const { return static_cast<int>(step.put_up.size()); }
};

class Planner {
 public:
  Planner(const Frame& frame, const RaisingPlan& plan, SearchSpace& space, SearchClock& clock, Policy policy)
      : frame_(frame), plan_(plan), space_(space), clock_(clock), policy_(policy), supports_(supports_of(frame)) {
    for (int p = 0; p < space.count(); ++p) holdable_.push_back(can_hold(p) ? 1 : 0);
  }

  DepthFirst run() {
    DepthFirst result;
    SearchState state = space_.start();
    while (state.placed < space_.count()) {
      std::optional<Choice> next = choose(state);
      if (!next) break;
      state = std::move(next->after);
      result.part.push_back(std::move(next->step));
    }
    result.farthest = state;
    if (state.placed == space_.count()) result.sequence = {true, result.part, state.cost};
    return result;
  }

 private:
  [[nodiscard]] const Timber& timber(int t) const { return frame_.timbers[at(t)]; }
  [[nodiscard]] bool can_hold(int p) const {
    if (space_.piece(p).size() != 1) return false;
    const int t = space_.piece(p)[0];
    return may_be_held(timber(t).kind) && !held_pieces(frame_, plan_, space_.bodies(), space_.piece(p)).empty();
  }
  [[nodiscard]] bool holdable(int p) const { return holdable_[at(p)] != 0; }

  [[nodiscard]] int tier(int p) const {
    int least = 99;
    for (const int t : space_.piece(p)) least = std::min(least, tier_of(timber(t).kind));
    return least;
  }
  [[nodiscard]] double distance(const SearchState& state, int p) const {
    const PiecePlace& to = space_.place(p);
    if (state.last < 0) return to.y;
    return libm::hypot(to.x - space_.place(state.last).x, to.y - space_.place(state.last).y);
  }

  /// Whether what stands carries the piece.
  [[nodiscard]] bool seated(const SearchState& state, int p) const {
    std::vector<char> stands(frame_.timbers.size(), 0);
    for (const int t : state.timbers) stands[at(t)] = 1;
    for (const int t : space_.piece(p)) stands[at(t)] = 1;
    return std::all_of(space_.piece(p).begin(), space_.piece(p).end(),
                       [&](int t) { return missing_support(supports_[at(t)], stands).empty(); });
  }

  /// Sets one more; false: it has no seat or does not go in.
  bool set(SearchState& state, std::vector<int>& held, int q) {
    if (state.in[at(q)] != 0 || !may_come(space_.graph(), q, state.in)) return false;
    if (!seated(state, q) || !space_.enters(state, q)) return false;
    state.in[at(q)] = 1;
    for (const int t : space_.piece(q))
      state.timbers.insert(std::lower_bound(state.timbers.begin(), state.timbers.end(), t), t);
    held.push_back(q);
    return true;
  }
  /// What has to be set before `main`, in order, `wanted` first. Nothing: main can't come even so.
  std::optional<std::vector<int>> gather(const SearchState& state, int main, const std::vector<int>& wanted) {
    SearchState now = state;
    std::vector<int> held;
    for (const int q : wanted)
      if (!set(now, held, q)) return std::nullopt;
    for (std::vector<int> out = space_.shut_out(now, main); !out.empty(); out = space_.shut_out(now, main)) {
      bool any = false;
      for (const int q : out) any = (holdable(q) && set(now, held, q)) || any;
      if (!any) return std::nullopt;
    }
    if (!may_come(space_.graph(), main, now.in) || !space_.enters(now, main)) return std::nullopt;
    std::vector<int> timbers;
    timbers.reserve(held.size());
    for (const int q : held) timbers.push_back(space_.piece(q)[0]);
    if (!held.empty() && held_pieces(frame_, plan_, space_.bodies(), timbers).empty()) return std::nullopt;
    return held;
  }

  /// Light pieces with one end in what stands and one in the main piece.
  std::vector<int> caught(const SearchState& state, int main) const {
    std::vector<char> stands(frame_.timbers.size(), 0), comes(frame_.timbers.size(), 0);
    for (const int t : state.timbers) stands[at(t)] = 1;
    for (const int t : space_.piece(main)) comes[at(t)] = 1;
    std::vector<int> found;
    for (int q = 0; q < space_.count(); ++q) {
      if (q == main || state.in[at(q)] != 0 || !holdable(q)) continue;
      bool there = false, here = false;
      for (const int j : joints_of(frame_, space_.piece(q)[0])) {
        const Joint& joint = frame_.joints[at(j)];
        const int other = other_timber(joint, space_.piece(q)[0]);
        there = there || stands[at(other)] != 0;
        here = here || comes[at(other)] != 0;
      }
      if (there && here) found.push_back(q);
    }
    return found;
  }
  /// Whether two that carry the timber stand: one more post is only steadied until it closes.
  [[nodiscard]] bool carried(int timber, const std::vector<char>& stands) const {
    int found = 0;
    for (const int carrier : supports_[at(timber)].all) found += stands[at(carrier)] != 0 ? 1 : 0;
    return found > 1;
  }
  /// Light pieces that carry the main piece and do not stand yet, then what braces them to it or to what stands.
  std::vector<int> carriers(const SearchState& state, int main) const {
    std::vector<char> there(frame_.timbers.size(), 0);
    for (const int t : state.timbers) there[at(t)] = 1;
    const std::vector<char> stands = there;
    for (const int t : space_.piece(main)) there[at(t)] = 1;
    std::vector<int> found;
    const auto add = [&](int q) {
      found.push_back(q);
      for (const int t : space_.piece(q)) there[at(t)] = 1;
    };
    for (const int t : space_.piece(main))
      for (const int carrier : supports_[at(t)].all)
        if (const int q = space_.graph().piece_of[at(carrier)];
            q >= 0 && there[at(carrier)] == 0 && space_.piece(q).size() == 1 && (holdable(q) || carried(t, stands)))
          add(q);
    const std::size_t bear = found.size();
    for (int q = 0; bear > 0 && q < space_.count(); ++q) {
      if (space_.piece(q).size() != 1 || there[at(space_.piece(q)[0])] != 0 || !holdable(q)) continue;
      bool on_them = false, both = true;
      for (const int j : joints_of(frame_, space_.piece(q)[0])) {
        const Joint& joint = frame_.joints[at(j)];
        const int other = other_timber(joint, space_.piece(q)[0]);
        both = both && there[at(other)] != 0;
        for (std::size_t i = 0; i < bear; ++i) on_them = on_them || space_.piece(found[i])[0] == other;
      }
      if (on_them && both) found.push_back(q);
    }
    return found;
  }
  /// The jack nearest to another one on the far side of its hip; −1: none left.
  int beyond_hip(const SearchState& state, int jack) const {
    const Joint *own = nullptr, *nearest = nullptr;
    for (const Joint& joint : frame_.joints)
      if (joint.member == jack && timber(joint.receiver).kind == TimberKind::kHipRafter) own = &joint;
    if (own == nullptr) return -1;
    const auto side = [&](const Joint& joint) { return dot(timber(joint.member).at.x, timber(own->receiver).at.y); };
    for (const Joint& joint : frame_.joints) {
      if (joint.receiver != own->receiver || timber(joint.member).kind != TimberKind::kJackRafter) continue;
      if (side(joint) * side(*own) > 0) continue;
      if (nearest == nullptr || norm(joint.where - own->where) < norm(nearest->where - own->where)) nearest = &joint;
    }
    for (int q = 0; nearest != nullptr && q < space_.count(); ++q)
      if (state.in[at(q)] == 0 && space_.piece(q).size() == 1 && space_.piece(q)[0] == nearest->member) return q;
    return -1;
  }
  /// The rafter opposite; −1: none left.
  int opposite(const SearchState& state, int p) const {
    if (space_.piece(p).size() != 1) return -1;
    const Timber& it = timber(space_.piece(p)[0]);
    if (it.kind == TimberKind::kJackRafter) return beyond_hip(state, space_.piece(p)[0]);
    if (it.kind != TimberKind::kCommonRafter && it.kind != TimberKind::kPrincipalRafter &&
        it.kind != TimberKind::kHipRafter)
      return -1;
    for (int q = 0; q < space_.count(); ++q) {
      if (q == p || state.in[at(q)] != 0 || space_.piece(q).size() != 1) continue;
      const Timber& o = timber(space_.piece(q)[0]);
      if (o.kind == it.kind && libm::fabs(o.at.origin.y - it.at.origin.y) < 1 && dot(o.at.x, it.at.x) < 0.999) return q;
    }
    return -1;
  }

  /// The cheapest step of one main piece with at most `most` new temporaries.
  std::optional<Choice> step_of(const SearchState& state, int p, int most) {
    std::vector<std::vector<int>> tries;
    if (const int other = opposite(state, p); other >= 0) tries.push_back({other});
    if (std::vector<int> own = caught(state, p); !own.empty()) tries.push_back(std::move(own));
    if (std::vector<int> under = carriers(state, p); !under.empty()) tries.push_back(std::move(under));
    tries.emplace_back();
    std::optional<Choice> best;
    for (const std::vector<int>& wanted : tries) {
      const std::optional<std::vector<int>> held = gather(state, p, wanted);
      if (!held) continue;
      const int limit = best ? best->cost() - 1 : most;
      if (limit < 0) break;
      Choice choice{state, {}};
      if (space_.close_on(choice.after, *held, p, choice.step, limit)) best = std::move(choice);
    }
    return best;
  }

  std::optional<Choice> choose(const SearchState& state) {
    std::vector<int> candidates;
    for (int p = 0; p < space_.count(); ++p)
      if (state.in[at(p)] == 0 && space_.lifts(p)) candidates.push_back(p);
    sort_by(candidates, [&](int a, int b) {
      const int ta = tier(a), tb = tier(b);
      return ta != tb ? ta < tb : distance(state, a) < distance(state, b) - 1e-6;
    });
    if (policy_ == Policy::kBays)
      for (const int p : candidates) {
        if (!clock_.tick(state.placed)) return std::nullopt;
        if (std::optional<Choice> free = step_of(state, p, 0)) return free;
      }
    std::optional<Choice> best;
    int found_in = -1;
    for (const int p : candidates) {
      if (best && (tier(p) != found_in || best->cost() <= 1)) break;
      if (!clock_.tick(state.placed)) return std::nullopt;
      // Uprights that it closes on may be braced, it is not.
      const int most = holdable(p) && carriers(state, p).empty() ? 0 : kMostNew;
      std::optional<Choice> choice = step_of(state, p, best ? std::min(most, best->cost() - 1) : most);
      if (!choice) continue;
      best = std::move(choice);
      found_in = tier(p);
    }
    return best;
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  SearchSpace& space_;
  SearchClock& clock_;
  Policy policy_;
  std::vector<Support> supports_;
  std::vector<char> holdable_;
};

}  // namespace

DepthFirst search_compound(const Frame& frame, const RaisingPlan& plan, SearchSpace& space, SearchClock& clock) {
  DepthFirst best = Planner(frame, plan, space, clock, Policy::kTiers).run();
  if (best.sequence.found) clock.found(best.sequence.cost);
  if (clock.stopped() || (best.sequence.found && !clock.tick(space.count()))) return best;
  if (best.sequence.found && best.sequence.cost.temporaries == 0) return best;
  DepthFirst other = Planner(frame, plan, space, clock, Policy::kBays).run();
  const bool better = other.sequence.found ? !best.sequence.found || other.sequence.cost < best.sequence.cost
                                           : !best.sequence.found && other.farthest.placed > best.farthest.placed;
  return better ? other : best;
}

}  // namespace bentbook
