#include "stock/completion.h"

#include <algorithm>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {
namespace {

class Completion {
 public:
  Completion(const CuttingProblem& problem, const StillToCut& still, const Prices& prices, std::int64_t cost_below,
             std::int64_t enough, WorkLeft& work)
      : problem_(problem), prices_(prices), still_(still), below_(cost_below), enough_(enough), work_(work) {}

  Completed run() {
    place(0, prices_.bound_of(still_));
    best_.all_seen = !cut_short_ && !found_enough_ && !some_left_out_;
    return std::move(best_);
  }

 private:
  /// One stick that could be cut next, with what it wastes at the prices.
  struct Choice {
    std::int64_t waste = 0;
    CutStick stick;
  };

  struct Seen {
    std::uint64_t state = 0;
    std::int64_t cost = 0;
  };
  static constexpr std::size_t kSeen = 1 << 14, kMostChoices = 400;

  [[nodiscard]] bool ended() const { return cut_short_ || found_enough_; }

  /// `rest`: what is left is worth at least.
  void place(std::int64_t cost, std::int64_t rest) {
    // What is left may be worth less than nothing: rare sticks that nobody takes.
    if (ended() || cost >= below_) return;
    int largest = 0;
    while (at(largest) < still_.count.size() && still_.count[at(largest)] == 0) ++largest;
    if (at(largest) == still_.count.size()) {
      best_.sticks = cut_;
      best_.cost = below_ = cost;
      found_enough_ = cost <= enough_;
      return;
    }
    if (seen_before(cost)) return;
    std::vector<Choice> choices;
    collect(largest, waste_allowed(cost, rest), choices);
    sort_by(choices, [](const Choice& a, const Choice& b) { return a.waste < b.waste; });
    for (Choice& choice : choices) {
      if (ended() || choice.waste > waste_allowed(cost, rest)) return;
      const CutStick& stick = choice.stick;
      const std::int64_t price = problem_.kinds[at(stick.kind)].cost;
      take(stick, -1);
      cut_.push_back(stick);
      place(cost + price, rest + choice.waste - price * prices_.scale);
      cut_.pop_back();
      take(stick, 1);
    }
  }

  /// Whether just this was left before and no more had been spent then. States are known by 64 bits: that two of the
  /// some thousands that are looked at share them is less likely than that the phone is struck by lightning meanwhile.
  bool seen_before(std::int64_t cost) {
    std::uint64_t mixed = 0x9E3779B97F4A7C15U;
    const auto mix = [&](int n) {
      mixed = (mixed ^ static_cast<std::uint64_t>(n + 1)) * 0xD6E8FEB86659FD93U;
      mixed ^= mixed >> 32;
    };
    for (const int n : still_.count) mix(n);
    for (const int n : still_.most) mix(n);
    Seen& seen = seen_[mixed % kSeen];
    if (seen.state == mixed && seen.cost <= cost) return true;
    seen = {mixed, cost};
    return false;
  }

  /// What may be wasted from here on while the whole still costs less than the best.
  [[nodiscard]] std::int64_t waste_allowed(std::int64_t cost, std::int64_t rest) const {
    return (below_ - 1 - cost) * prices_.scale - rest;
  }

  void take(const CutStick& stick, int sign) {
    for (const RowCount& p : stick.pieces) still_.count[at(p.row)] += sign * p.count;
    int& most = still_.most[at(stick.kind)];
    if (most >= 0) most += sign;
  }

  void collect(int largest, std::int64_t waste, std::vector<Choice>& choices) {
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      if (still_.most[k] == 0 || problem_.kinds[k].room < problem_.rows[at(largest)].size) continue;
      // The rarity of a stick that is taken is no longer counted in the rest.
      const std::int64_t dear = problem_.kinds[k].cost * prices_.scale - prices_.rarity[k];
      filling_ = {static_cast<int>(k), {}};
      fill(largest, true, problem_.kinds[k].room, dear, waste, choices);
    }
  }

  /// Every filling with no room for one more of what is left, and no more waste than that.
  void fill(int row, bool must, std::int64_t room, std::int64_t waste, std::int64_t allowed,
            std::vector<Choice>& choices) {
    if (!work_.spend(1)) cut_short_ = true;
    if (ended()) return;
    const int rows = static_cast<int>(problem_.rows.size());
    while (row < rows && (still_.count[at(row)] == 0 || problem_.rows[at(row)].size > room)) ++row;
    if (row == rows) {
      if (waste > allowed || !is_full(room)) return;
      if (choices.size() < kMostChoices)
        choices.push_back({waste, filling_});
      else
        some_left_out_ = true;
      return;
    }
    if (waste - worth_at_most(row, room) > allowed) return;
    const CutRow& piece = problem_.rows[at(row)];
    const auto most = static_cast<int>(std::min<std::int64_t>(still_.count[at(row)], room / piece.size));
    for (int n = most; n >= (must ? 1 : 0); --n) {
      if (n > 0) filling_.pieces.push_back({row, n});
      fill(row + 1, false, room - n * piece.size, waste - n * prices_.piece[at(row)], allowed, choices);
      if (n > 0) filling_.pieces.pop_back();
    }
  }

  [[nodiscard]] bool is_full(std::int64_t room) const {
    for (std::size_t i = problem_.rows.size(); i-- > 0 && problem_.rows[i].size <= room;) {
      int used = 0;
      for (const RowCount& p : filling_.pieces)
        if (at(p.row) == i) used = p.count;
      if (used < still_.count[i]) return false;
    }
    return true;
  }

  /// What pieces from `row` on can be worth in that room, by the dearest per length of them.
  [[nodiscard]] std::int64_t worth_at_most(int row, std::int64_t room) {
    if (dearest_.empty()) {
      dearest_.assign(problem_.rows.size() + 1, 0);
      for (std::size_t i = problem_.rows.size(); i-- > 0;)
        dearest_[i] = std::max(dearest_[i + 1],
                               static_cast<double>(prices_.piece[i]) / static_cast<double>(problem_.rows[i].size));
    }
    return static_cast<std::int64_t>(static_cast<double>(room) * dearest_[at(row)] * (1 + 1e-14)) + 1;
  }

  const CuttingProblem& problem_;
  const Prices& prices_;
  StillToCut still_;
  std::int64_t below_, enough_;
  WorkLeft& work_;
  bool cut_short_ = false, found_enough_ = false, some_left_out_ = false;
  std::vector<CutStick> cut_;
  CutStick filling_;
  std::vector<double> dearest_;
  std::vector<Seen> seen_ = std::vector<Seen>(kSeen);
  Completed best_;
};

}  // namespace

Completed complete(const CuttingProblem& problem, const StillToCut& still, const Prices& prices,
                   std::int64_t cost_below, std::int64_t enough, WorkLeft& work) {
  return Completion(problem, still, prices, cost_below, enough, work).run();
}

}  // namespace bentbook
