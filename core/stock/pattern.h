#pragma once
/// The most valuable pieces for one stick: the bounded knapsack, by branch and bound in the order of value per length.

#include <cstdint>
#include <vector>

#include "stock/cutting.h"

namespace bentbook {

/// Work that may still be done.
struct WorkLeft {
  std::int64_t steps = 0;
  /// False: there is none left.
  [[nodiscard]] bool spend(std::int64_t n) { return (steps -= n) > 0; }
};

/// What is laid out of: rows in the order of value per length, those of no value left out.
class PatternSearch {
 public:
  /// `count`: how many of each row there are; `value` of one piece of each, from 0, below 2^44.
  PatternSearch(const std::vector<CutRow>& rows, const std::vector<int>& count, const std::vector<std::int64_t>& value);

  struct Found {
    std::int64_t value = 0;        ///< of the best one
    std::int64_t most = 0;         ///< none is worth more; `value`, unless the work ran out
    std::vector<RowCount> pieces;  ///< empty: none is worth more than was asked for
  };
  /// The best pattern that is worth more than `more_than`.
  [[nodiscard]] Found best(std::int64_t room, std::int64_t more_than, WorkLeft& work) const;

 private:
  struct Item {
    std::int64_t size, value;
    std::int64_t least;  ///< size of this and all behind it
    double density;
    int row, count;
  };
  /// The dearest piece of those up to a size.
  struct Single {
    std::int64_t size, value;
  };
  [[nodiscard]] std::int64_t dearest_single(std::int64_t room) const;

  std::vector<Item> items_;
  std::vector<Single> singles_;  ///< the smallest first
};

}  // namespace bentbook
