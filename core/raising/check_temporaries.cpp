#include "raising/check_temporaries.h"

#include <algorithm>

#include "numeric/index.h"

namespace bentbook {
namespace {

void say(OrderCheck& check, OrderFaultId id, int step, const RaisingPlan& plan, const std::vector<int>& temporaries) {
  OrderFault fault{id, step, {}, -1, 0, 0};
  for (const int i : temporaries) fault.marks.push_back(plan.temporaries[at(i)].name);
  check.faults.push_back(std::move(fault));
}

}  // namespace

void say_left_up(const RaisingPlan& plan, OrderCheck& check) {
  if (check.steps.empty() || !check.left_out.empty()) return;
  const StepCheck& last = check.steps.back();
  if (last.temporaries_after.empty()) return;
  say(check, OrderFaultId::kTemporariesLeft, -1, plan, last.temporaries_after);
  if (!last.bare) say(check, OrderFaultId::kWholeFalls, -1, plan, {});
}

void say_idle(const RaisingPlan& plan, OrderCheck& check) {
  const std::vector<StepCheck>& steps = check.steps;
  for (std::size_t s = 0; s < steps.size(); ++s) {
    if (!steps[s].bare || (s > 0 && steps[s - 1].bare)) continue;
    std::size_t end = s;
    while (end < steps.size() && steps[end].bare) ++end;
    if (end == steps.size() || !steps[end].temporaries_after.empty()) continue;
    std::vector<int> idle;
    const std::vector<int>& then = steps[end].temporaries;
    for (const int i : steps[s].temporaries_after)
      if (std::find(then.begin(), then.end(), i) != then.end()) idle.push_back(i);
    if (!idle.empty()) say(check, OrderFaultId::kTemporaryIdle, static_cast<int>(s), plan, idle);
  }
}

}  // namespace bentbook
