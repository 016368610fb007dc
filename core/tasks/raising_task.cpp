#include "tasks/raising_task.h"

#include <algorithm>
#include <utility>

#include "numeric/sorting.h"

namespace bentbook {

struct RaisingTasks::Kept {
  std::shared_ptr<const Frame> frame;
  std::unique_ptr<Blocking> blocking;
  std::unique_ptr<RaisingPlan> judged;  ///< the judge's own
  std::unique_ptr<Judge> judge;
  std::optional<OrderCheck> check;
  RaisingPlan checked;  ///< the plan that `check` is of

  void take(const RaisingCase& next) {
    if (frame == nullptr || !(frame == next.frame || *frame == *next.frame)) {
      judge.reset();
      check.reset();
      frame = next.frame;
      blocking = std::make_unique<Blocking>(*frame);
    }
    if (judge == nullptr || !same_judgement(*judged, next.plan)) {
      judge.reset();
      check.reset();
      judged = std::make_unique<RaisingPlan>(next.plan);
      judge = make_judge(*frame, *judged);
    }
  }

  const OrderCheck& checked_order(const RaisingPlan& plan) {
    check = check ? check_order_again(*frame, plan, *judge, *blocking, *check, checked)
                  : check_order(*frame, plan, *judge, *blocking);
    checked = plan;
    return *check;
  }
};

RaisingTasks::RaisingTasks() : kept_(std::make_unique<Kept>()) {}
RaisingTasks::~RaisingTasks() = default;

OrderCheck RaisingTasks::check(const CheckRequest& request) {
  kept_->take(request.of);
  return kept_->checked_order(request.of.plan);
}

Result<StepExplained> RaisingTasks::explain(const ExplainRequest& request) {
  kept_->take(request.of);
  const OrderCheck& order = kept_->checked_order(request.of.plan);
  if (request.step < 0 || static_cast<std::size_t>(request.step) >= order.steps.size())
    return fail(ErrorCode::kTooLarge, "step");
  const StepCheck& step = order.steps[static_cast<std::size_t>(request.step)];
  Judge& judge = *kept_->judge;
  StepExplained out;
  out.step = request.step;
  std::vector<int> timbers = step.stood;
  timbers.insert(timbers.end(), step.timbers.begin(), step.timbers.end());
  sort_up(timbers);
  out.standing = judge.check(timbers, step.temporaries, step.timbers, StandingDepth::kExplain);
  out.standing.hangs_on.clear();
  if (out.standing.stands()) return out;
  for (const int t : judge.propose(timbers, step.temporaries)) {
    out.braces.push_back(judge.temporaries()[static_cast<std::size_t>(t)]);
    out.braces.back().name.clear();
  }
  return out;
}

FoundOrder RaisingTasks::search(const SearchRequest& request, const Progress& progress) {
  kept_->take(request.of);
  SearchOptions options;
  options.seed = request.seed;
  options.steps = options.improving = request.tries;
  options.improve = request.further;
  const RaisingPlan& plan = request.of.plan;
  // A judge of its own: it numbers what it proposes.
  const std::unique_ptr<Judge> own = make_judge(*kept_->frame, plan);
  return search_order(*kept_->frame, plan, *own, *kept_->blocking, options, [&](const SearchProgress& p) {
    const int part = p.found ? 500 + 500 * std::min(p.tried, options.steps) / std::max(1, options.steps)
                             : 500 * p.placed / std::max(1, p.pieces);
    return !progress || progress(std::min(part, 999));
  });
}

// Built in their place: gcc 12 takes a part of the one that is moved from for not initialized.
Result<TaskAnswer> RaisingTasks::run(const TaskRequest& request, const Progress& progress) {
  if (const auto* to_check = std::get_if<CheckRequest>(&request))
    return Result<TaskAnswer>(tl::in_place, check(*to_check));
  if (const auto* to_search = std::get_if<SearchRequest>(&request))
    return Result<TaskAnswer>(tl::in_place, search(*to_search, progress));
  const auto* to_explain = std::get_if<ExplainRequest>(&request);
  if (to_explain == nullptr) return fail(ErrorCode::kUnknownOption, "task");
  return explain(*to_explain).map([](StepExplained&& step) { return TaskAnswer(std::move(step)); });
}

}  // namespace bentbook
