#include "stock/relaxation.h"

#include <algorithm>

#include "numeric/index.h"
#include "numeric/int128.h"
#include "numeric/libm.h"

namespace bentbook {
namespace {

constexpr double kPivot = 1e-9;       // smaller entries of a column are rounding
constexpr double kNothing = 1e-7;     // of a stick
constexpr double kMostDear = 1e15;    // a price at which what cannot be cut is left
constexpr int kAfresh = 64;           // pivots after which prices are worked out from nothing
constexpr std::int64_t kHair = 4096;  // of 2^40: what prices that are not whole may be off

/// Rows of the program: pieces of which some are left, then kinds of which there is an end.
class Simplex {
 public:
  Simplex(const CuttingProblem& problem, const StillToCut& still, std::vector<CutStick>& pool, WorkLeft& work)
      : problem_(problem), still_(still), pool_(pool), work_(work) {
    std::int64_t dearest = 1;
    for (const StickKind& kind : problem.kinds) dearest = std::max(dearest, kind.cost);
    while (scale_ < (std::int64_t{1} << 40) / dearest) scale_ *= 2;
    row_of_piece_.assign(problem.rows.size(), -1);
    row_of_kind_.assign(problem.kinds.size(), -1);
    for (std::size_t i = 0; i < problem.rows.size(); ++i)
      if (still.count[i] > 0) row_of_piece_[i] = size_++;
    pieces_ = size_;
    for (std::size_t k = 0; k < problem.kinds.size(); ++k)
      if (still.most[k] > 0) row_of_kind_[k] = size_++;
    begin();
  }

  Relaxation solve() {
    const Prices by_length = prices_by_length();
    const std::int64_t least = whole_cost(by_length);
    while (pivots_ < kMostPivots * (size_ + 4) &&
           (is_bought() || libm::ceil(value() - kNothing) > static_cast<double>(least))) {
      if (pivots_ % kAfresh == 0) price_afresh();
      const int column = entering();
      if (column == kNone ? !make_dearer() : !pivot(column)) break;
      if (!work_.spend(1 + size_ * size_ / 16)) break;
    }
    price_afresh();
    return answer(by_length);
  }

 private:
  static constexpr int kMostPivots = 30;  // for each row
  static constexpr std::int64_t kQuick = 2'000, kThorough = 60'000, kCheckWork = 200'000;
  /// Columns: of the pool from 0; over(row): what is over, a piece cut too many, a stick not taken; from kBought down:
  /// a piece that is bought, a row each.
  static constexpr int kNone = -1, kBought = -1'000'000;
  static constexpr int over(int row) { return -2 - row; }

  [[nodiscard]] double& inverse(int row, int column) { return inverse_[at(row) * at(size_) + at(column)]; }
  [[nodiscard]] double cost_of(int column) const {
    if (column >= 0) return static_cast<double>(problem_.kinds[at(pool_[at(column)].kind)].cost);
    return column <= kBought ? bought_[at(kBought - column)] : 0;
  }

  /// Pieces bought by length, somewhat dearer than out of a stick: prices that begin so are near what they end at. What
  /// is still bought when no pattern saves anything becomes dearer.
  void begin() {
    constexpr double kSomewhatDearer = 1.5;
    inverse_.assign(at(size_) * at(size_), 0);
    basic_.resize(at(size_));
    value_.resize(at(size_));
    bought_.resize(at(size_));
    for (std::size_t i = 0; i < problem_.rows.size(); ++i) {
      const int row = row_of_piece_[i];
      if (row < 0) continue;
      double by_length = -1;
      for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
        const StickKind& kind = problem_.kinds[k];
        if (still_.most[k] == 0 || kind.room < problem_.rows[i].size) continue;
        const double cost = static_cast<double>(std::max<std::int64_t>(kind.cost, 1)) / static_cast<double>(kind.room);
        if (by_length < 0 || cost < by_length) by_length = cost;
      }
      bought_[at(row)] = kSomewhatDearer * std::max(by_length, 1e-9) * static_cast<double>(problem_.rows[i].size);
      basic_[at(row)] = kBought - row;
      inverse(row, row) = 1;
      value_[at(row)] = still_.count[i];
    }
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      const int row = row_of_kind_[k];
      if (row < 0) continue;
      basic_[at(row)] = over(row);
      inverse(row, row) = 1;
      value_[at(row)] = still_.most[k];
    }
    price_.resize(at(size_));
  }

  void price_afresh() {
    std::fill(price_.begin(), price_.end(), 0.0);
    for (int r = 0; r < size_; ++r) {
      const double cost = cost_of(basic_[at(r)]);
      if (cost == 0) continue;
      for (int c = 0; c < size_; ++c) price_[at(c)] += cost * inverse(r, c);
    }
  }

  /// False: nothing is bought.
  bool make_dearer() {
    constexpr double kDearer = 4;
    bool any = false;
    for (int r = 0; r < size_; ++r) {
      if (basic_[at(r)] > kBought || value_[at(r)] < kNothing) continue;
      double& cost = bought_[at(kBought - basic_[at(r)])];
      if (cost > kMostDear) continue;
      cost *= kDearer;
      any = true;
    }
    price_afresh();
    return any;
  }

  [[nodiscard]] double price_of_kind(std::size_t kind) const {
    return row_of_kind_[kind] < 0 ? 0 : price_[at(row_of_kind_[kind])];
  }
  [[nodiscard]] bool can_be_cut(const CutStick& stick) const {
    if (still_.most[at(stick.kind)] == 0) return false;
    return std::all_of(stick.pieces.begin(), stick.pieces.end(),
                       [&](const RowCount& p) { return p.count <= still_.count[at(p.row)]; });
  }
  /// What a column would save; below 0 it is wanted.
  [[nodiscard]] double reduced(const CutStick& stick) const {
    double cost = static_cast<double>(problem_.kinds[at(stick.kind)].cost) - price_of_kind(at(stick.kind));
    for (const RowCount& p : stick.pieces) cost -= p.count * price_[at(row_of_piece_[at(p.row)])];
    return cost;
  }

  [[nodiscard]] int entering() {
    const double hair = static_cast<double>(kHair) / static_cast<double>(scale_);
    int found = kNone;
    double most = -hair;
    const auto offer = [&](int column, double cost) {
      if (cost >= most) return;
      most = cost;
      found = column;
    };
    // What is over: of pieces it enters where a price is below nothing, of kinds where one is above it.
    for (int r = 0; r < size_; ++r) offer(over(r), r < pieces_ ? price_[at(r)] : -price_[at(r)]);
    for (std::size_t c = 0; c < pool_.size(); ++c)
      if (can_be_cut(pool_[c])) offer(static_cast<int>(c), reduced(pool_[c]));
    if (found != kNone) return found;
    const int quick = from_search(kQuick, most);
    return quick != kNone ? quick : from_search(kThorough, most);
  }

  /// A new pattern that would save something, the best of each kind's that so much work comes by.
  [[nodiscard]] int from_search(std::int64_t part, double most) {
    const PatternSearch search(problem_.rows, still_.count, whole_prices());
    CutStick best;
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      if (still_.most[k] == 0) continue;
      const auto floor = static_cast<std::int64_t>((static_cast<double>(problem_.kinds[k].cost) - price_of_kind(k)) *
                                                   static_cast<double>(scale_));
      WorkLeft some{std::min(part, work_.steps)};
      const std::int64_t had = some.steps;
      const PatternSearch::Found pattern =
          search.best(problem_.kinds[k].room, std::max<std::int64_t>(floor, 0) + kHair, some);
      (void)work_.spend(had - some.steps);
      if (pattern.pieces.empty()) continue;
      CutStick stick{static_cast<int>(k), pattern.pieces};
      const double cost = reduced(stick);
      if (cost >= most) continue;
      most = cost;
      best = std::move(stick);
    }
    if (best.pieces.empty()) return kNone;
    pool_.push_back(std::move(best));
    return static_cast<int>(pool_.size()) - 1;
  }

  [[nodiscard]] std::vector<std::int64_t> whole_prices() const {
    std::vector<std::int64_t> whole(problem_.rows.size(), 0);
    for (std::size_t i = 0; i < whole.size(); ++i)
      if (row_of_piece_[i] >= 0)
        whole[i] = static_cast<std::int64_t>(std::clamp(price_[at(row_of_piece_[i])] * static_cast<double>(scale_), 0.0,
                                                        static_cast<double>(std::int64_t{1} << 53)));
    return whole;
  }

  /// False: nothing bounds the column, which rounding alone brings about.
  bool pivot(int column) {
    std::vector<double> step(at(size_), 0);
    const auto add = [&](int row, double times) {
      for (int r = 0; r < size_; ++r) step[at(r)] += times * inverse(r, row);
    };
    if (column >= 0) {
      const CutStick& stick = pool_[at(column)];
      for (const RowCount& p : stick.pieces) add(row_of_piece_[at(p.row)], p.count);
      if (row_of_kind_[at(stick.kind)] >= 0) add(row_of_kind_[at(stick.kind)], 1);
    } else {
      const int row = over(column);  // its own inverse
      add(row, row < pieces_ ? -1 : 1);
    }
    int out = -1;
    for (int r = 0; r < size_; ++r) {
      if (step[at(r)] <= kPivot) continue;
      const double here = value_[at(r)] * step[at(out < 0 ? r : out)];
      if (out < 0 || here < value_[at(out)] * step[at(r)]) out = r;
    }
    if (out < 0) return false;
    const double by = step[at(out)];
    double saved = cost_of(column);
    for (int r = 0; r < size_; ++r) saved -= cost_of(basic_[at(r)]) * step[at(r)];
    for (int c = 0; c < size_; ++c) inverse(out, c) /= by;
    value_[at(out)] /= by;
    for (int r = 0; r < size_; ++r) {
      if (r == out || step[at(r)] == 0) continue;
      for (int c = 0; c < size_; ++c) inverse(r, c) -= step[at(r)] * inverse(out, c);
      value_[at(r)] = std::max(value_[at(r)] - step[at(r)] * value_[at(out)], 0.0);
    }
    for (int c = 0; c < size_; ++c) price_[at(c)] += saved * inverse(out, c);
    basic_[at(out)] = column;
    ++pivots_;
    return true;
  }

  [[nodiscard]] bool is_bought() const {
    for (int r = 0; r < size_; ++r)
      if (basic_[at(r)] <= kBought && value_[at(r)] >= kNothing) return true;
    return false;
  }

  [[nodiscard]] double value() const {
    double value = 0;
    for (int r = 0; r < size_; ++r) value += cost_of(basic_[at(r)]) * value_[at(r)];
    return value;
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
    for (int r = 0; r < size_; ++r) {
      if (basic_[at(r)] < 0 || value_[at(r)] < kNothing) continue;
      out.patterns.push_back(pool_[at(basic_[at(r)])]);
      out.times.push_back(value_[at(r)]);
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
  int size_ = 0, pieces_ = 0, pivots_ = 0;
  std::vector<int> row_of_piece_, row_of_kind_;
  std::vector<double> inverse_, value_, price_, bought_;
  std::vector<int> basic_;
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
  return Simplex(problem, still, pool, work).solve();
}

}  // namespace bentbook
