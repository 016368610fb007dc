#include <algorithm>

#include "numeric/index.h"
#include "raising/stability/mechanism.h"
#include "raising/stability/mode_name.h"
#include "raising/stability/prover.h"
#include "raising/stability/standing.h"

namespace bentbook {

namespace {

/// What is true whatever the forces are.
void plain_warnings(const StandingModel& model, const StandingSet& set, std::span<const int> temporaries,
                    std::span<const int> coming, StandingCheck& result) {
  for (std::size_t j = 0; j < model.joint_pinned.size(); ++j) {
    if (model.joint_pinned[j] == 0) continue;
    const int m = model.joint_member[j], r = model.joint_receiver[j];
    if (set.place[at(m)] < 0 || set.place[at(r)] < 0) continue;
    const bool comes = std::any_of(coming.begin(), coming.end(), [&](int t) { return t == m || t == r; });
    if (comes) result.warnings.push_back({StandingWarningId::kPinsNotIn, m, static_cast<int>(j), -1});
  }
  for (const int t : temporaries) {
    if (t < 0 || at(t) >= model.temporaries.size()) continue;
    const int row = model.temporary_row[at(t)];
    const Temporary& brace = model.temporaries[at(t)];
    const bool rated =
        brace.rated.count > 0 || (brace.kind == TemporaryKind::kDiagonal && model.ratings.nailed_brace.count > 0);
    const bool counts = row >= 0 && std::binary_search(set.rows.begin(), set.rows.end(), row);
    if (!counts)
      result.warnings.push_back({StandingWarningId::kLoose, -1, -1, t});
    else if (!rated)
      result.warnings.push_back({StandingWarningId::kNoRating, -1, -1, t});
  }
  const auto placed =
      std::count_if(model.bodies.begin(), model.bodies.end(), [](const StandingBody& b) { return b.placed; });
  if (!temporaries.empty() || static_cast<std::ptrdiff_t>(set.timbers.size()) < placed)
    result.warnings.push_back({StandingWarningId::kNotForNight, -1, -1, -1});
  std::vector<char> moving(model.bodies.size(), 0);
  for (const Mode& mode : result.modes)
    for (const TimberMotion& m : mode.motions) moving[at(m.timber)] = 1;
  for (const int t : coming)
    if (t >= 0 && at(t) < moving.size() && set.place[at(t)] >= 0 && (moving[at(t)] != 0 || !result.stands()))
      result.warnings.push_back({StandingWarningId::kHookStaysOn, t, -1, -1});
}

}  // namespace

struct StandingRun::Memory {
  const StandingModel* model = nullptr;
  std::vector<char> rigid_joint;
  std::unique_ptr<Prover> prover;

  /// By timber: what comes and what is joined to it; all where nothing is said to come.
  [[nodiscard]] std::vector<char> beside(const StandingSet& set, std::span<const int> coming) const {
    std::vector<char> near(model->bodies.size(), coming.empty() ? 1 : 0);
    for (const int t : coming) {
      if (t < 0 || at(t) >= near.size() || set.place[at(t)] < 0) continue;
      near[at(t)] = 1;
      for (const int r : model->touches[at(t)]) {
        const HoldRow& row = model->rows[at(r)];
        near[at(row.a)] = 1;
        if (row.b >= 0) near[at(row.b)] = 1;
      }
    }
    return near;
  }
  /// Those without one of which it falls: temporaries, and the frame's own braces one at a time. Forces are asked for
  /// only where a mechanism does not say it already, and only of temporaries beside what comes: each costs a verdict.
  void lone_braces(const StandingSet& set, std::span<const int> temporaries, std::span<const int> coming,
                   StandingCheck& result) const {
    const std::vector<char> near = beside(set, coming);
    for (const int t : temporaries) {
      if (t < 0 || at(t) >= model->temporaries.size() || model->temporary_row[at(t)] < 0) continue;
      StandingSet less = set;
      const auto row = std::lower_bound(less.rows.begin(), less.rows.end(), model->temporary_row[at(t)]);
      if (row == less.rows.end() || *row != model->temporary_row[at(t)]) continue;
      less.rows.erase(row);
      const HoldRow& hold = model->rows[at(model->temporary_row[at(t)])];
      const bool asked = near[at(hold.a)] != 0 || (hold.b >= 0 && near[at(hold.b)] != 0);
      if (mechanisms_of(*model, less, rigid_joint, false).count == 0 && (!asked || prover->judge(less).holds)) continue;
      result.warnings.push_back({StandingWarningId::kOnOneBrace, -1, -1, t});
    }
    for (const int t : set.timbers) {
      if (model->timber_kind[at(t)] != TimberKind::kBrace) continue;
      std::vector<int> timbers = set.timbers, up(temporaries.begin(), temporaries.end());
      timbers.erase(std::find(timbers.begin(), timbers.end(), t));
      if (mechanisms_of(*model, standing_set(*model, timbers, up), rigid_joint, false).count > 0)
        result.warnings.push_back({StandingWarningId::kOnOneBrace, t, -1, -1});
    }
  }
};

StandingRun::StandingRun(const StandingModel& model) : memory_(std::make_unique<Memory>()) {
  memory_->model = &model;
  memory_->rigid_joint = rigid_joints(model);
  memory_->prover = std::make_unique<Prover>(model);
}
StandingRun::~StandingRun() = default;
StandingRun::StandingRun(StandingRun&&) noexcept = default;
StandingRun& StandingRun::operator=(StandingRun&&) noexcept = default;

StandingCheck StandingRun::check(std::span<const int> timbers, std::span<const int> temporaries, StandingDepth depth,
                                 std::span<const int> coming) {
  const StandingModel& model = *memory_->model;
  StandingCheck result;
  const StandingSet set = standing_set(model, timbers, temporaries);
  const bool explain = depth == StandingDepth::kExplain;
  Mechanisms found = mechanisms_of(model, set, memory_->rigid_joint, explain);
  result.mechanisms = found.count;
  result.least_singular = found.least_pivot > 0 ? found.least_pivot : 0;
  for (auto& motions : found.modes) result.modes.push_back(name_mode(model, std::move(motions)));
  if (depth == StandingDepth::kRigid || found.count > 0 || set.timbers.empty()) {
    if (explain) plain_warnings(model, set, temporaries, coming, result);
    return result;
  }
  const ForceVerdict verdict = explain ? memory_->prover->worst(set) : memory_->prover->judge(set);
  result.forces = verdict.holds;
  result.factor = verdict.factor;
  result.worst = verdict.worst;
  result.hangs_on = verdict.hangs_on;
  if (!verdict.holds) result.fall = verdict.fall;
  result.not_decided = !verdict.decided;
  if (!explain) return result;
  plain_warnings(model, set, temporaries, coming, result);
  for (const int r : result.hangs_on)
    if (!result.forces && !model.rows[at(r)].two_way && model.rows[at(r)].joint >= 0)
      result.warnings.push_back({StandingWarningId::kOneWayOnly, model.rows[at(r)].a, model.rows[at(r)].joint, -1});
  if (result.forces) memory_->lone_braces(set, temporaries, coming, result);
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
  run.memory_->prover = std::make_unique<Prover>(more, *memory_->prover);
  return run;
}

StandingCheck check_standing(const StandingModel& model, std::span<const int> timbers, std::span<const int> temporaries,
                             StandingDepth depth, std::span<const int> coming) {
  return StandingRun(model).check(timbers, temporaries, depth, coming);
}

}  // namespace bentbook
