/// The largest load factor as a linear program.

#include <lp_lib.h>

#include <algorithm>

#include "raising/forces.h"

namespace bentbook {

struct LoadFactor::Program {
  lprec* lp = nullptr;
  Program() = default;
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;
  ~Program() {
    if (lp != nullptr) delete_lp(lp);
  }
};

LoadFactor::LoadFactor(const ForceSystem& system) : system_(system), program_(std::make_unique<Program>()) {
  const int n = system.size(), m = static_cast<int>(system.columns.size());
  lprec* lp = make_lp(n, 0);
  program_->lp = lp;
  if (lp == nullptr) return;
  set_verbose(lp, 0);
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
    set_bounds(lp, r + 1, c.lo <= -kMostForce ? -get_infinite(lp) : c.lo, c.hi >= kMostForce ? get_infinite(lp) : c.hi);
  }
  set_bounds(lp, m + 1, 0, kMostFactor);
  for (int i = 1; i <= n; ++i) set_constr_type(lp, i, EQ);
  set_maxim(lp);
  double one[] = {1};
  int last[] = {m + 1};
  set_obj_fnex(lp, 1, one, last);
}

LoadFactor::~LoadFactor() = default;

Largest LoadFactor::solve(const CaseLoads& loads) {
  Largest result;
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
  int status = ::solve(lp);
  if (status != OPTIMAL && status != INFEASIBLE) {
    default_basis(lp);
    status = ::solve(lp);
  }
  result.decided = status == OPTIMAL || status == INFEASIBLE;
  if (status != OPTIMAL) return result;
  std::vector<double> x(static_cast<std::size_t>(m) + 1);
  get_variables(lp, x.data());
  result.factor = x.back();
  result.forces.resize(m);
  for (int r = 0; r < m; ++r) {
    const ForceSystem::Column& c = system_.columns[static_cast<std::size_t>(r)];
    result.forces(r) = std::clamp(x[static_cast<std::size_t>(r)], c.lo, c.hi);
  }
  // What the solver says is believed only with forces that hold.
  if (!holds(system_, loads.fixed + result.factor * loads.scaled, result.forces)) return {};
  double* duals = nullptr;
  result.motion = Loads::Zero(n);
  if (get_ptr_dual_solution(lp, &duals) != FALSE && duals != nullptr)
    for (int i = 0; i < n; ++i) result.motion(i) = duals[i + 1];
  if (result.motion.dot(loads.scaled) < 0) result.motion = -result.motion;
  return result;
}

}  // namespace bentbook
