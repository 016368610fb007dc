#include "raising/stability/load_factor.h"

#include <lp_lib.h>

#include <algorithm>
#include <utility>

#include "raising/limits.h"
namespace bentbook {
namespace {

/// Calls of the solver's own "go on?" after which it is stopped: it may go round in circles, and a clock would make the
/// answer another one on another machine.
constexpr int kMostCalls = 4000;

int enough(lprec* /*lp*/, void* calls) {
  int& left = *static_cast<int*>(calls);
  return --left < 0 ? TRUE : FALSE;
}

}  // namespace

struct LoadFactorProgram::Program {
  lprec* lp = nullptr;
  int calls_left = 0;
  Program() = default;
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;
  ~Program() {
    if (lp != nullptr) delete_lp(lp);
  }
};

LoadFactorProgram::LoadFactorProgram(const ForceSystem& system)
    : system_(system), program_(std::make_unique<Program>()) {
  const int n = system.size(), m = static_cast<int>(system.columns.size());
  lprec* lp = make_lp(n, 0);
  program_->lp = lp;
  if (lp == nullptr) return;
  set_verbose(lp, 0);
  put_abortfunc(lp, enough, &program_->calls_left);
  set_scaling(lp, 0);
  std::vector<double> values;
  std::vector<int> places;
  const auto side = [&](int body, const double(&on)[6]) {
    for (int k = 0; k < 6 && body >= 0; ++k) {
      if (on[k] == 0) continue;
      values.push_back(on[k]);
      places.push_back(6 * body + k + 1);
    }
  };
  for (const ForceSystem::Column& c : system.columns) {
    values.clear();
    places.clear();
    side(std::min(c.a, c.b), c.a < c.b ? c.on_a : c.on_b);
    side(std::max(c.a, c.b), c.a < c.b ? c.on_b : c.on_a);
    add_columnex(lp, static_cast<int>(values.size()), values.data(), places.data());
  }
  add_columnex(lp, 0, nullptr, nullptr);
  for (int r = 0; r < m; ++r) {
    const ForceSystem::Column& c = system.columns[static_cast<std::size_t>(r)];
    set_bounds(lp, r + 1, c.lo, c.hi);
  }
  set_bounds(lp, m + 1, 0, limits::kMostFactor);
  for (int i = 1; i <= n; ++i) set_constr_type(lp, i, EQ);
  set_maxim(lp);
  double one[] = {1};
  int last[] = {m + 1};
  set_obj_fnex(lp, 1, one, last);
}

LoadFactorProgram::~LoadFactorProgram() = default;

LargestFactor LoadFactorProgram::solve(const CaseLoads& loads) {
  LargestFactor result;
  lprec* lp = program_->lp;
  if (lp == nullptr) return result;
  const int n = system_.size(), m = static_cast<int>(system_.columns.size());
  std::vector<double> values{1};
  std::vector<int> places{0};
  for (int i = 0; i < n; ++i) {
    set_rh(lp, i + 1, loads.fixed(i));
    if (loads.scaled(i) == 0) continue;
    values.push_back(-loads.scaled(i));
    places.push_back(i + 1);
  }
  set_columnex(lp, m + 1, static_cast<int>(values.size()), values.data(), places.data());
  int status = NOFEASFOUND;
  // Where it goes round in circles as it is, it may not with its rows scaled and the plain pivot rule.
  for (const int attempt : {0, 1}) {
    set_scaling(lp, attempt == 0 ? 0 : SCALE_GEOMETRIC + SCALE_EQUILIBRATE);
    set_pivoting(lp, attempt == 0 ? PRICER_DEVEX + PRICE_ADAPTIVE : PRICER_DANTZIG);
    program_->calls_left = kMostCalls;
    default_basis(lp);
    status = ::solve(lp);
    if (status == OPTIMAL || status == INFEASIBLE) break;
  }
  result.decided = status == OPTIMAL || status == INFEASIBLE;
  if (status != OPTIMAL) return result;
  std::vector<double> x(static_cast<std::size_t>(m) + 1);
  get_variables(lp, x.data());
  result.factor = x[static_cast<std::size_t>(m)];
  result.forces.resize(m);
  for (int r = 0; r < m; ++r) {
    const ForceSystem::Column& c = system_.columns[static_cast<std::size_t>(r)];
    result.forces(r) = std::clamp(x[static_cast<std::size_t>(r)], c.lo, c.hi);
  }
  // What the solver says is believed only with forces that hold.
  if (!holds(system_, loads.fixed + result.factor * loads.scaled, result.forces)) return {};
  if (result.factor > limits::kMostFactor) result.factor = limits::kMostFactor;
  double* duals = nullptr;
  result.motion = MotionVector::Zero(n);
  if (get_ptr_dual_solution(lp, &duals) != FALSE && duals != nullptr)
    for (int i = 0; i < n; ++i) result.motion(i) = duals[i + 1];
  if (result.motion.dot(loads.scaled) < 0) result.motion = -result.motion;
  return result;
}

/// Bisection, where the program gave up or is known to be wrong.
LargestFactor LoadFactorProgram::bisect(ActiveSetSolver& solver, const CaseLoads& loads, LargestFactor known) {
  LargestFactor result = std::move(known);
  double lo = result.factor, hi = limits::kMostFactor;
  const auto ask = [&](double factor) {
    Eigen::VectorXd f = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(system_.columns.size()));
    MotionVector motion;
    const Feasibility found = solver.solve(loads.fixed + factor * loads.scaled, f, motion, kMoreRounds);
    result.decided = result.decided && found != Feasibility::kUndecided;
    if (found == Feasibility::kFeasible)
      result.forces = f;
    else
      result.motion = motion;
    return found == Feasibility::kFeasible;
  };
  result.decided = true;
  if (result.forces.size() == 0 && !ask(0)) return result;
  if (ask(hi)) {
    result.factor = hi;
    return result;
  }
  for (int k = 0; k < 15; ++k) {
    const double mid = (lo + hi) / 2;
    (ask(mid) ? lo : hi) = mid;
  }
  result.factor = lo;
  return result;
}

/// No forces hold more than this: whatever they are, they do no more work along a motion than their bounds let them.
double LoadFactorProgram::bound(const CaseLoads& loads, const MotionVector& motion) const {
  const double work = motion.size() > 0 ? motion.dot(loads.scaled) : 0;
  if (!(work > 0)) return limits::kMostFactor;
  double most = -motion.dot(loads.fixed);
  for (const ForceSystem::Column& c : system_.columns) {
    const double give = system_.give(c, motion);
    most += give > 0 ? give * c.hi : give * c.lo;
  }
  return most / work;
}

LargestFactor LoadFactorProgram::solve_proven(ActiveSetSolver& solver, const CaseLoads& loads) {
  LargestFactor found = solve(loads);
  if (!found.decided) return bisect(solver, loads, {});
  if (found.factor >= limits::kMostFactor || bound(loads, found.motion) <= found.factor + 5e-4) return found;
  // The program's forces are checked; that there are none beyond is its word, which is not always good.
  Eigen::VectorXd f = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(system_.columns.size()));
  MotionVector motion;
  const double beyond = std::min(found.factor + 1e-3, limits::kMostFactor);
  if (solver.solve(loads.fixed + beyond * loads.scaled, f, motion, kMoreRounds) != Feasibility::kFeasible) {
    if (found.motion.size() == 0) found.motion = motion;
    return found;
  }
  found.factor = beyond;
  found.forces = f;
  return bisect(solver, loads, std::move(found));
}

}  // namespace bentbook
