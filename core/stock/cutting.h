#pragma once
/// Cutting pieces out of sticks: which pieces come out of which stick, so that the sticks cost least (one-dimensional
/// cutting stock). Whole numbers throughout: sizes and rooms in one unit of the caller's, costs in another.
///
/// The relaxation by patterns and its rounding. Source: SOURCES.md, "cutting stock". The answer is the same on every
/// target: work is limited by counting it, never by a clock.

#include <cstdint>
#include <vector>

#include "numeric/result.h"

namespace bentbook {

/// Pieces of one size.
struct CutRow {
  std::int64_t size = 1;  ///< above 0
  int count = 1;
};
/// Sticks of one room. What a kerf takes is the caller's: with it added to every size and every room, n pieces need
/// n − 1 of them.
struct StickKind {
  std::int64_t room = 0;
  std::int64_t cost = 1;  ///< from 0; above 0 where there is no end of them
  int most = -1;          ///< −1: as many as are wanted
};
struct CuttingProblem {
  std::vector<CutRow> rows;  ///< the largest first, no two of one size
  std::vector<StickKind> kinds;
};

struct RowCount {
  int row = 0, count = 0;
  friend bool operator==(const RowCount&, const RowCount&) = default;
};
/// What comes out of one stick.
struct CutStick {
  int kind = 0;
  std::vector<RowCount> pieces;  ///< the largest first
  friend bool operator==(const CutStick&, const CutStick&) = default;
};
struct Cutting {
  std::vector<CutStick> sticks;
  std::int64_t cost = 0;
  std::int64_t bound = 0;  ///< no cutting costs less; proven where it is the cost
  [[nodiscard]] bool proven() const { return bound >= cost; }
};

/// Work that is done at most before the best so far is taken, in steps of some ten nanoseconds.
inline constexpr std::int64_t kCuttingWork = 8'000'000;

/// kTooLarge: a piece has room in no stick; `at` is its row, `limit` the largest room. kImpossible: the sticks that
/// there are do not hold all; `at` is a row of which something is left over.
[[nodiscard]] Result<Cutting> solve_cutting(const CuttingProblem& problem, std::int64_t work = kCuttingWork);

}  // namespace bentbook
