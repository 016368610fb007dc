#pragma once
/// All load cases of what stands, judged.

#include <vector>

#include "raising/forces.h"

namespace bentbook {

/// The load cases of a set: pushes first, then persons by timber.
[[nodiscard]] std::vector<LoadCase> load_cases(const StandingModel& model, const StandingSet& set);

struct ForceVerdict {
  bool holds = false;
  double factor = 0;  ///< of the worst case, to kMostFactor, rounded down to thousandths; where only asked: 1 or 0
  bool decided = true;
  LoadCase worst;
  std::vector<int> hangs_on;
};
/// Whether every case holds at λ = 1: stops at the first that does not. `first`: the case to begin with, which failed
/// lately.
[[nodiscard]] ForceVerdict judge_forces(const StandingModel& model, const StandingSet& set, const LoadCase* first);
/// The worst case, its factor and the rows it hangs on.
[[nodiscard]] ForceVerdict worst_case(const StandingModel& model, const StandingSet& set);

}  // namespace bentbook
