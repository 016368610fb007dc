#include "stock/cutting.h"

#include <algorithm>
#include <optional>

#include "numeric/index.h"
#include "numeric/int128.h"
#include "numeric/libm.h"
#include "numeric/sorting.h"
#include "stock/completion.h"

namespace bentbook {
namespace {

constexpr double kNearlyWhole = 1e-6;
constexpr std::int64_t kFillWork = 400;       // a stick filled by length alone
constexpr std::int64_t kFinishWork = 60'000;  // a rest cut to the end

class Cutter {
 public:
  Cutter(const CuttingProblem& problem, std::int64_t work) : problem_(problem), work_{work} {
    all_.count.reserve(problem.rows.size());
    for (const CutRow& row : problem.rows) all_.count.push_back(row.count);
    all_.most.reserve(problem.kinds.size());
    for (const StickKind& kind : problem.kinds) all_.most.push_back(is_outdone(kind) ? 0 : kind.most);
  }

  Result<Cutting> solve() {
    for (std::size_t i = 0; i < problem_.rows.size(); ++i) {
      std::int64_t longest = 0;
      for (const StickKind& kind : problem_.kinds)
        if (kind.most != 0) longest = std::max(longest, kind.room);
      if (problem_.rows[i].count > 0 && problem_.rows[i].size > longest)
        return fail(ErrorCode::kTooLarge, {}, static_cast<int>(i), longest);
    }
    by_length({}, all_);
    know_patterns();
    const Relaxation relaxed = relax(problem_, all_, pool_, work_);
    bound_ = relaxed.bound;
    dive(relaxed, all_, {});
    if (best_) cut_parts_again(relaxed.prices);
    raise_bound(relaxed.prices);
    // Dives that begin otherwise: with one stick of each pattern in turn.
    for (std::size_t j = 0; j < relaxed.patterns.size() && !good_enough() && work_.steps > 0; ++j) {
      StillToCut rest = all_;
      std::vector<CutStick> sticks;
      if (!cut(relaxed.patterns[j], rest, sticks)) continue;
      Relaxation after = relax(problem_, rest, pool_, work_);
      if (after.bound + cost_of(sticks) < (best_ ? best_->cost : most_cost())) dive(after, rest, std::move(sticks));
    }
    if (best_) cut_parts_again(relaxed.prices);
    if (!best_) return fail(ErrorCode::kImpossible, {}, left_over_);
    best_->bound = bound_;
    shorten(*best_);
    return std::move(*best_);
  }

 private:
  /// There is no end of longer ones that cost no more.
  [[nodiscard]] bool is_outdone(const StickKind& kind) const {
    return kind.most < 0 && std::any_of(problem_.kinds.begin(), problem_.kinds.end(), [&](const StickKind& other) {
             return other.most < 0 && other.room >= kind.room && other.cost <= kind.cost &&
                    (other.room > kind.room || other.cost < kind.cost || &other < &kind);
           });
  }
  [[nodiscard]] bool good_enough() const { return best_ && best_->cost <= bound_; }
  [[nodiscard]] std::int64_t most_cost() const {
    std::int64_t most = 1;
    for (const CutRow& row : problem_.rows)
      for (const StickKind& kind : problem_.kinds) most = std::max(most, kind.cost * row.count);
    return most * static_cast<std::int64_t>(problem_.rows.size() + 1);
  }

  static int first_left(const StillToCut& still) {
    for (std::size_t i = 0; i < still.count.size(); ++i)
      if (still.count[i] > 0) return static_cast<int>(i);
    return -1;
  }

  static void take(StillToCut& still, const CutStick& stick) {
    for (const RowCount& p : stick.pieces) still.count[at(p.row)] -= p.count;
    if (still.most[at(stick.kind)] > 0) --still.most[at(stick.kind)];
  }

  [[nodiscard]] std::int64_t cost_of(const std::vector<CutStick>& sticks) const {
    std::int64_t cost = 0;
    for (const CutStick& stick : sticks) cost += problem_.kinds[at(stick.kind)].cost;
    return cost;
  }

  void offer(std::vector<CutStick> sticks) {
    const std::int64_t cost = cost_of(sticks);
    if (!best_ || cost < best_->cost) best_ = Cutting{std::move(sticks), cost, 0};
  }

  /// The best so far is where the relaxation begins.
  void know_patterns() {
    if (!best_) return;
    for (const CutStick& stick : best_->sticks)
      if (std::find(pool_.begin(), pool_.end(), stick) == pool_.end()) pool_.push_back(stick);
  }

  /// Stick by stick about the largest piece that is left, each as full as it gets, of the kind that costs least for
  /// what comes out of it.
  void by_length(std::vector<CutStick> sticks, StillToCut still) {
    std::vector<std::int64_t> sizes;
    sizes.reserve(problem_.rows.size());
    for (const CutRow& row : problem_.rows) sizes.push_back(row.size);
    for (int largest = first_left(still); largest >= 0; largest = first_left(still)) {
      --still.count[at(largest)];
      const PatternSearch search(problem_.rows, still.count, sizes);
      ++still.count[at(largest)];
      CutStick chosen;
      std::int64_t filled = 0;
      for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
        const StickKind& kind = problem_.kinds[k];
        const std::int64_t room = kind.room - sizes[at(largest)];
        if (still.most[k] == 0 || room < 0) continue;
        WorkLeft some{kFillWork};
        PatternSearch::Found found = search.best(room, 0, some);
        (void)work_.spend(kFillWork - some.steps);
        const std::int64_t out = sizes[at(largest)] + found.value;
        if (filled > 0 && !costs_less(kind, out, problem_.kinds[at(chosen.kind)], filled)) continue;
        filled = out;
        chosen = {static_cast<int>(k), std::move(found.pieces)};
      }
      if (filled == 0) {
        left_over_ = largest;
        return;
      }
      if (!chosen.pieces.empty() && chosen.pieces.front().row == largest)
        ++chosen.pieces.front().count;
      else
        chosen.pieces.insert(chosen.pieces.begin(), {largest, 1});
      take(still, chosen);
      sticks.push_back(std::move(chosen));
    }
    offer(std::move(sticks));
  }
  static bool costs_less(const StickKind& a, std::int64_t out_a, const StickKind& b, std::int64_t out_b) {
    const Int128 left = static_cast<Int128>(a.cost) * out_b, right = static_cast<Int128>(b.cost) * out_a;
    return left != right ? left < right : a.room - out_a < b.room - out_b;
  }

  /// The relaxation rounded down, then again of what is left, as often as it takes; at every turn the rest by length.
  void dive(Relaxation relaxed, StillToCut still, std::vector<CutStick> sticks) {
    while (!good_enough()) {
      if (!round_down(relaxed, still, sticks)) break;
      by_length(sticks, still);
      if (good_enough() || first_left(still) < 0 || work_.steps <= 0) break;
      relaxed = relax(problem_, still, pool_, work_);
      finish(sticks, still, relaxed.prices, kFinishWork);
    }
  }

  /// The best for what is left behind these sticks, as far as a part of the work goes.
  void finish(std::vector<CutStick> sticks, const StillToCut& still, const Prices& prices, std::int64_t part) {
    const std::int64_t spent = cost_of(sticks), below = best_ ? best_->cost : most_cost();
    WorkLeft some{std::min(work_.steps, part)};
    const std::int64_t had = some.steps;
    const Completed done = complete(problem_, still, prices, below - spent, bound_ - spent, some);
    (void)work_.spend(had - some.steps);
    if (done.sticks.empty()) return;
    sticks.insert(sticks.end(), done.sticks.begin(), done.sticks.end());
    offer(std::move(sticks));
  }

  /// Everything that costs no more than the bound is looked at, then a little more, until there is something or the
  /// work is too much: a little more than the bound is a small search, as much as the best so far may be a vast one.
  void raise_bound(const Prices& prices) {
    for (std::int64_t more = 1; !good_enough() && work_.steps > 0; more *= 2) {
      const std::int64_t best = best_ ? best_->cost : most_cost(), below = std::min(bound_ + more, best);
      WorkLeft some{work_.steps / 2};
      const std::int64_t had = some.steps;
      Completed done = complete(problem_, all_, prices, below, bound_, some);
      (void)work_.spend(had - some.steps);
      if (!done.sticks.empty()) offer(std::move(done.sticks));
      if (!done.all_seen || below >= best) {
        if (done.all_seen && best_) bound_ = std::max(bound_, best_->cost);
        return;
      }
      bound_ = std::max(bound_, std::min(below, best_ ? best_->cost : below));
    }
  }

  /// A few sticks at a time, those that waste most with some of the others, cut again as a job of their own.
  void cut_parts_again(const Prices& prices) {
    constexpr std::size_t kWorst = 3, kOthers = 6;
    for (std::size_t from = kWorst; !good_enough() && work_.steps > 0 && from < best_->sticks.size();) {
      std::vector<CutStick>& sticks = best_->sticks;
      sort_by(sticks, [&](const CutStick& a, const CutStick& b) { return waste_of(a, prices) > waste_of(b, prices); });
      std::vector<CutStick> kept;
      StillToCut part{std::vector<int>(problem_.rows.size(), 0), all_.most};
      for (std::size_t i = 0; i < sticks.size(); ++i) {
        if (i >= kWorst && (i < from || i >= from + kOthers)) {
          int& most = part.most[at(sticks[i].kind)];
          if (most > 0) --most;
          kept.push_back(sticks[i]);
        } else {
          for (const RowCount& p : sticks[i].pieces) part.count[at(p.row)] += p.count;
        }
      }
      const std::int64_t before = best_->cost;
      const Relaxation relaxed = relax(problem_, part, pool_, work_);
      if (relaxed.bound + cost_of(kept) < before) finish(std::move(kept), part, relaxed.prices, kFinishWork);
      from = best_->cost < before ? kWorst : from + kOthers / 2;
    }
  }
  [[nodiscard]] std::int64_t waste_of(const CutStick& stick, const Prices& prices) const {
    std::int64_t waste = problem_.kinds[at(stick.kind)].cost * prices.scale;
    for (const RowCount& p : stick.pieces) waste -= p.count * prices.piece[at(p.row)];
    return waste;
  }

  /// False: nothing could be taken.
  static bool round_down(const Relaxation& relaxed, StillToCut& still, std::vector<CutStick>& sticks) {
    bool any = false;
    std::size_t most = relaxed.patterns.size();
    double part = -1;
    for (std::size_t j = 0; j < relaxed.patterns.size(); ++j) {
      const double whole = libm::floor(relaxed.times[j] + kNearlyWhole);
      for (double n = 0; n < whole && cut(relaxed.patterns[j], still, sticks); ++n) any = true;
      if (relaxed.times[j] - whole > part) {
        part = relaxed.times[j] - whole;
        most = j;
      }
    }
    return any || (most < relaxed.patterns.size() && cut(relaxed.patterns[most], still, sticks));
  }

  /// One stick of that pattern, less what is no longer wanted. False: there is no such stick, or nothing wanted.
  static bool cut(CutStick stick, StillToCut& still, std::vector<CutStick>& sticks) {
    if (still.most[at(stick.kind)] == 0) return false;
    for (RowCount& p : stick.pieces) p.count = std::min(p.count, still.count[at(p.row)]);
    std::erase_if(stick.pieces, [](const RowCount& p) { return p.count == 0; });
    if (stick.pieces.empty()) return false;
    take(still, stick);
    sticks.push_back(std::move(stick));
    return true;
  }

  /// No stick longer than it must be, where a shorter one costs no more.
  void shorten(Cutting& cutting) const {
    cutting.cost = 0;
    for (CutStick& stick : cutting.sticks) {
      std::int64_t used = 0;
      for (const RowCount& p : stick.pieces) used += p.count * problem_.rows[at(p.row)].size;
      for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
        const StickKind &kind = problem_.kinds[k], &now = problem_.kinds[at(stick.kind)];
        if (kind.most < 0 && kind.room >= used &&
            (kind.cost < now.cost || (kind.cost == now.cost && kind.room < now.room && now.most < 0)))
          stick.kind = static_cast<int>(k);
      }
      cutting.cost += problem_.kinds[at(stick.kind)].cost;
    }
  }

  const CuttingProblem& problem_;
  WorkLeft work_;
  StillToCut all_;
  std::vector<CutStick> pool_;
  std::optional<Cutting> best_;
  std::int64_t bound_ = 0;
  int left_over_ = 0;
};

}  // namespace

Result<Cutting> solve_cutting(const CuttingProblem& problem, std::int64_t work) {
  return Cutter(problem, work).solve();
}

}  // namespace bentbook
