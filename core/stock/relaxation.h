#pragma once
/// The cutting as a linear program over patterns, found as they are wanted (column generation), many at a time. Its
/// prices give a bound that holds whatever doubles did: they are made whole and checked against every pattern. Source:
/// SOURCES.md, "cutting stock".

#include <cstdint>
#include <vector>

#include "stock/pattern.h"

namespace bentbook {

/// What is still to be cut, and of which kinds there are still sticks (−1: no end of them).
struct StillToCut {
  std::vector<int> count;  ///< by row
  std::vector<int> most;   ///< by kind
};

/// Prices of the pieces, in `scale` parts of a unit of cost. No pattern is worth more than its stick costs, less what
/// the rarity of a kind adds.
struct Prices {
  std::int64_t scale = 1;
  std::vector<std::int64_t> piece;   ///< by row, from 0
  std::vector<std::int64_t> rarity;  ///< by kind, at most 0; of one stick
  /// No cutting of what is left costs less, in `scale` parts.
  [[nodiscard]] std::int64_t bound_of(const StillToCut& still) const;
};

struct Relaxation {
  std::vector<CutStick> patterns;
  std::vector<double> times;  ///< how often each is cut, not whole; more than 0
  Prices prices;
  std::int64_t bound = 0;  ///< whole units of cost
};

/// `pool`: patterns known before; those that are found come in behind them.
[[nodiscard]] Relaxation relax(const CuttingProblem& problem, const StillToCut& still, std::vector<CutStick>& pool,
                               WorkLeft& work);

}  // namespace bentbook
