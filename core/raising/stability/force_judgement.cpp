#include "raising/stability/force_judgement.h"

#include <algorithm>
#include <utility>

#include "numeric/index.h"
#include "raising/limits.h"
#include "raising/stability/force_persons.h"

namespace bentbook {
namespace {

// Source: SOURCES.md, "search effort".
constexpr double kLeastSoft = 0.02;
constexpr int kPartRounds = 10;

bool has(const std::vector<int>& sorted, int value) { return std::binary_search(sorted.begin(), sorted.end(), value); }

}  // namespace

ForceJudgement::ForceJudgement(const StandingModel& model, const StandingSet& set)
    : model_(model), set_(set), parts_(model, set) {
  proof_.set = set;
}

/// Forces near `f` that hold a case, changed within the part alone.
bool ForceJudgement::solve_part(ForcePart& part, const LoadCase& load, double factor, RowForces& f) const {
  const CaseLoads loads = case_loads(model_, part.system.bodies, load);
  const Loads needed = loads.fixed + factor * loads.scaled - parts_.border_loads(part, f);
  Eigen::VectorXd own(static_cast<Eigen::Index>(part.system.rows.size()));
  for (std::size_t i = 0; i < part.system.rows.size(); ++i) own(static_cast<Eigen::Index>(i)) = f(part.system.rows[i]);
  MotionVector motion;
  if (load.kind == LoadKind::kPush && was_ != nullptr) part.solver->set_soft(soft_of(part.system, own));
  if (part.solver->solve(needed, own, motion, kPartRounds) != Feasibility::kFeasible) return false;
  for (std::size_t i = 0; i < part.system.rows.size(); ++i) f(part.system.rows[i]) = own(static_cast<Eigen::Index>(i));
  return true;
}

/// Rows take about as much more as they have.
std::vector<double> ForceJudgement::soft_of(const ForceSystem& system, const Eigen::VectorXd& f) const {
  const double mean = f.size() > 0 ? f.lpNorm<1>() / static_cast<double>(f.size()) : 0;
  std::vector<double> soft(system.rows.size(), 1);
  for (std::size_t i = 0; i < soft.size() && mean > 0; ++i) {
    if (model_.rows[at(system.rows[i])].two_way || !has(was_->set.rows, system.rows[i])) continue;
    soft[i] = std::clamp(f(static_cast<Eigen::Index>(i)) / mean, kLeastSoft, 4.0);
  }
  return soft;
}

bool ForceJudgement::solve_all(const LoadCase& load, double factor, RowForces& f) {
  if (!all_) {
    all_ = std::make_unique<ForceSystem>(force_system(model_, set_.timbers, set_.rows));
    all_solver_ = std::make_unique<ActiveSetSolver>(*all_);
  }
  const CaseLoads loads = case_loads(model_, set_.timbers, load);
  Eigen::VectorXd own(static_cast<Eigen::Index>(set_.rows.size()));
  for (std::size_t i = 0; i < set_.rows.size(); ++i) own(static_cast<Eigen::Index>(i)) = f(set_.rows[i]);
  if (was_ != nullptr)
    all_solver_->set_soft(load.kind == LoadKind::kPush ? soft_of(*all_, own)
                                                       : std::vector<double>(set_.rows.size(), 1));
  Feasibility found = all_solver_->solve(loads.fixed + factor * loads.scaled, own, all_motion_);
  verdict_.fall = found == Feasibility::kFeasible ? std::vector<TimberMotion>{} : motions_of(set_.timbers, all_motion_);
  if (found != Feasibility::kFeasible) all_motion_ = MotionVector();
  if (found == Feasibility::kUndecided) {
    if (!program_) program_ = std::make_unique<LoadFactorProgram>(*all_);
    // At this very factor: forces at a larger one are no proof of what is built on them.
    const CaseLoads exact{loads.fixed + factor * loads.scaled, Loads::Zero(loads.fixed.size())};
    const LargestFactor most = program_->solve_proven(*all_solver_, exact);
    if (most.motion.size() > 0) verdict_.fall = motions_of(set_.timbers, most.motion);
    if (most.forces.size() == own.size() && holds(*all_, exact.fixed, most.forces)) {
      own = most.forces;
      found = Feasibility::kFeasible;
      verdict_.fall.clear();
    } else {
      verdict_.decided = most.decided;
    }
  }
  if (found == Feasibility::kFeasible) {
    for (std::size_t i = 0; i < set_.rows.size(); ++i) f(set_.rows[i]) = own(static_cast<Eigen::Index>(i));
    return true;
  }
  verdict_.holds = false;
  verdict_.factor = 0;
  verdict_.worst = load;
  return false;
}

/// The heavy case too: `f` and kMoreWeight of the weight's forces keep within the limits, or others do.
bool ForceJudgement::heavy_case(LoadCase load, const RowForces& f) {
  const bool within = std::all_of(set_.rows.begin(), set_.rows.end(), [&](int r) {
    const double rated = model_.rows[at(r)].limit;
    const double limit = rated > 0 && rated < limits::kMostForce ? rated : limits::kMostForce;
    return libm::fabs(f(r) + kMoreWeight * proof_.weight(r)) <= limit;
  });
  if (within) return true;
  load.heavy = true;
  RowForces near = f;
  return solve_all(load, 1, near);
}

void ForceJudgement::start(const RowForces* was, RowForces& f) const {
  f = RowForces::Zero(static_cast<Eigen::Index>(model_.rows.size()));
  if (was == nullptr) return;
  for (const int r : set_.rows)
    if (r < was->size()) f(r) = (*was)(r);
}

bool ForceJudgement::pushes(const Proof* was) {
  was_ = was;
  std::vector<std::unique_ptr<ForcePart>> parts;
  if (was != nullptr) {
    std::vector<int> changed;
    for (const int t : set_.timbers) {
      bool differs = !has(was->set.timbers, t);
      for (const int r : model_.touches[at(t)]) differs = differs || (!parts_.has_row(r) && has(was->set.rows, r));
      if (differs) changed.push_back(t);
    }
    if (changed.empty()) {
      // Rows were only added: the forces are what they were.
      start(&was->weight, proof_.weight);
      for (std::size_t k = 0; k < 8; ++k) start(&was->push[k], proof_.push[k]);
      return true;
    }
    std::size_t last = 0;
    const auto try_part = [&](std::vector<char> in) {
      const auto count = static_cast<std::size_t>(std::count(in.begin(), in.end(), 1));
      if (3 * last < 2 * count && 3 * count < 2 * in.size()) {
        parts.push_back(parts_.part_of(std::move(in), true));
        last = count;
      }
    };
    const std::vector<char> near = parts_.carriers_of(changed, Reach::kNear);
    try_part(near);
    try_part(parts_.grown(near));
    try_part(parts_.carriers_of(changed, Reach::kAll));
  }
  for (int k = -1; k < 8; ++k) {
    const LoadCase load{LoadKind::kPush, false, k < 0 ? 0 : k, -1, {}};
    RowForces& f = k < 0 ? proof_.weight : proof_.push[at(k)];
    const double factor = k < 0 ? 0 : 1;
    start(was == nullptr ? nullptr : k < 0 ? &was->weight : &was->push[at(k)], f);
    bool found = false;
    // A part that failed once is of no use for the other cases either.
    while (!found && !parts.empty()) {
      found = solve_part(*parts.front(), load, factor, f);
      if (!found) parts.erase(parts.begin());
    }
    if (!found && !solve_all(load, factor, f)) return false;
    if (k >= 0 && !heavy_case(load, f)) return false;
  }
  return true;
}

}  // namespace bentbook
