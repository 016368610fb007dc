#include "raising/search/search_space.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/check.h"
#include "raising/holding.h"

namespace bentbook {
namespace {

bool meets(const std::vector<int>& a, const std::vector<int>& b) {
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    if (a[i] == b[j]) return true;
    a[i] < b[j] ? ++i : ++j;
  }
  return false;
}

std::vector<int> merged(const std::vector<int>& a, const std::vector<int>& b) {
  std::vector<int> all;
  std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(all));
  return all;
}

std::vector<int> without(const std::vector<int>& a, const std::vector<int>& b) {
  std::vector<int> left;
  std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(left));
  return left;
}

}  // namespace

bool MemoJudge::rigid(std::span<const int> timbers, std::span<const int> temporaries) {
  return judge_.rigid(timbers, temporaries);
}

bool MemoJudge::stands(std::span<const int> timbers, std::span<const int> temporaries) {
  const auto [found, fresh] =
      stood_.try_emplace(Key{{timbers.begin(), timbers.end()}, {temporaries.begin(), temporaries.end()}}, false);
  if (fresh) found->second = judge_.rigid(timbers, temporaries) && judge_.stands(timbers, temporaries);
  return found->second;
}

std::vector<int> MemoJudge::propose(std::span<const int> timbers, std::span<const int> temporaries) {
  const auto [found, fresh] =
      proposed_.try_emplace(Key{{timbers.begin(), timbers.end()}, {temporaries.begin(), temporaries.end()}});
  if (fresh) {
    found->second = judge_.propose(timbers, temporaries);
    sort_up(found->second);
  }
  return found->second;
}

SearchSpace::SearchSpace(const Frame& frame, const RaisingPlan& plan, Judge& judge, Blocking& blocking,
                         std::vector<Piece> pieces)
    : frame_(frame),
      plan_(plan),
      judge_(judge),
      blocking_(blocking),
      graph_(precedence_of(frame, plan, std::move(pieces))),
      bodies_(pick_bodies(frame, plan)),
      limits_(entry_limits(plan)) {
  const std::size_t n = graph_.pieces.size();
  start_.in.assign(n, 0);
  ways_.resize(n);
  near_.resize(n);
  way_known_.assign(n, 0);
  for (const Piece& p : graph_.pieces) lifts_.push_back(judge_.lifts(p) ? 1 : 0);
  find_places();
  take_over_done();
}

void SearchSpace::find_places() {
  std::vector<double> bents;
  for (const Timber& t : frame_.timbers)
    if (t.placed && t.kind == TimberKind::kPost &&
        std::none_of(bents.begin(), bents.end(), [&](double y) { return libm::fabs(y - t.at.origin.y) < 12; }))
      bents.push_back(t.at.origin.y);
  sort_up(bents);
  for (const Piece& piece : graph_.pieces) {
    Vec3 sum{};
    for (const int t : piece) {
      const Timber& it = frame_.timbers[at(t)];
      sum = sum + it.at.origin + (it.length / 2) * it.at.x;
    }
    PiecePlace place;
    place.x = sum.x / static_cast<double>(piece.size());
    place.y = sum.y / static_cast<double>(piece.size());
    for (std::size_t b = 1; b < bents.size(); ++b)
      if (libm::fabs(bents[b] - place.y) < libm::fabs(bents[at(place.zone)] - place.y) - 1e-6)
        place.zone = static_cast<int>(b);
    places_.push_back(place);
  }
}

void SearchSpace::take_over_done() {
  std::vector<std::string> up;
  for (const RaisingStep& step : plan_.steps) {
    if (!step.done) continue;
    done_.push_back(step);
    for (const std::string& mark : marks_in(step)) {
      const int t = timber_by_mark(frame_, mark);
      if (t < 0 || graph_.piece_of[at(t)] < 0) continue;
      const int p = graph_.piece_of[at(t)];
      if (start_.in[at(p)] == 0) {
        start_.in[at(p)] = 1;
        ++start_.placed;
        start_.timbers = merged(start_.timbers, piece(p));
        start_.last = p;
      }
    }
    up.insert(up.end(), step.put_up.begin(), step.put_up.end());
    for (const std::string& name : step.take_out) up.erase(std::remove(up.begin(), up.end(), name), up.end());
  }
  for (std::size_t i = 0; i < plan_.temporaries.size(); ++i)
    if (std::find(up.begin(), up.end(), plan_.temporaries[i].name) != up.end())
      start_.up.push_back(static_cast<int>(i));
}

bool SearchSpace::stands(const std::vector<int>& timbers, const std::vector<int>& up) {
  return judge_.stands(timbers, up) && (!plan_.spare || std::all_of(up.begin(), up.end(), [&](int t) {
           return judge_.stands(timbers, without(up, {t}));
         }));
}

int SearchSpace::tier(int p, Preference preference) const {
  int least = 9;
  for (const int t : piece(p)) {
    int level = 6;
    switch (frame_.timbers[at(t)].kind) {
      case TimberKind::kSill:
        level = 0;
        break;
      case TimberKind::kPost:
      case TimberKind::kTie:
        level = 1;
        break;
      case TimberKind::kGirt:
      case TimberKind::kJoist:
      case TimberKind::kKingPost:
      case TimberKind::kQueenPost:
        level = 2;
        break;
      case TimberKind::kBrace:
        level = 3;
        break;
      case TimberKind::kPlate:
      case TimberKind::kRidgeBeam:
      case TimberKind::kDragonTie:
        level = 4;
        break;
      case TimberKind::kPrincipalRafter:
      case TimberKind::kCollar:
      case TimberKind::kHipRafter:
        level = 5;
        break;
      default:
        break;
    }
    least = std::min(least, level);
  }
  return preference == Preference::kLevels ? least : least == 0 ? 0 : 1;
}

bool SearchSpace::enters(const SearchState& state, int p) {
  if (way_known_[at(p)] != 0 && !meets(ways_[at(p)], state.timbers)) return true;
  std::vector<int> in_it;
  if (blocking_.clear_way(piece(p), state.timbers, in_it)) {
    ways_[at(p)] = std::move(in_it);
    way_known_[at(p)] = 1;
    return true;
  }
  return blocking_.entry(piece(p), state.timbers, limits_).free;
}

std::vector<int> SearchSpace::shut_out(const SearchState& state, int p) {
  std::vector<int> out;
  SearchState with;
  with.timbers = merged(state.timbers, piece(p));
  for (int q = 0; q < count(); ++q) {
    if (q == p || state.in[at(q)] != 0) continue;
    if (way_known_[at(q)] != 0 && !meets(ways_[at(q)], piece(p)) && !meets(ways_[at(q)], state.timbers)) continue;
    if (!enters(with, q)) out.push_back(q);
  }
  return out;
}

OrderCost SearchSpace::leg(int from, int to) const {
  const PiecePlace& b = place(to);
  OrderCost cost;
  const double x = from < 0 ? plan_.stack_x.in() : place(from).x, y = from < 0 ? plan_.stack_y.in() : place(from).y;
  cost.moves = from < 0 ? 0 : (place(from).zone > b.zone ? place(from).zone - b.zone : b.zone - place(from).zone);
  cost.carry = static_cast<std::int64_t>(libm::floor(libm::hypot(b.x - x, b.y - y) + 0.5));
  return cost;
}

OrderCost SearchSpace::bound() const {
  // Every zone that has a piece left must be gone to.
  OrderCost cost;
  int least = 1 << 20, most = -1;
  for (int p = 0; p < count(); ++p) {
    if (start_.in[at(p)] != 0) continue;
    least = std::min(least, place(p).zone);
    most = std::max(most, place(p).zone);
  }
  if (most >= least) cost.moves = most - least;
  return cost;
}

bool SearchSpace::beside(int temporary, int p) {
  std::vector<char>& near = near_[at(p)];
  if (near.empty()) {
    near.assign(frame_.timbers.size(), 0);
    for (const int t : piece(p)) {
      near[at(t)] = 1;
      for (const int j : joints_of(frame_, t)) {
        near[at(frame_.joints[at(j)].member)] = 1;
        near[at(frame_.joints[at(j)].receiver)] = 1;
      }
    }
  }
  const Temporary& it = judge_.temporaries()[at(temporary)];
  const auto is_near = [&](const std::string& mark) {
    const int t = mark.empty() ? -1 : timber_by_mark(frame_, mark);
    return t >= 0 && near[at(t)] != 0;
  };
  return is_near(it.from.mark) || is_near(it.to.mark);
}

bool SearchSpace::seems_idle(const std::vector<int>& timbers, const std::vector<int>& up, int temporary) {
  const std::vector<int> less = without(up, {temporary});
  if (!judge_.rigid(timbers, less)) return false;
  const auto on_same = [&](int other) {
    const Temporary &a = judge_.temporaries()[at(temporary)], &b = judge_.temporaries()[at(other)];
    const auto holds_it = [&](const std::string& mark) {
      return !mark.empty() && (mark == b.from.mark || mark == b.to.mark);
    };
    return holds_it(a.from.mark) || holds_it(a.to.mark);
  };
  return !plan_.spare || std::all_of(less.begin(), less.end(), [&](int other) {
    return !on_same(other) || judge_.rigid(timbers, without(less, {other}));
  });
}

void SearchSpace::take_out_idle(SearchState& state, SearchStep& step, const std::vector<int>& from) {
  const bool last = state.placed + 1 == count();
  // What rigidity can miss is cheap to tell; the forces are asked for once, or thrice.
  std::vector<int> idle, rest = state.up;
  for (const int t : from) {
    if ((!last && !beside(t, step.piece)) || !seems_idle(state.timbers, rest, t)) continue;
    rest = without(rest, {t});
    idle.push_back(t);
  }
  const auto middle = idle.begin() + static_cast<std::ptrdiff_t>((idle.size() + 1) / 2);
  const std::vector<int> tries[] = {idle, {idle.begin(), middle}, {middle, idle.end()}};
  for (std::size_t i = 0; i < (idle.size() > 1 ? 3U : 1U); ++i) {
    if (tries[i].empty() || !stands(state.timbers, without(state.up, tries[i]))) continue;
    state.up = without(state.up, tries[i]);
    step.take_out = tries[i];
    return;
  }
}

void SearchSpace::take_out_all_idle(SearchState& state, SearchStep& step) {
  // All that rigidity can miss, at once; else what can be missed one after the other.
  std::vector<int> rest = state.up, idle;
  for (const int t : state.up) {
    if (!seems_idle(state.timbers, rest, t)) continue;
    rest = without(rest, {t});
    idle.push_back(t);
  }
  if (idle.empty()) return;
  if (stands(state.timbers, rest)) {
    state.up = std::move(rest);
    step.take_out = std::move(idle);
    return;
  }
  for (const int t : idle) {
    std::vector<int> less = without(state.up, {t});
    if (!stands(state.timbers, less)) continue;
    state.up = std::move(less);
    step.take_out.push_back(t);
  }
}

void SearchSpace::take(SearchState& state, SearchState&& next, const SearchStep& step) const {
  const OrderCost go = leg(state.last, step.piece);
  for (const int q : step.set) next.in[at(q)] = 1;
  next.in[at(step.piece)] = 1;
  next.placed += static_cast<int>(step.set.size()) + 1;
  next.last = step.piece;
  next.cost.temporaries += static_cast<int>(step.put_up.size());
  next.cost.moves += go.moves;
  next.cost.carry += go.carry;
  state = std::move(next);
}

bool SearchSpace::bears(const SearchState& state, const std::vector<int>& set) {
  if (set.empty() || state.timbers.empty()) return true;
  std::vector<int> timbers;
  timbers.reserve(set.size());
  for (const int q : set) timbers.push_back(piece(q)[0]);
  std::vector<HeldTimber> held;
  held.reserve(set.size());
  for (const SetPiece& one : held_pieces(frame_, plan_, bodies_, timbers))
    held.push_back({timbers[held.size()], one.by});
  return judge_.bears(state.timbers, state.up, hung_while_closing(frame_, bodies_, held, state.timbers));
}

bool SearchSpace::close_on(SearchState& state, const std::vector<int>& set, int p, SearchStep& step, int most) {
  SearchState next = state;
  step = {};
  step.set = set;
  step.piece = p;
  for (const int q : set) next.timbers = merged(next.timbers, piece(q));
  next.timbers = merged(next.timbers, piece(p));
  if (stands(next.timbers, {})) {
    step.take_out = std::exchange(next.up, {});
  } else {
    if (!stands(next.timbers, next.up)) {
      step.put_up = most > 0 ? without(judge_.propose(next.timbers, next.up), next.up) : std::vector<int>{};
      if (step.put_up.empty() || static_cast<int>(step.put_up.size()) > most) return false;
      next.up = merged(next.up, step.put_up);
      if (!stands(next.timbers, next.up)) return false;
    }
    take_out_all_idle(next, step);
  }
  // What this step would put up and take out again is not put up.
  for (const int t : std::vector<int>(step.put_up))
    if (std::erase(step.take_out, t) > 0) std::erase(step.put_up, t);
  if (!bears(state, set)) return false;
  take(state, std::move(next), step);
  return true;
}

bool SearchSpace::add(SearchState& state, int p, SearchStep& step, NewTemporaries may) {
  SearchState next = state;
  step = {};
  step.piece = p;
  next.timbers = merged(state.timbers, piece(p));
  if (stands(next.timbers, {})) {
    step.take_out = next.up;
    next.up.clear();
  } else if (stands(next.timbers, next.up)) {
    take_out_idle(next, step, state.up);
  } else {
    if (may == NewTemporaries::kNone) return false;
    step.put_up = without(judge_.propose(next.timbers, next.up), next.up);
    if (step.put_up.empty()) {
      ++not_braced_;
      return false;
    }
    next.up = merged(next.up, step.put_up);
    if (!stands(next.timbers, next.up)) return false;
    take_out_idle(next, step, state.up);
  }
  take(state, std::move(next), step);
  return true;
}

bool SearchSpace::extend(SearchState& state, int p, SearchStep& step) {
  return state.in[at(p)] == 0 && lifts(p) && may_come(graph_, p, state.in) && enters(state, p) && add(state, p, step);
}

}  // namespace bentbook
