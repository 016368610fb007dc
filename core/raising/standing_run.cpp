#include <algorithm>

#include "raising/force_cases.h"
#include "raising/mechanism.h"
#include "raising/standing.h"

namespace bentbook {

struct StandingRun::Inside {
  const StandingModel* model = nullptr;
  std::vector<char> rigid_joint;
  std::unique_ptr<Prover> prover;
};

StandingRun::StandingRun(const StandingModel& model) : inside_(std::make_unique<Inside>()) {
  inside_->model = &model;
  inside_->rigid_joint = rigid_joints(model);
  inside_->prover = std::make_unique<Prover>(model);
}
StandingRun::~StandingRun() = default;
StandingRun::StandingRun(StandingRun&&) noexcept = default;
StandingRun& StandingRun::operator=(StandingRun&&) noexcept = default;

StandingCheck StandingRun::check(std::span<const int> timbers, std::span<const int> temporaries, StandingDepth depth,
                                 std::span<const int> coming) {
  static_cast<void>(coming);
  const StandingModel& model = *inside_->model;
  StandingCheck result;
  const StandingSet set = standing_set(model, timbers, temporaries);
  const bool explain = depth == StandingDepth::kExplain;
  Mechanisms found = mechanisms_of(model, set, inside_->rigid_joint, explain);
  result.mechanisms = found.count;
  result.least_singular = found.least_pivot > 0 ? found.least_pivot : 0;
  for (auto& motions : found.modes) result.modes.push_back(name_mode(model, std::move(motions)));
  if (depth == StandingDepth::kRigid || found.count > 0 || set.timbers.empty()) return result;
  const ForceVerdict verdict = explain ? worst_case(model, set) : inside_->prover->judge(set);
  result.forces = verdict.holds;
  result.factor = verdict.factor;
  result.worst = verdict.worst;
  result.hangs_on = verdict.hangs_on;
  if (!verdict.holds) result.fall = verdict.fall;
  result.not_decided = !verdict.decided;
  return result;
}

bool StandingRun::rigid(std::span<const int> timbers, std::span<const int> temporaries) {
  return check(timbers, temporaries, StandingDepth::kRigid).mechanisms == 0;
}
bool StandingRun::stands(std::span<const int> timbers, std::span<const int> temporaries) {
  return check(timbers, temporaries, StandingDepth::kStands).stands();
}

StandingRun StandingRun::on(const StandingModel& more) const {
  StandingRun run(more);
  run.inside_->prover = std::make_unique<Prover>(more, *inside_->prover);
  return run;
}

StandingCheck check_standing(const StandingModel& model, std::span<const int> timbers, std::span<const int> temporaries,
                             StandingDepth depth, std::span<const int> coming) {
  return StandingRun(model).check(timbers, temporaries, depth, coming);
}

}  // namespace bentbook
