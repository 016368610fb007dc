#pragma once
/// The load cases of what stands, and the worst of them.

#include <functional>
#include <span>
#include <vector>

#include "raising/stability/force_system.h"

namespace bentbook {

/// The load cases of a set: pushes first (light ones first), then persons by timber.
[[nodiscard]] std::vector<LoadCase> load_cases(const StandingModel& model, const StandingSet& set);

struct ForceVerdict {
  bool holds = false;
  double factor = 0;  ///< of the worst case, rounded down to thousandths; a verdict without margins: 1 or 0
  bool decided = true;
  LoadCase worst;
  std::vector<int> hangs_on;
  std::vector<TimberMotion> fall;
};
/// Six numbers a body, as motions of timbers.
[[nodiscard]] std::vector<TimberMotion> motions_of(const std::vector<int>& bodies, const MotionVector& motion);

/// Forces by row of the model, 0 where a row is not of the set.
using RowForces = Eigen::VectorXd;

/// What is known of the margins of load_cases(model, set) before they are looked for.
struct MarginFloors {
  std::vector<double> factor;                                  ///< by case: its margin is at least this
  std::function<RowForces(std::size_t, double)> forces_about;  ///< a case's forces at a factor, as a start
};
/// The worst case, its factor and the rows it hangs on. `floors`: where every case is known to hold at 1.
[[nodiscard]] ForceVerdict worst_case(const StandingModel& model, const StandingSet& set,
                                      const MarginFloors* floors = nullptr);

/// Two load cases beside those of standing.h, while a step closes: own weight × kLightShare and × kHeavyShare, each
/// with all that hangs. Whether forces that the joints can give hold both, at each of `moments`. What hangs on timbers
/// that do not stand is passed over.
[[nodiscard]] bool bears(const StandingModel& model, const StandingSet& set,
                         std::span<const std::vector<HungWeight>> moments);

}  // namespace bentbook
