#pragma once
/// Equilibrium of rigid bodies: which forces are needed, and whether given ones hold. Pounds; moments in pounds times
/// kMechanismLength. Source: SOURCES.md, "statics".

#include <Eigen/Core>
#include <vector>

#include "raising/stability/mechanism.h"
#include "raising/stability/standing.h"

namespace bentbook {

/// Equilibrium may be off by this share of the largest load (of 1 lb, where that is less).
/// Source: SOURCES.md, "rounding".
inline constexpr double kEquilibriumError = 1e-6;

/// Six numbers to a body: force and moment, or move and turn, along X, Y, Z. Moments and turns in units of
/// kMechanismLength.
using Loads = Eigen::VectorXd;
using MotionVector = Eigen::VectorXd;

/// Bodies and rows, numbered anew. A row whose other body is not among `bodies` counts as if that one were the ground.
struct ForceSystem {
  std::vector<int> bodies, rows;  ///< timbers, the model's rows
  struct Column {
    int a = -1, b = -1;  ///< numbers in `bodies`, −1: fixed
    double on_a[6]{}, on_b[6]{};
    double lo = 0, hi = 0;
  };
  std::vector<Column> columns;  ///< by row
  [[nodiscard]] int size() const { return static_cast<int>(6 * bodies.size()); }
  /// The loads that forces in the rows put on the bodies.
  [[nodiscard]] Loads effect(const Eigen::VectorXd& f) const;
  /// How fast a motion presses a row; below 0: opens it.
  [[nodiscard]] double give(const Column& column, const MotionVector& motion) const;
};
[[nodiscard]] ForceSystem force_system(const StandingModel& model, std::vector<int> bodies, std::vector<int> rows);

/// What the rows must give to hold a case: its loads, reversed; λ multiplies what LoadCase says.
struct CaseLoads {
  Loads fixed, scaled;  ///< fixed + λ scaled
};
[[nodiscard]] CaseLoads case_loads(const StandingModel& model, const std::vector<int>& bodies, const LoadCase& load);

/// Adds what the rows must give for pounds at a point of a body, `place` being its number.
void add_weight(Loads& needed, int place, const StandingBody& body, Vec3 at, double lb);

/// Whether forces are within their bounds and in equilibrium with what is needed.
[[nodiscard]] bool holds(const ForceSystem& system, const Loads& needed, const Eigen::VectorXd& f);

}  // namespace bentbook
