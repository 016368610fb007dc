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
    place(0, 0, prices_.bound_of(still_));
    best_.all_seen = !cut_short_ && !found_enough_ && !some_left_out_;
    return std::move(best_);
  }

 private:
  /// One stick that could be cut next, with what it wastes at the prices.
  struct Choice {
    std::int64_t waste = 0;
    CutStick stick;
  };

  /// A row of which some are left, as a filling begins.
  struct Left {
    std::int64_t size = 0, price = 0;
    double dearest = 0;  ///< price per length, of it and all behind it
    int row = 0;
  };

  struct Seen {
    std::uint64_t state = 0;
    std::int64_t cost = 0;
  };
  static constexpr std::size_t kSeen = 1 << 14, kMostChoices = 400;
  static constexpr std::int64_t kRowsAStep = 8, kChoiceWork = 20;

  [[nodiscard]] bool ended() const { return cut_short_ || found_enough_; }

  /// `rest`: what is left is worth at least.
  void place(int largest, std::int64_t cost, std::int64_t rest) {
    // What is left may be worth less than nothing: rare sticks that nobody takes.
    if (ended() || cost >= below_) return;
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
      place(largest, cost + price, rest + choice.waste - price * prices_.scale);
      cut_.pop_back();
      take(stick, 1);
    }
  }

  /// Whether just this was left before and no more had been spent then. States are known by 64 bits: that two of the
  /// some thousands that are looked at share them is less likely than that the phone is struck by lightning meanwhile.
  bool seen_before(std::int64_t cost) {
    Seen& seen = seen_[state_ % kSeen];
    if (seen.state == state_ && seen.cost <= cost) return true;
    seen = {state_, cost};
    return false;
  }

  /// What may be wasted from here on while the whole still costs less than the best.
  [[nodiscard]] std::int64_t waste_allowed(std::int64_t cost, std::int64_t rest) const {
    return (below_ - 1 - cost) * prices_.scale - rest;
  }

  void take(const CutStick& stick, int sign) {
    const int rows = static_cast<int>(problem_.rows.size());
    for (const RowCount& p : stick.pieces) change(p.row, still_.count[at(p.row)], sign * p.count);
    if (int& most = still_.most[at(stick.kind)]; most >= 0) change(rows + stick.kind, most, sign);
  }

  /// The state's mark is that of each of its counts, so that a change marks it again at once (Zobrist hashing).
  void change(int place, int& count, int by) {
    state_ ^= mark(place, count) ^ mark(place, count + by);
    count += by;
  }
  static std::uint64_t mark(int place, int count) {
    std::uint64_t mixed = (static_cast<std::uint64_t>(place) << 32) + static_cast<std::uint64_t>(count);
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBU;
    return mixed ^ (mixed >> 31);
  }

  void collect(int largest, std::int64_t waste, std::vector<Choice>& choices) {
    list_left(largest);
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      if (still_.most[k] == 0 || problem_.kinds[k].room < problem_.rows[at(largest)].size) continue;
      // The rarity of a stick that is taken is no longer counted in the rest.
      const std::int64_t dear = problem_.kinds[k].cost * prices_.scale - prices_.rarity[k];
      filling_ = {static_cast<int>(k), {}};
      fill(0, true, problem_.kinds[k].room, dear, waste, choices);
    }
  }

  void list_left(int largest) {
    left_.clear();
    for (std::size_t i = at(largest); i < problem_.rows.size(); ++i)
      if (still_.count[i] > 0) left_.push_back({problem_.rows[i].size, prices_.piece[i], 0, static_cast<int>(i)});
    double dearest = 0;
    for (std::size_t i = left_.size(); i-- > 0;) {
      dearest = std::max(dearest, static_cast<double>(left_[i].price) / static_cast<double>(left_[i].size));
      left_[i].dearest = dearest;
    }
    if (!work_.spend(static_cast<std::int64_t>(problem_.rows.size()) / kRowsAStep)) cut_short_ = true;
  }

  /// Every filling with no room for one more of what is left, and no more waste than that; `from`: the first of `left_`
  /// that may come now.
  void fill(std::size_t from, bool must, std::int64_t room, std::int64_t waste, std::int64_t allowed,
            std::vector<Choice>& choices) {
    if (!work_.spend(2)) cut_short_ = true;
    if (ended()) return;
    const auto next = std::partition_point(left_.begin() + static_cast<std::ptrdiff_t>(from), left_.end(),
                                           [&](const Left& row) { return row.size > room; });
    if (next == left_.end()) {
      if (waste > allowed || !is_full(room)) return;
      (void)work_.spend(kChoiceWork);
      if (choices.size() < kMostChoices)
        choices.push_back({waste, filling_});
      else
        some_left_out_ = true;
      return;
    }
    // What comes from here on is worth no more than the dearest by length of it.
    const auto worth = static_cast<std::int64_t>(static_cast<double>(room) * next->dearest * (1 + 1e-14)) + 1;
    if (waste - worth > allowed) return;
    const Left row = *next;
    const auto behind = static_cast<std::size_t>(next - left_.begin()) + 1;
    const auto most = static_cast<int>(std::min<std::int64_t>(still_.count[at(row.row)], room / row.size));
    for (int n = most; n >= (must ? 1 : 0); --n) {
      if (n > 0) filling_.pieces.push_back({row.row, n});
      fill(behind, false, room - n * row.size, waste - n * row.price, allowed, choices);
      if (n > 0) filling_.pieces.pop_back();
    }
  }

  [[nodiscard]] bool is_full(std::int64_t room) const {
    std::size_t used = filling_.pieces.size();
    for (std::size_t i = left_.size(); i-- > 0 && left_[i].size <= room;) {
      while (used > 0 && filling_.pieces[used - 1].row > left_[i].row) --used;
      const bool some = used > 0 && filling_.pieces[used - 1].row == left_[i].row;
      if (still_.count[at(left_[i].row)] > (some ? filling_.pieces[used - 1].count : 0)) return false;
    }
    return true;
  }

  const CuttingProblem& problem_;
  const Prices& prices_;
  StillToCut still_;
  std::int64_t below_, enough_;
  WorkLeft& work_;
  bool cut_short_ = false, found_enough_ = false, some_left_out_ = false;
  std::vector<CutStick> cut_;
  CutStick filling_;
  std::uint64_t state_ = 1;  ///< of what is left; 0 is no state
  std::vector<Left> left_;
  std::vector<Seen> seen_ = std::vector<Seen>(kSeen);
  Completed best_;
};

}  // namespace

Completed complete(const CuttingProblem& problem, const StillToCut& still, const Prices& prices,
                   std::int64_t cost_below, std::int64_t enough, WorkLeft& work) {
  return Completion(problem, still, prices, cost_below, enough, work).run();
}

}  // namespace bentbook
