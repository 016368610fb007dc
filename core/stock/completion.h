#pragma once
/// The last word on a cutting: stick by stick, each the one of the largest piece that is left, by what its waste costs
/// at the relaxation's prices; what cannot come below the best that is known is not looked at.

#include "stock/relaxation.h"

namespace bentbook {

struct Completed {
  std::vector<CutStick> sticks;  ///< empty: nothing below `cost_below` was found
  std::int64_t cost = 0;
  bool all_seen = false;  ///< nothing costs less than what was found, or than `cost_below` where nothing was
};

/// Cuttings of all that `still` has that cost less than `cost_below`; ends as soon as one costs no more than `enough`.
[[nodiscard]] Completed complete(const CuttingProblem& problem, const StillToCut& still, const Prices& prices,
                                 std::int64_t cost_below, std::int64_t enough, WorkLeft& work);

}  // namespace bentbook
