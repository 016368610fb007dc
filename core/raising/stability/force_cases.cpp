#include "raising/stability/force_cases.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "numeric/sorting.h"
#include "raising/limits.h"
#include "raising/stability/load_factor.h"

namespace bentbook {
namespace {

struct Span {
  double lo = 0, hi = 0;
  bool any = false;
  void add(double x) {
    lo = any && lo < x ? lo : x;
    hi = any && hi > x ? hi : x;
    any = true;
  }
};

/// By place in the set: stations of the first and the last joint that stands, or of the foot.
std::vector<Span> joint_spans(const StandingModel& model, const StandingSet& set) {
  std::vector<Span> spans(set.timbers.size());
  for (const int r : set.rows) {
    const HoldRow& row = model.rows[at(r)];
    if (row.kind == HoldKind::kTemporary) continue;
    const Vec3 where = row.joint >= 0 ? model.joint_at[at(row.joint)] : row.point;
    for (const int t : {row.a, row.b}) {
      if (t < 0) continue;
      const double x = dot(where - model.bodies[at(t)].end_a, model.axis[at(t)]);
      spans[at(set.place[at(t)])].add(std::clamp(x, 0.0, model.length[at(t)]));
    }
  }
  return spans;
}

/// Everything the cases of one set share.
class CaseJudge {
 public:
  CaseJudge(const StandingModel& model, const StandingSet& set)
      : model_(model), system_(force_system(model, set.timbers, set.rows)), solver_(system_) {
    near_ = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(system_.columns.size()));
  }

  /// Whether a case holds at `factor`; kUndecided is asked of the linear program by the caller. `near`: forces by row
  /// of the model to begin with, or none.
  Feasibility holds_at(const LoadCase& load, double factor, const RowForces& near) {
    const CaseLoads loads = case_loads(model_, system_.bodies, load);
    Eigen::VectorXd f = near_;
    for (std::size_t r = 0; r < system_.rows.size() && near.size() > 0; ++r)
      f(static_cast<Eigen::Index>(r)) = near(system_.rows[r]);
    return solver_.solve(loads.fixed + factor * loads.scaled, f, motion_);
  }
  LargestFactor largest(const LoadCase& load) {
    if (!program_) program_ = std::make_unique<LoadFactorProgram>(system_);
    LargestFactor found = program_->solve_proven(solver_, case_loads(model_, system_.bodies, load));
    if (found.motion.size() > 0) motion_ = found.motion;
    return found;
  }

  [[nodiscard]] std::vector<TimberMotion> fall() const { return motions_of(system_.bodies, motion_); }
  /// Rows at a bound that the last motion opens most: holding more there would hold the case.
  [[nodiscard]] std::vector<int> hangs_on() const {
    std::vector<std::pair<double, int>> found;
    double most = 0;
    for (std::size_t r = 0; r < system_.columns.size(); ++r) {
      const ForceSystem::Column& c = system_.columns[r];
      const double give = system_.give(c, motion_);
      const bool counts = give < 0 ? c.lo > -limits::kMostForce : c.hi < limits::kMostForce;
      if (!counts) continue;
      const double size = give < 0 ? -give : give;
      most = size > most ? size : most;
      found.emplace_back(-size, system_.rows[r]);
    }
    sort_up(found);
    std::vector<int> rows;
    for (const auto& [size, row] : found) {
      if (rows.size() == 4 || -size < 0.05 * most || !(size < 0)) break;
      const int joint = model_.rows[at(row)].joint;
      // One row of a joint is enough to name it.
      const bool again = joint >= 0 && std::any_of(rows.begin(), rows.end(),
                                                   [&](int other) { return model_.rows[at(other)].joint == joint; });
      if (!again) rows.push_back(row);
    }
    return rows;
  }

 private:
  const StandingModel& model_;
  ForceSystem system_;
  ActiveSetSolver solver_;
  std::unique_ptr<LoadFactorProgram> program_;
  Eigen::VectorXd near_;
  MotionVector motion_;
};

/// What the rows must give: own weight and what hangs.
Loads needed_for(const StandingModel& model, const StandingSet& set, bool heavy, std::span<const HungWeight> hung) {
  Loads needed = case_loads(model, set.timbers, {LoadKind::kPush, heavy, 0, -1, {}}).fixed;
  for (const HungWeight& weight : hung)
    if (const int place = set.place[at(weight.timber)]; place >= 0)
      add_weight(needed, place, model.bodies[at(weight.timber)], weight.at, weight.lb);
  return needed;
}

double thousandths(double x) { return libm::floor(x * 1000 + 1e-4) / 1000; }

}  // namespace

std::vector<TimberMotion> motions_of(const std::vector<int>& bodies, const MotionVector& motion) {
  std::vector<TimberMotion> motions;
  if (motion.size() != static_cast<Eigen::Index>(6 * bodies.size())) return motions;
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    const auto o = static_cast<Eigen::Index>(6 * i);
    motions.push_back({bodies[i],
                       {motion(o), motion(o + 1), motion(o + 2)},
                       (1 / kMechanismLength) * Vec3{motion(o + 3), motion(o + 4), motion(o + 5)}});
  }
  return motions;
}

std::vector<LoadCase> load_cases(const StandingModel& model, const StandingSet& set) {
  std::vector<LoadCase> cases;
  for (const bool heavy : {false, true})
    for (int k = 0; k < 8; ++k) cases.push_back({LoadKind::kPush, heavy, k, -1, {}});
  const std::vector<Span> spans = joint_spans(model, set);
  for (const bool heavy : {false, true})
    for (std::size_t i = 0; i < set.timbers.size(); ++i) {
      if (!spans[i].any) continue;
      const int t = set.timbers[i];
      const Vec3 a = model.bodies[at(t)].end_a + spans[i].lo * model.axis[at(t)];
      const Vec3 b = model.bodies[at(t)].end_a + spans[i].hi * model.axis[at(t)];
      cases.push_back({LoadKind::kPerson, heavy, 0, t, b});
      // A load straight above another is the same load.
      if (norm(cross(b - a, Vec3{0, 0, 1})) > 1e-6) cases.push_back({LoadKind::kPerson, heavy, 0, t, a});
    }
  return cases;
}

ForceVerdict worst_case(const StandingModel& model, const StandingSet& set, const MarginFloors* floors) {
  CaseJudge judge(model, set);
  ForceVerdict verdict{true, limits::kMostFactor, true, {}, {}, {}};
  const std::vector<LoadCase> cases = load_cases(model, set);
  std::vector<std::size_t> order(cases.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  if (floors != nullptr)
    sort_by(order, [&](std::size_t a, std::size_t b) { return floors->factor[a] < floors->factor[b]; });
  for (const std::size_t i : order) {
    const double floor = floors == nullptr ? 0 : floors->factor[i];
    if (floor >= verdict.factor) break;
    RowForces near;
    if (floors != nullptr) near = floors->forces_about(i, verdict.factor);
    if (judge.holds_at(cases[i], verdict.factor, near) == Feasibility::kFeasible) continue;
    LargestFactor most = judge.largest(cases[i]);
    verdict.decided = verdict.decided && most.decided;
    // Forces that were found are worth more than the program's word.
    most.factor = std::max(most.factor, floor);
    if (most.factor >= verdict.factor) continue;
    verdict.factor = most.factor;
    verdict.worst = cases[i];
    verdict.hangs_on = judge.hangs_on();
    verdict.fall = judge.fall();
    if (!(most.factor > 0)) break;
  }
  verdict.factor = thousandths(verdict.factor);
  verdict.holds = verdict.factor >= 1;
  return verdict;
}

bool bears(const StandingModel& model, const StandingSet& set, std::span<const std::vector<HungWeight>> moments) {
  const ForceSystem system = force_system(model, set.timbers, set.rows);
  ActiveSetSolver solver(system);
  std::unique_ptr<LoadFactorProgram> program;
  Eigen::VectorXd f = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(set.rows.size()));
  MotionVector motion;
  const auto held = [&](const Loads& needed) {
    const Feasibility found = solver.solve(needed, f, motion);
    if (found != Feasibility::kUndecided) return found == Feasibility::kFeasible;
    motion = MotionVector();
    if (!program) program = std::make_unique<LoadFactorProgram>(system);
    const LargestFactor most = program->solve_proven(solver, {needed, Loads::Zero(needed.size())});
    return most.forces.size() == f.size() && holds(system, needed, most.forces);
  };
  for (const std::vector<HungWeight>& hung : moments)
    for (const bool heavy : {false, true})
      if (!held(needed_for(model, set, heavy, hung))) return false;
  return true;
}

}  // namespace bentbook
