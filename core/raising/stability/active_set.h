#pragma once
/// Primal-dual active set method: forces that hold a load, nearest to given ones. Every row is a spring of equal
/// stiffness that lets go where it would have to pull; each round solves the normal equations of the rows that hold.
/// What it finds is checked (holds). Where it finds none, its last motion may prove that there are none with every
/// force below limits::kMostForce. Source: SOURCES.md, "no forces". What it leaves undecided goes to load_factor.h.

#include <Eigen/SparseCholesky>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "raising/stability/force_system.h"

namespace bentbook {

/// Rounds at most, and where more is at stake: most cases take under ten. Source: SOURCES.md, "search effort".
inline constexpr int kRounds = 40, kMoreRounds = 120;

enum class Feasibility : std::uint8_t {
  kFeasible,    ///< forces that hold were found and checked
  kInfeasible,  ///< a motion was found that proves there are none
  kUndecided,   ///< neither
};

class ActiveSetSolver {
 public:
  explicit ActiveSetSolver(const ForceSystem& system);
  /// `f`: forces to stay near to; where feasible, those found. `motion`: any to begin with; afterwards the last one,
  /// which is how it would fall where nothing holds it.
  Feasibility solve(const Loads& needed, Eigen::VectorXd& f, MotionVector& motion, int rounds = kRounds);

  /// How readily each row takes more force than it has: 1 at first. Rows that press hard take more of a new load than
  /// rows about to let go, so that fewer let go on the way.
  void set_soft(std::vector<double> soft) { soft_ = std::move(soft); }

 private:
  /// Forces that go with a motion; `free`: by row, whether it is within its bounds.
  Eigen::VectorXd forces_at(const Eigen::VectorXd& start, const MotionVector& motion, std::vector<char>* free) const;
  double stretch(const Loads& needed, const Eigen::VectorXd& start, const MotionVector& motion,
                 const MotionVector& step) const;
  bool factor(const std::vector<char>& free);
  [[nodiscard]] bool proves_none(const Loads& needed, const MotionVector& motion) const;
  const ForceSystem& system_;
  Eigen::SparseMatrix<double> normal_;
  std::vector<std::array<int, 6>> blocks_;  ///< of a pair of bodies: where its six columns begin in normal_
  struct Where {
    int low = -1, high = -1, both = -1;  ///< blocks of its bodies and of the pair
  };
  std::vector<Where> where_;  ///< by row
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> factorisation_;
  std::vector<char> factored_;  ///< rows that factorisation_ counts
  std::vector<double> soft_, factored_soft_;
  bool ready_ = false;
};

}  // namespace bentbook
