#pragma once
/// Forces that hold a load: equilibrium of every body, one-way rows not below 0, limits kept. Pounds; moments in pounds
/// times kMechanismLength.
///
/// `Balance` looks for the forces nearest to given ones by an active-set iteration on the normal equations (every row a
/// spring of equal stiffness that lets go where it would have to pull: the primal-dual active set method). What it
/// finds is checked: bounds exactly, equilibrium to kBalanceError. Where it finds none it looks whether its last vector
/// proves that there are none with every force below limits::kMostForce. Source: SOURCES.md, "no forces". What it can't
/// decide goes to the linear program. `LoadFactor` is that program: the largest λ, by lp_solve; the matrix is shared by
/// all load cases, each starts from the basis of the one before.

#include <Eigen/SparseCholesky>
#include <array>
#include <memory>
#include <utility>
#include <vector>

#include "raising/limits.h"
#include "raising/stability/mechanism.h"
#include "raising/stability/standing.h"

namespace bentbook {

inline constexpr double kBalanceError = 1e-6;  ///< of the largest load (at least 1 lb)
inline constexpr int kRounds = 40;             ///< steps at most
inline constexpr int kMoreRounds = 120;

using Loads = Eigen::VectorXd;  ///< six to a body

/// Bodies and rows with numbers of their own. A row whose other body is not among `bodies` counts as if that one were
/// the ground.
struct ForceSystem {
  std::vector<int> bodies, rows;  ///< timbers, the model's rows
  struct Column {
    int a = -1, b = -1;  ///< numbers in `bodies`, −1: fixed
    double on_a[6]{}, on_b[6]{};
    double lo = 0, hi = 0;
  };
  std::vector<Column> columns;  ///< by row
  [[nodiscard]] int size() const { return static_cast<int>(6 * bodies.size()); }
  /// What forces do to the bodies.
  [[nodiscard]] Loads effect(const Eigen::VectorXd& f) const;
  /// By row: how fast the bodies' motion `y` lets it give way.
  [[nodiscard]] double give(const Column& column, const Loads& y) const;
};
[[nodiscard]] ForceSystem force_system(const StandingModel& model, std::vector<int> bodies, std::vector<int> rows);

/// What the rows must give: the loads of a case, turned round; λ counts what LoadCase says.
struct CaseLoads {
  Loads fixed, scaled;  ///< fixed + λ scaled
};
[[nodiscard]] CaseLoads case_loads(const StandingModel& model, const std::vector<int>& bodies, const LoadCase& load);

enum class Found : std::uint8_t { kForces, kNone, kUndecided };

class Balance {
 public:
  explicit Balance(const ForceSystem& system);
  /// `f`: forces to stay near to; where found, those found. `y`: the motion to begin with, any;
  /// afterwards the last one.
  Found solve(const Loads& needed, Eigen::VectorXd& f, Loads& y, int rounds = kRounds);

  /// How readily each row takes more force than it has: 1 at first. Rows that already press take more of what is new
  /// than those that are about to let go, and few let go on the way.
  void set_soft(std::vector<double> soft) { soft_ = std::move(soft); }

 private:
  /// Forces that go with a motion; `free`: by row, whether it is within its bounds.
  Eigen::VectorXd forces_at(const Eigen::VectorXd& start, const Loads& y, std::vector<char>* free) const;
  double stretch(const Loads& needed, const Eigen::VectorXd& start, const Loads& y, const Loads& step) const;
  bool factor(const std::vector<char>& free);
  [[nodiscard]] bool proves_none(const Loads& needed, const Loads& y) const;
  const ForceSystem& system_;
  Eigen::SparseMatrix<double> normal_;
  std::vector<std::array<int, 6>> blocks_;  ///< of a pair of bodies: where its six columns begin in normal_
  struct Where {
    int low = -1, high = -1, both = -1;  ///< blocks of its bodies and of the pair
  };
  std::vector<Where> where_;  ///< by row
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> solver_;
  std::vector<char> factored_;  ///< rows that solver_ counts
  std::vector<double> soft_, factored_soft_;
  bool ready_ = false;
};

struct Largest {
  double factor = 0;       ///< 0 where not even the fixed loads are held
  bool decided = false;    ///< else the solver gave up: 0
  Eigen::VectorXd forces;  ///< at that factor
  Loads motion;            ///< how it would fall beyond it: the program's dual
};
class LoadFactor {
 public:
  explicit LoadFactor(const ForceSystem& system);
  ~LoadFactor();
  LoadFactor(const LoadFactor&) = delete;
  LoadFactor& operator=(const LoadFactor&) = delete;
  /// The program's own answer, its forces checked.
  [[nodiscard]] Largest solve(const CaseLoads& loads);
  /// The same, and its own motion proves that there is nothing beyond it, or `balance` (of the same system) finds
  /// nothing a thousandth beyond it; by halves where it does, or where the program gave up.
  [[nodiscard]] Largest sure(Balance& balance, const CaseLoads& loads);

 private:
  [[nodiscard]] double bound(const CaseLoads& loads, const Loads& motion) const;
  [[nodiscard]] Largest halve(Balance& balance, const CaseLoads& loads, Largest known);
  struct Program;
  const ForceSystem& system_;
  std::unique_ptr<Program> program_;
};

/// Whether `f` is within the bounds and in balance with what is needed.
[[nodiscard]] bool holds(const ForceSystem& system, const Loads& needed, const Eigen::VectorXd& f);

}  // namespace bentbook
