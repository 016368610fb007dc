#pragma once
/// The cheapest order by trying every sequence: the rule of raising/search.h written down once more. Shares nothing
/// with the search but the judge that it is given and the blocking graph.

#include <algorithm>
#include <cstdlib>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "frame/plan.h"
#include "raising/check.h"
#include "raising/insertion/blocking.h"
#include "raising/order_judge.h"
#include "raising/plan.h"

namespace bentbook {

struct Costs {
  std::int64_t temporaries = 0, moves = 0, carry = 0;
  [[nodiscard]] bool below(const Costs& o) const {
    if (temporaries != o.temporaries) return temporaries < o.temporaries;
    return moves != o.moves ? moves < o.moves : carry < o.carry;
  }
  friend Costs operator+(const Costs& a, const Costs& b) {
    return {a.temporaries + b.temporaries, a.moves + b.moves, a.carry + b.carry};
  }
  friend bool operator==(const Costs&, const Costs&) = default;
};

/// Pieces are known by their bits.
class EveryOrder {
 public:
  using Pieces = std::vector<std::vector<int>>;

  EveryOrder(const Frame& frame, const RaisingPlan& plan, Pieces pieces, Judge& judge)
      : frame_(frame), plan_(plan), pieces_(std::move(pieces)), judge_(judge), blocking_(frame) {
    for (const Timber& t : frame.timbers)
      if (t.kind == TimberKind::kPost) {
        bool near = false;
        for (const double y : bents_) near = near || (t.at.origin.y - y < 12 && y - t.at.origin.y < 12);
        if (!near) bents_.push_back(t.at.origin.y);
      }
    std::sort(bents_.begin(), bents_.end());
  }

  /// Sequence by sequence, left off only where it costs as much as the best one already.
  std::optional<Costs> by_sequences() {
    std::optional<Costs> best;
    each(0, {}, -1, {}, best);
    return best;
  }
  /// What is left costs the same however that which stands came to stand: each of these is looked at once.
  std::optional<Costs> by_rests() { return rest(0, {}, -1); }

  /// Of one sequence; nothing: some step is not good.
  std::optional<Costs> cost_of(const std::vector<int>& sequence) {
    Costs sum;
    std::vector<int> up;
    unsigned stood = 0;
    int last = -1;
    for (const int p : sequence) {
      const Held held = come(stood, p, up);
      if (!held.good) return std::nullopt;
      sum = sum + leg(last, p) + Costs{held.put_up, 0, 0};
      up = held.up;
      stood |= 1U << static_cast<unsigned>(p);
      last = p;
    }
    return sum;
  }
  [[nodiscard]] std::size_t looked_at() const { return rests_.size(); }

 private:
  struct At {
    double x = 0, y = 0;
    int zone = 0;
  };
  struct Held {
    bool good = false;
    std::vector<int> up;
    std::int64_t put_up = 0;
  };
  [[nodiscard]] bool whole(unsigned stood) const { return stood + 1 == 1U << pieces_.size(); }

  void each(unsigned stood, const std::vector<int>& up, int last, Costs cost, std::optional<Costs>& best) {
    if (best && !cost.below(*best)) return;
    if (whole(stood)) {
      best = cost;
      return;
    }
    for (int p = 0; p < static_cast<int>(pieces_.size()); ++p) {
      const Held& held = come(stood, p, up);
      if (held.good)
        each(stood | 1U << static_cast<unsigned>(p), held.up, p, cost + leg(last, p) + Costs{held.put_up, 0, 0}, best);
    }
  }
  std::optional<Costs> rest(unsigned stood, const std::vector<int>& up, int last) {
    if (whole(stood)) return Costs{};
    const auto key = std::tuple(stood, last, up);
    if (const auto known = rests_.find(key); known != rests_.end()) return known->second;
    std::optional<Costs> best;
    for (int p = 0; p < static_cast<int>(pieces_.size()); ++p) {
      const Held& held = come(stood, p, up);
      if (!held.good) continue;
      const std::optional<Costs> after = rest(stood | 1U << static_cast<unsigned>(p), held.up, p);
      if (!after) continue;
      const Costs sum = *after + leg(last, p) + Costs{held.put_up, 0, 0};
      if (!best || sum.below(*best)) best = sum;
    }
    return rests_.emplace(key, best).first->second;
  }

  At where(const std::vector<int>& piece) const {
    At p;
    for (const int t : piece) {
      const Timber& it = frame_.timbers[static_cast<std::size_t>(t)];
      p.x += it.at.origin.x + it.length / 2 * it.at.x.x;
      p.y += it.at.origin.y + it.length / 2 * it.at.x.y;
    }
    p.x /= static_cast<double>(piece.size());
    p.y /= static_cast<double>(piece.size());
    for (std::size_t b = 0; b < bents_.size(); ++b)
      if (std::abs(bents_[b] - p.y) < std::abs(bents_[static_cast<std::size_t>(p.zone)] - p.y) - 1e-6)
        p.zone = static_cast<int>(b);
    return p;
  }
  Costs leg(int last, int next) const {
    const At a =
        last < 0 ? At{plan_.stack_x.in(), plan_.stack_y.in(), 0} : where(pieces_[static_cast<std::size_t>(last)]);
    const At b = where(pieces_[static_cast<std::size_t>(next)]);
    return {0, last < 0 ? 0 : std::abs(a.zone - b.zone),
            static_cast<std::int64_t>(libm::floor(libm::hypot(b.x - a.x, b.y - a.y) + 0.5))};
  }
  /// Timbers of the pieces in `stood`, in order.
  std::vector<int> timbers(unsigned stood) const {
    std::vector<int> all;
    for (std::size_t p = 0; p < pieces_.size(); ++p)
      if ((stood >> p & 1U) != 0) all.insert(all.end(), pieces_[p].begin(), pieces_[p].end());
    std::sort(all.begin(), all.end());
    return all;
  }
  /// The piece comes; kept, as many sequences ask the same.
  const Held& come(unsigned stood, int p, const std::vector<int>& up) {
    const auto [at, fresh] = held_.try_emplace(std::tuple(stood, p, up));
    if (!fresh || (stood >> static_cast<unsigned>(p) & 1U) != 0 || !may_come(stood, p)) return at->second;
    Held& held = at->second;
    held.up = up;
    held.good = hold(pieces_[static_cast<std::size_t>(p)], timbers(stood | 1U << static_cast<unsigned>(p)), held.up,
                     held.put_up);
    return held;
  }
  bool may_come(unsigned stood, int p) {
    const auto [at, fresh] = may_.try_emplace(std::pair(stood, p), false);
    if (fresh) {
      const std::vector<int> there = timbers(stood);
      const std::vector<int>& piece = pieces_[static_cast<std::size_t>(p)];
      at->second = supported(piece, there) && wished(piece, there) && judge_.lifts(piece) &&
                   blocking_.entry(piece, there, entry_limits(plan_)).free;
    }
    return at->second;
  }
  bool supported(const std::vector<int>& piece, const std::vector<int>& stood) const {
    const auto there = [&](int t) {
      return std::count(piece.begin(), piece.end(), t) > 0 || std::count(stood.begin(), stood.end(), t) > 0;
    };
    for (const int t : piece) {
      int bears = 0, bears_met = 0, hangs = 0, hangs_met = 0, ends = 0, ends_met = 0;
      for (const Joint& j : frame_.joints) {
        if (j.carried != t) continue;
        const int met = there(j.carrier) ? 1 : 0;
        if (j.bearing == Bearing::kBearsOn) ++bears, bears_met += met;
        if (j.bearing == Bearing::kHangsFrom) ++hangs, hangs_met += met;
        if (j.bearing == Bearing::kButts || j.bearing == Bearing::kBraces) ++ends, ends_met += met;
      }
      if (bears_met < bears || (hangs > 0 && hangs_met == 0)) return false;
      const bool post = frame_.timbers[static_cast<std::size_t>(t)].kind == TimberKind::kPost;
      if (bears == 0 && hangs == 0 && ends > 0 && ends_met == 0 && !post) return false;
    }
    return true;
  }
  bool wished(const std::vector<int>& piece, const std::vector<int>& stood) const {
    const auto timber = [&](int t) -> const Timber& { return frame_.timbers[static_cast<std::size_t>(t)]; };
    const auto any_in = [&](const std::vector<std::string>& marks) {
      return std::any_of(piece.begin(), piece.end(),
                         [&](int t) { return std::count(marks.begin(), marks.end(), timber(t).mark) > 0; });
    };
    const auto all_stand = [&](const std::vector<std::string>& marks) {
      return std::all_of(marks.begin(), marks.end(), [&](const std::string& mark) {
        return std::any_of(stood.begin(), stood.end(), [&](int t) { return timber(t).mark == mark; });
      });
    };
    for (const Wish& w : plan_.wishes) {
      if (w.kind == WishKind::kBefore && any_in(w.others) && !all_stand(w.marks)) return false;
      if (w.kind == WishKind::kDay && any_in(w.marks))
        for (const Wish& sooner : plan_.wishes)
          if (sooner.kind == WishKind::kDay && sooner.number < w.number && !all_stand(sooner.marks)) return false;
      if (w.kind != WishKind::kStartFrom) continue;
      std::vector<std::string> first, later;
      for (const Timber& t : frame_.timbers)
        if (t.kind == TimberKind::kPost) (t.place.bent == w.number ? first : later).push_back(t.mark);
      if (any_in(later) && !all_stand(first)) return false;
    }
    return true;
  }
  static std::vector<int> less(const std::vector<int>& all, const std::vector<int>& out) {
    std::vector<int> left;
    for (const int t : all)
      if (std::count(out.begin(), out.end(), t) == 0) left.push_back(t);
    return left;
  }
  /// Has an end at the piece or at what is joined to it.
  bool close(const std::vector<int>& piece, const Temporary& brace) const {
    const auto is = [&](int t) {
      const std::string& mark = frame_.timbers[static_cast<std::size_t>(t)].mark;
      return mark == brace.from.mark || mark == brace.to.mark;
    };
    for (const int t : piece) {
      if (is(t)) return true;
      for (const Joint& j : frame_.joints)
        if ((j.member == t && is(j.receiver)) || (j.receiver == t && is(j.member))) return true;
    }
    return false;
  }
  /// The rule for temporaries.
  bool hold(const std::vector<int>& piece, const std::vector<int>& now, std::vector<int>& up, std::int64_t& put_up) {
    if (judge_.stands(now, {})) {
      up.clear();
      return true;
    }
    const std::vector<int> before = up;
    if (!judge_.stands(now, up)) {
      const std::vector<int> more = judge_.propose(now, up);
      if (more.empty()) return false;
      for (const int t : more) up.push_back(t);
      std::sort(up.begin(), up.end());
      put_up = static_cast<std::int64_t>(more.size());
      if (!judge_.stands(now, up)) return false;
    }
    std::vector<int> idle, left = up;
    for (const int t : before) {
      if (now.size() < frame_.timbers.size() && !close(piece, judge_.temporaries()[static_cast<std::size_t>(t)]))
        continue;
      if (!judge_.rigid(now, less(left, {t}))) continue;
      left = less(left, {t});
      idle.push_back(t);
    }
    std::vector<int> first, second;
    for (std::size_t i = 0; i < idle.size(); ++i) (2 * i < idle.size() ? first : second).push_back(idle[i]);
    for (const std::vector<int>& out : {idle, first, second})
      if (!out.empty() && judge_.stands(now, less(up, out))) {
        up = less(up, out);
        break;
      }
    return true;
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  Pieces pieces_;
  Judge& judge_;
  Blocking blocking_;
  std::vector<double> bents_;
  std::map<std::tuple<unsigned, int, std::vector<int>>, std::optional<Costs>> rests_;
  std::map<std::tuple<unsigned, int, std::vector<int>>, Held> held_;
  std::map<std::pair<unsigned, int>, bool> may_;
};

/// The pieces that the plan's assemblies and its wishes for timbers together make, every other timber by itself.
inline EveryOrder::Pieces pieces_together(const Frame& frame, const RaisingPlan& plan) {
  EveryOrder::Pieces pieces;
  for (std::size_t t = 0; t < frame.timbers.size(); ++t) pieces.push_back({static_cast<int>(t)});
  const auto join = [&](const std::vector<std::string>& marks) {
    EveryOrder::Pieces apart;
    std::vector<int> one;
    for (const std::vector<int>& piece : pieces) {
      const bool named = std::any_of(piece.begin(), piece.end(), [&](int t) {
        return std::count(marks.begin(), marks.end(), frame.timbers[static_cast<std::size_t>(t)].mark) > 0;
      });
      if (named)
        one.insert(one.end(), piece.begin(), piece.end());
      else
        apart.push_back(piece);
    }
    std::sort(one.begin(), one.end());
    if (!one.empty()) apart.push_back(one);
    pieces = apart;
  };
  for (const Assembly& a : plan.assemblies) join(a.marks);
  for (const Wish& w : plan.wishes)
    if (w.kind == WishKind::kTogether) join(w.marks);
  return pieces;
}

}  // namespace bentbook
