#pragma once
/// Linear program, by lp_solve: the largest load factor λ that forces can be found for. All load cases share one
/// matrix.

#include <memory>

#include "raising/stability/active_set.h"

namespace bentbook {

struct LargestFactor {
  double factor = 0;       ///< 0 where not even the fixed loads are held, or where not decided
  bool decided = false;    ///< false: the solver gave up
  Eigen::VectorXd forces;  ///< at that factor
  MotionVector motion;     ///< how it would fall beyond it: the program's dual
};
class LoadFactorProgram {
 public:
  explicit LoadFactorProgram(const ForceSystem& system);
  ~LoadFactorProgram();
  LoadFactorProgram(const LoadFactorProgram&) = delete;
  LoadFactorProgram& operator=(const LoadFactorProgram&) = delete;
  /// The program's own answer; its forces are checked, that there is nothing beyond is its word.
  [[nodiscard]] LargestFactor solve(const CaseLoads& loads);
  /// The same, and that there is nothing beyond is proved by its motion, or `solver` (of the same system) finds nothing
  /// a thousandth beyond. By bisection where it does, or where the program gave up.
  [[nodiscard]] LargestFactor solve_proven(ActiveSetSolver& solver, const CaseLoads& loads);

 private:
  [[nodiscard]] double bound(const CaseLoads& loads, const MotionVector& motion) const;
  [[nodiscard]] LargestFactor bisect(ActiveSetSolver& solver, const CaseLoads& loads, LargestFactor known);
  struct Program;
  const ForceSystem& system_;
  std::unique_ptr<Program> program_;
};

}  // namespace bentbook
