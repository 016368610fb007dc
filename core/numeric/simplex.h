#pragma once
/// A linear program whose columns come while it is solved: least cost of columns, each taken 0 or more times, that give
/// every row what it asks for. Revised simplex with the inverse of its basis at hand; columns enter by devex pricing,
/// which counts a saving by how far the column reaches. Source: SOURCES.md, "devex pricing".

#include <cstdint>
#include <vector>

#include "numeric/index.h"

namespace bentbook {

/// What a column gives a row.
struct RowShare {
  int row = 0;
  double count = 0;
};

class Simplex {
 public:
  static constexpr int kNone = -1;

  /// Rows with a price in `bought` ask for at least `wanted`, which is bought at that price, dearer than any column
  /// gives it, until columns give it: what is no longer bought does not come back. Those behind them ask for at most
  /// `wanted`.
  Simplex(std::vector<double> wanted, std::vector<double> bought);

  /// Columns are numbered from 0 as they come.
  int add(double cost, const std::vector<RowShare>& shares);
  /// The column that promises most, of those that save more than `hair` each; kNone: none does.
  [[nodiscard]] int entering(double hair) const;
  /// False: nothing bounds the column, which rounding alone brings about.
  [[nodiscard]] bool pivot(int column);
  /// Prices worked out from nothing, free of what rounding has added up to.
  void price_afresh();
  /// What is bought becomes dearer. False: nothing is.
  bool make_dearer();

  [[nodiscard]] double price(int row) const { return price_[at(row)]; }
  [[nodiscard]] double value() const;
  [[nodiscard]] bool is_bought() const;
  [[nodiscard]] int pivots() const { return pivots_; }
  /// Multiplications done so far.
  [[nodiscard]] std::int64_t work() const { return work_; }

  struct Taken {
    int column = 0;
    double times = 0;
  };
  /// Columns that are taken, in the order of the rows that they stand for.
  [[nodiscard]] std::vector<Taken> taken() const;

 private:
  /// Beside columns from 0: over(row), what is given too much, or not used up; from kBought down: what is bought, a row
  /// each.
  static constexpr int kBought = -1'000'000;
  static constexpr int over(int row) { return -2 - row; }

  struct Column {
    double cost = 0, weight = 1;
    std::size_t begin = 0, end = 0;  ///< its shares
  };
  /// The inverse by columns: what a column of the program makes of the basis is then read in one go.
  [[nodiscard]] double& inverse(int row, int column) { return inverse_[at(column) * at(size_) + at(row)]; }
  [[nodiscard]] double cost_of(int column) const;
  [[nodiscard]] double times_row(const Column& column, const std::vector<double>& row) const;
  /// What a row's own column over(row) gives it.
  [[nodiscard]] double sign_of(int row) const { return row < at_least_ ? -1 : 1; }
  void reweigh(int entered, int left, double by);

  int size_ = 0, at_least_ = 0, pivots_ = 0;
  std::int64_t work_ = 0;
  std::vector<double> inverse_, value_, price_, bought_;
  std::vector<int> basic_;
  std::vector<Column> columns_;
  std::vector<RowShare> shares_;
  std::vector<double> over_weight_;  ///< by row
  std::vector<double> step_, row_;   ///< of the pivot
  std::vector<int> stepped_;         ///< where `step_` is not 0
};

}  // namespace bentbook
