#pragma once
/// The fewest temporaries with which a small frame can be raised, by trying every order of its pieces and every choice
/// of places for temporaries. Shares nothing with the search but the judge's verdicts, the blocking graph and what a
/// crew can hold.
///
/// A step brings one piece, and before it any of the light pieces that are joined to it, to each other or to what
/// stands at both their ends. Temporaries go up when a state does not stand without them, and come out when all stands:
/// one more of them never harms (it adds forces that may be 0, it weighs nothing and is in nobody's way), so they are
/// put up no sooner and taken out no later than that, and each counts once.

#include <algorithm>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "frame/facts.h"
#include "raising/check.h"
#include "raising/holding.h"
#include "raising/order.h"

namespace bentbook {

class LeastTemporaries {
 public:
  /// Pieces are the plan's assemblies and every other timber; places for temporaries are the plan's temporaries.
  LeastTemporaries(const Frame& frame, const RaisingPlan& plan)
      : frame_(frame),
        plan_(plan),
        graph_(precedence_of(frame, plan, pieces_of(frame, plan))),
        judge_(make_judge(frame, plan)),
        blocking_(frame),
        bodies_(pick_bodies(frame, plan)) {
    const auto timber = [&](const std::string& mark) { return mark.empty() ? -1 : timber_by_mark(frame, mark); };
    for (const Temporary& place : plan.temporaries) ends_.push_back({timber(place.from.mark), timber(place.to.mark)});
    for (const Piece& piece : graph_.pieces)
      light_.push_back(piece.size() == 1 && may_be_held(frame.timbers[index(piece[0])].kind) &&
                       !held_pieces(frame, plan, bodies_, piece).empty());
  }

  [[nodiscard]] int pieces() const { return static_cast<int>(graph_.pieces.size()); }
  [[nodiscard]] int main_pieces() const { return pieces() - static_cast<int>(std::ranges::count(light_, true)); }
  /// Verdicts asked for, each once.
  [[nodiscard]] std::size_t asked() const { return verdicts_.size(); }

  /// No order gets along with fewer; `most` + 1 where none does with `most`. Exact only where `settled`: it gives up
  /// after so many looks.
  int least(int most, int looks) {
    looks_left_ = looks;
    if (!judge_->stands(timbers(whole()), {}) || !judge_->rigid(timbers(whole()), {})) return most + 1;
    for (int n = 0; n <= most; ++n) {
      most_ = n;
      been_.clear();
      if (ends_from(0, {}) || !settled()) return n;
    }
    return most + 1;
  }
  [[nodiscard]] bool settled() const { return looks_left_ > 0; }

 private:
  using Pieces = unsigned;  ///< by bit
  using Up = std::vector<int>;

  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  static bool has(Pieces set, int p) { return (set >> static_cast<unsigned>(p) & 1U) != 0; }
  static Pieces with(Pieces set, int p) { return set | 1U << static_cast<unsigned>(p); }
  [[nodiscard]] Pieces whole() const { return (1U << graph_.pieces.size()) - 1; }

  [[nodiscard]] std::vector<int> timbers(Pieces set) const {
    std::vector<int> all;
    for (int p = 0; p < pieces(); ++p)
      if (has(set, p)) all.insert(all.end(), graph_.pieces[index(p)].begin(), graph_.pieces[index(p)].end());
    std::ranges::sort(all);
    return all;
  }

  bool verdict(Pieces set, const Up& up) {
    if (--looks_left_ <= 0) return false;
    const auto [at, fresh] = verdicts_.try_emplace({set, up}, false);
    if (fresh) {
      const std::vector<int> there = timbers(set);
      at->second = judge_->rigid(there, up) && judge_->stands(there, up);
    }
    return at->second;
  }
  /// With the spare that the lead wants, where he wants one.
  bool stands(Pieces set, const Up& up) {
    if (!verdict(set, up)) return false;
    for (std::size_t i = 0; plan_.spare && i < up.size(); ++i) {
      Up less = up;
      less.erase(less.begin() + static_cast<std::ptrdiff_t>(i));
      if (!verdict(set, less)) return false;
    }
    return true;
  }
  /// How many motions are free, each of which wants a temporary of its own.
  int free_motions(Pieces set, const Up& up) {
    return judge_->check(timbers(set), up, {}, StandingDepth::kRigid).mechanisms;
  }

  bool enters(Pieces set, int p) {
    const auto [at, fresh] = enters_.try_emplace({set, p}, false);
    if (fresh) at->second = blocking_.entry(graph_.pieces[index(p)], timbers(set), entry_limits(plan_)).free;
    return at->second;
  }
  bool may(Pieces set, int p) {
    std::vector<char> in;
    in.reserve(index(pieces()));
    for (int q = 0; q < pieces(); ++q) in.push_back(has(set, q) ? 1 : 0);
    return bentbook::may_come(graph_, p, in) && enters(set, p);
  }
  /// Whether something that is not there yet can't come any more: what is in its way only grows.
  bool shuts_out(Pieces set) {
    const auto [at, fresh] = dead_.try_emplace(set, false);
    for (int q = 0; fresh && q < pieces(); ++q)
      if (!has(set, q) && !enters(set, q)) {
        at->second = true;
        break;
      }
    return at->second;
  }

  /// Whether a light piece is joined to something in `step`, or at both its ends to what stands by then.
  [[nodiscard]] bool caught(Pieces stood, Pieces step, int q) const {
    int ends = 0;
    const int t = graph_.pieces[index(q)][0];
    for (const Joint& joint : frame_.joints) {
      if (joint.member != t && joint.receiver != t) continue;
      const int other = graph_.piece_of[index(joint.member == t ? joint.receiver : joint.member)];
      if (has(step, other) && other != q) return true;
      ends += has(stood | step, other) ? 1 : 0;
    }
    return ends > 1;
  }
  [[nodiscard]] bool held(const std::vector<int>& set, std::vector<HeldTimber>& how) const {
    std::vector<int> alone;
    alone.reserve(set.size());
    for (const int q : set) alone.push_back(graph_.pieces[index(q)][0]);
    const std::vector<SetPiece> pieces = held_pieces(frame_, plan_, bodies_, alone);
    for (std::size_t i = 0; i < pieces.size(); ++i) how.push_back({alone[i], pieces[i].by});
    return !pieces.empty();
  }
  /// Whether what stands bears what is set into it; temporaries that this step puts up may be up before.
  bool bears(Pieces stood, const std::vector<int>& set, const Up& up) {
    if (set.empty() || stood == 0) return true;
    std::vector<HeldTimber> how;
    if (!held(set, how)) return false;
    const std::vector<int> there = timbers(stood);
    const Up seated = seated_in(stood, up);
    return judge_->bears(there, seated, hung_while_closing(frame_, bodies_, how, there));
  }
  [[nodiscard]] bool seated(Pieces set, int place) const {
    const auto [from, to] = ends_[index(place)];
    return from >= 0 && has(set, graph_.piece_of[index(from)]) && (to < 0 || has(set, graph_.piece_of[index(to)]));
  }
  [[nodiscard]] Up seated_in(Pieces set, const Up& up) const {
    Up found;
    for (const int place : up)
      if (seated(set, place)) found.push_back(place);
    return found;
  }

  /// Whether an order goes on from here to the end.
  bool ends_from(Pieces stood, const Up& up) {
    if (stood == whole()) return true;
    if (!settled()) return false;
    if (!been_.insert({stood, up}).second) return false;
    for (int main = 0; main < pieces(); ++main)
      if (!has(stood, main) && judge_->lifts(graph_.pieces[index(main)]) && sets_before(stood, stood, {}, main, up))
        return true;
    return false;
  }
  /// Sets light pieces, each in every place in time that makes a difference, then closes.
  bool sets_before(Pieces stood, Pieces now, const std::vector<int>& set, int main, const Up& up) {
    if (closes(stood, now, set, main, up)) return true;
    if (!settled()) return false;
    for (int q = 0; q < pieces(); ++q) {
      if (q == main || has(now, q) || !light_[index(q)]) continue;
      if (!caught(stood, with(now & ~stood, main) | light_left(now), q) || !may(now, q)) continue;
      if (!set.empty() && q < set.back() && either_way(now, set.back(), q)) continue;
      std::vector<int> more = set;
      more.push_back(q);
      if (std::vector<HeldTimber> how; !held(more, how)) continue;
      if (sets_before(stood, with(now, q), more, main, up)) return true;
    }
    return false;
  }
  /// Light pieces that may still be set: a piece may be caught by one that is set after it.
  [[nodiscard]] Pieces light_left(Pieces now) const {
    Pieces all = 0;
    for (int q = 0; q < pieces(); ++q)
      if (light_[index(q)] && !has(now, q)) all = with(all, q);
    return all;
  }
  /// Whether `q` might have come before `last` as well: then one of the two ways round is tried.
  bool either_way(Pieces now, int last, int q) {
    const Pieces without = now & ~with(0, last);
    return may(without, q) && may(with(without, q), last);
  }
  bool closes(Pieces stood, Pieces now, const std::vector<int>& set, int main, const Up& up) {
    const Pieces after = with(now, main);
    for (const int q : set)
      if (!caught(stood, after & ~stood, q)) return false;
    if (!may(now, main) || shuts_out(after)) return false;
    if (stands(after, up)) return bears(stood, set, up) && ends_from(after, up);
    return put_up(stood, after, set, up, up, 0);
  }
  /// One temporary more from place `next` on, as many as may still be, and no needless ones.
  bool put_up(Pieces stood, Pieces after, const std::vector<int>& set, const Up& before, const Up& up, int next) {
    const int left = most_ - static_cast<int>(up.size());
    if (left == 0 || free_motions(after, up) > left) return false;
    for (int place = next; settled() && place < static_cast<int>(ends_.size()); ++place) {
      if (std::ranges::binary_search(up, place) || !seated(after, place)) continue;
      Up more = up;
      more.insert(std::ranges::lower_bound(more, place), place);
      if (stands(after, more)) {
        if (bears(stood, set, more) && ends_from(after, more)) return true;
      } else if (put_up(stood, after, set, before, more, place + 1)) {
        return true;
      }
    }
    return false;
  }

  const Frame& frame_;
  const RaisingPlan& plan_;
  Precedence graph_;
  std::unique_ptr<Judge> judge_;
  Blocking blocking_;
  std::vector<PickBody> bodies_;
  std::vector<std::pair<int, int>> ends_;  ///< by place: the timbers at its ends, −1: the ground
  std::vector<bool> light_;
  std::map<std::pair<Pieces, Up>, bool> verdicts_;
  std::map<std::pair<Pieces, int>, bool> enters_;
  std::map<Pieces, bool> dead_;
  std::set<std::pair<Pieces, Up>> been_;
  int most_ = 0, looks_left_ = 0;
};

}  // namespace bentbook
