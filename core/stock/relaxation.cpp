#include "stock/relaxation.h"

#include <algorithm>
#include <limits>

#include "numeric/index.h"
#include "numeric/int128.h"
#include "numeric/libm.h"
#include "numeric/simplex.h"

namespace bentbook {
namespace {

constexpr double kNothing = 1e-7;     // of a stick
constexpr int kAfresh = 64;           // pivots after which prices are worked out from nothing
constexpr std::int64_t kHair = 4096;  // of 2^40: what prices that are not whole may be off

/// Rows of the program: pieces of which some are left, then kinds of which there is an end.
class ColumnGeneration {
 public:
  ColumnGeneration(const CuttingProblem& problem, const StillToCut& still, std::vector<CutStick>& pool, WorkLeft& work)
      : problem_(problem), still_(still), pool_(pool), work_(work), program_(begin()) {
    std::int64_t dearest = 1;
    for (const StickKind& kind : problem.kinds) dearest = std::max(dearest, kind.cost);
    while (scale_ < (std::int64_t{1} << 40) / dearest) scale_ *= 2;
    for (std::size_t j = 0; j < pool_.size(); ++j)
      if (can_be_cut(pool_[j])) add(j);
  }

  Relaxation solve() {
    const Prices by_length = prices_by_length();
    const std::int64_t least = whole_cost(by_length);
    while (program_.pivots() < kMostPivots * (size_ + 4) &&
           (program_.is_bought() || libm::ceil(program_.value() - kNothing) > static_cast<double>(least))) {
      if (program_.pivots() % kAfresh == 0) program_.price_afresh();
      const std::int64_t before = program_.work();
      int column = program_.entering(hair());
      if (column == Simplex::kNone) column = from_search(kQuick);
      if (column == Simplex::kNone) column = from_search(kThorough);
      if (column == Simplex::kNone ? !program_.make_dearer() : !program_.pivot(column)) break;
      if (!work_.spend(1 + (program_.work() - before) / kMultiplications)) break;
    }
    program_.price_afresh();
    return answer(by_length);
  }

 private:
  static constexpr int kMostPivots = 30;                // for each row
  static constexpr std::int64_t kMultiplications = 16;  // in a step of work
  static constexpr std::int64_t kQuick = 2'000, kThorough = 60'000, kCheckWork = 200'000;

  /// Pieces bought by length, somewhat dearer than out of a stick: prices that begin so are near what they end at. What
  /// is still bought when no pattern saves anything becomes dearer.
  Simplex begin() {
    constexpr double kSomewhatDearer = 1.5;
    std::vector<double> wanted, bought;
    wanted.reserve(problem_.rows.size() + problem_.kinds.size());
    bought.reserve(problem_.rows.size());
    row_of_piece_.assign(problem_.rows.size(), -1);
    row_of_kind_.assign(problem_.kinds.size(), -1);
    for (std::size_t i = 0; i < problem_.rows.size(); ++i) {
      if (still_.count[i] == 0) continue;
      row_of_piece_[i] = size_++;
      double by_length = -1;
      for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
        const StickKind& kind = problem_.kinds[k];
        if (still_.most[k] == 0 || kind.room < problem_.rows[i].size) continue;
        const double cost = static_cast<double>(std::max<std::int64_t>(kind.cost, 1)) / static_cast<double>(kind.room);
        if (by_length < 0 || cost < by_length) by_length = cost;
      }
      wanted.push_back(still_.count[i]);
      bought.push_back(kSomewhatDearer * std::max(by_length, 1e-9) * static_cast<double>(problem_.rows[i].size));
    }
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      if (still_.most[k] <= 0) continue;
      row_of_kind_[k] = size_++;
      wanted.push_back(still_.most[k]);
    }
    return {std::move(wanted), std::move(bought)};
  }

  [[nodiscard]] double hair() const { return static_cast<double>(kHair) / static_cast<double>(scale_); }
  [[nodiscard]] double price_of_kind(std::size_t kind) const {
    return row_of_kind_[kind] < 0 ? 0 : program_.price(row_of_kind_[kind]);
  }
  [[nodiscard]] bool can_be_cut(const CutStick& stick) const {
    if (still_.most[at(stick.kind)] == 0) return false;
    return std::all_of(stick.pieces.begin(), stick.pieces.end(),
                       [&](const RowCount& p) { return p.count <= still_.count[at(p.row)]; });
  }
  /// The column of a pattern of the pool.
  int add(std::size_t pattern) {
    const CutStick& stick = pool_[pattern];
    std::vector<RowShare> shares;
    shares.reserve(stick.pieces.size() + 1);
    for (const RowCount& p : stick.pieces) shares.push_back({row_of_piece_[at(p.row)], static_cast<double>(p.count)});
    if (row_of_kind_[at(stick.kind)] >= 0) shares.push_back({row_of_kind_[at(stick.kind)], 1});
    pattern_of_.push_back(pattern);
    return program_.add(static_cast<double>(problem_.kinds[at(stick.kind)].cost), shares);
  }
  /// What a pattern would save; below 0 it is wanted.
  [[nodiscard]] double reduced(const CutStick& stick) const {
    double cost = static_cast<double>(problem_.kinds[at(stick.kind)].cost) - price_of_kind(at(stick.kind));
    for (const RowCount& p : stick.pieces) cost -= p.count * program_.price(row_of_piece_[at(p.row)]);
    return cost;
  }

  /// New patterns that would save something, the best first; each as often as there are pieces for it before the next
  /// is looked for, so that prices move everywhere at once. The first one's column.
  [[nodiscard]] int from_search(std::int64_t part) {
    const std::vector<std::int64_t> prices = whole_prices();
    std::vector<int> count = still_.count;
    int first = Simplex::kNone;
    while (work_.steps > 0) {
      CutStick stick = best_pattern(count, prices, first == Simplex::kNone ? part : kQuick);
      if (stick.pieces.empty()) break;
      int times = std::numeric_limits<int>::max();
      for (const RowCount& p : stick.pieces) times = std::min(times, count[at(p.row)] / p.count);
      for (const RowCount& p : stick.pieces) count[at(p.row)] -= times * p.count;
      pool_.push_back(std::move(stick));
      const int column = add(pool_.size() - 1);
      if (first == Simplex::kNone) first = column;
    }
    return first;
  }

  /// Of so many pieces, the best of each kind's that so much work comes by; no pieces: none would save anything.
  [[nodiscard]] CutStick best_pattern(const std::vector<int>& count, const std::vector<std::int64_t>& prices,
                                      std::int64_t part) {
    const PatternSearch search(problem_.rows, count, prices);
    CutStick best;
    double most = -hair();
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      if (still_.most[k] == 0) continue;
      const auto floor = static_cast<std::int64_t>((static_cast<double>(problem_.kinds[k].cost) - price_of_kind(k)) *
                                                   static_cast<double>(scale_));
      WorkLeft some{std::min(part, work_.steps)};
      const std::int64_t had = some.steps;
      PatternSearch::Found pattern =
          search.best(problem_.kinds[k].room, std::max<std::int64_t>(floor, 0) + kHair, some);
      (void)work_.spend(had - some.steps);
      if (pattern.pieces.empty()) continue;
      CutStick stick{static_cast<int>(k), std::move(pattern.pieces)};
      const double cost = reduced(stick);
      if (cost >= most) continue;
      most = cost;
      best = std::move(stick);
    }
    return best;
  }

  [[nodiscard]] std::vector<std::int64_t> whole_prices() const {
    std::vector<std::int64_t> whole(problem_.rows.size(), 0);
    for (std::size_t i = 0; i < whole.size(); ++i)
      if (row_of_piece_[i] >= 0)
        whole[i] = static_cast<std::int64_t>(std::clamp(program_.price(row_of_piece_[i]) * static_cast<double>(scale_),
                                                        0.0, static_cast<double>(std::int64_t{1} << 53)));
    return whole;
  }

  /// The bound that prices give, up to whole costs.
  [[nodiscard]] std::int64_t whole_cost(const Prices& prices) const {
    const std::int64_t bound = prices.bound_of(still_);
    return bound <= 0 ? 0 : (bound - 1) / scale_ + 1;
  }

  /// Every piece at its length's share of the stick that is cheapest by length: often as good as any.
  [[nodiscard]] Prices prices_by_length() const {
    Int128 cost = 0, room = 1;
    bool endless = false;
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      const StickKind& kind = problem_.kinds[k];
      if (still_.most[k] == 0 || kind.room <= 0 || (endless && still_.most[k] > 0)) continue;
      if (endless == (still_.most[k] < 0) && kind.cost * room >= cost * kind.room && room > 1) continue;
      cost = kind.cost;
      room = kind.room;
      endless = still_.most[k] < 0;
    }
    Prices prices{scale_, std::vector<std::int64_t>(problem_.rows.size(), 0),
                  std::vector<std::int64_t>(problem_.kinds.size(), 0)};
    for (std::size_t i = 0; i < prices.piece.size(); ++i)
      prices.piece[i] = static_cast<std::int64_t>(problem_.rows[i].size * cost * scale_ / room);
    for (std::size_t k = 0; k < prices.rarity.size(); ++k)
      if (still_.most[k] > 0)
        prices.rarity[k] = std::min<std::int64_t>(
            0, problem_.kinds[k].cost * scale_ -
                   static_cast<std::int64_t>((problem_.kinds[k].room * cost * scale_ + room - 1) / room));
    return endless && is_only_kind() ? with_large_whole(prices, static_cast<std::int64_t>(room)) : prices;
  }

  [[nodiscard]] bool is_only_kind() const {
    return std::count_if(still_.most.begin(), still_.most.end(), [](int most) { return most != 0; }) == 1;
  }

  /// The same where a piece that leaves less than some `small` counts as a whole stick and what is smaller than that
  /// counts nothing, by the `small` that says most: beside a large one there is room for small ones alone.
  [[nodiscard]] Prices with_large_whole(const Prices& by_length, std::int64_t room) const {
    Prices best = by_length;
    std::int64_t most = best.bound_of(still_), cost = 0;
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k)
      if (still_.most[k] != 0) cost = problem_.kinds[k].cost * scale_;
    for (const CutRow& row : problem_.rows) {
      const std::int64_t small = row.size;
      if (small * 2 > room) continue;
      Prices prices = by_length;
      for (std::size_t i = 0; i < prices.piece.size(); ++i) {
        const std::int64_t size = problem_.rows[i].size;
        if (size > room - small) prices.piece[i] = cost;
        if (size < small) prices.piece[i] = 0;
      }
      if (const std::int64_t bound = prices.bound_of(still_); bound > most) {
        most = bound;
        best = std::move(prices);
      }
    }
    return best;
  }

  Relaxation answer(const Prices& by_length) {
    Relaxation out;
    for (const Simplex::Taken& taken : program_.taken()) {
      out.patterns.push_back(pool_[pattern_of_[at(taken.column)]]);
      out.times.push_back(taken.times);
    }
    out.prices = prices_that_hold();
    if (by_length.bound_of(still_) > out.prices.bound_of(still_)) out.prices = by_length;
    out.bound = whole_cost(out.prices);
    return out;
  }

  /// Whole prices, brought down until no pattern is worth more than its stick.
  Prices prices_that_hold() {
    Prices prices;
    prices.scale = scale_;
    prices.piece = whole_prices();
    prices.rarity.assign(problem_.kinds.size(), 0);
    const PatternSearch search(problem_.rows, still_.count, prices.piece);
    WorkLeft check{kCheckWork};  // kept apart: a bound is wanted however little work is left
    std::vector<std::int64_t> worth(problem_.kinds.size(), 0);
    Int128 part = 1, whole = 1;  // the smallest share that brings an endless kind's patterns down
    for (std::size_t k = 0; k < worth.size(); ++k) {
      if (still_.most[k] == 0) continue;
      const std::int64_t cost = problem_.kinds[k].cost * scale_;
      worth[k] = search.best(problem_.kinds[k].room, cost, check).most;
      if (still_.most[k] < 0 && worth[k] > cost && cost * whole < part * worth[k]) {
        part = cost;
        whole = worth[k];
      }
    }
    for (std::int64_t& price : prices.piece) price = static_cast<std::int64_t>(price * part / whole);
    for (std::size_t k = 0; k < worth.size(); ++k) {
      if (still_.most[k] <= 0) continue;
      const auto now = static_cast<std::int64_t>((worth[k] * part + whole - 1) / whole);
      prices.rarity[k] = -std::max<std::int64_t>(0, now - problem_.kinds[k].cost * scale_);
    }
    return prices;
  }

  const CuttingProblem& problem_;
  const StillToCut& still_;
  std::vector<CutStick>& pool_;
  WorkLeft& work_;
  std::int64_t scale_ = 1;
  int size_ = 0;
  std::vector<int> row_of_piece_, row_of_kind_;
  Simplex program_;                      ///< behind the rows that it is begun with
  std::vector<std::size_t> pattern_of_;  ///< of the pool, by column
};

}  // namespace

std::int64_t Prices::bound_of(const StillToCut& still) const {
  std::int64_t bound = 0;
  for (std::size_t i = 0; i < piece.size(); ++i) bound += still.count[i] * piece[i];
  for (std::size_t k = 0; k < rarity.size(); ++k)
    if (still.most[k] > 0) bound += still.most[k] * rarity[k];
  return bound;
}

Relaxation relax(const CuttingProblem& problem, const StillToCut& still, std::vector<CutStick>& pool, WorkLeft& work) {
  return ColumnGeneration(problem, still, pool, work).solve();
}

}  // namespace bentbook
