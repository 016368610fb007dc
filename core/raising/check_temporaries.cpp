#include "raising/check_temporaries.h"

#include <algorithm>
#include <map>

#include "frame/facts.h"
#include "numeric/index.h"
#include "raising/order.h"

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

void say_idle(const Frame& frame, const RaisingPlan& plan, std::span<const int> step_of, OrderCheck& check) {
  const std::vector<StepCheck>& steps = check.steps;
  for (std::size_t s = 0; s < steps.size(); ++s) {
    if (!steps[s].bare || (s > 0 && steps[s - 1].bare)) continue;
    std::size_t end = s;
    while (end < steps.size() && steps[end].bare) ++end;
    if (end == steps.size() || !steps[end].temporaries_after.empty()) continue;
    std::map<int, std::vector<int>> idle;  // by the step from which on
    const std::vector<int>& then = steps[end].temporaries;
    for (const int i : steps[s].temporaries_after) {
      const int from = std::max(static_cast<int>(s), step_of_plate(frame, plan.temporaries[at(i)], step_of));
      if (from < static_cast<int>(end) && std::find(then.begin(), then.end(), i) != then.end()) idle[from].push_back(i);
    }
    for (const auto& [from, temporaries] : idle) say(check, OrderFaultId::kTemporaryIdle, from, plan, temporaries);
  }
}

int step_of_plate(const Frame& frame, const Temporary& temporary, std::span<const int> step_of) {
  int step = -1;
  for (const std::string& mark : {temporary.from.mark, temporary.to.mark}) {
    const int post = mark.empty() ? -1 : timber_by_mark(frame, mark);
    if (post < 0 || frame.timbers[at(post)].kind != TimberKind::kPost) continue;
    int first = -1;
    for (const int j : joints_of(frame, post)) {
      const Joint& joint = frame.joints[at(j)];
      if (joint.meeting != Meeting::kPostTop || joint.member != post) continue;
      const int comes = step_of[at(joint.receiver)];
      if (comes >= 0 && (first < 0 || comes < first)) first = comes;
    }
    step = std::max(step, first);
  }
  return step;
}

void keep_until_plates(const Frame& frame, RaisingPlan& plan) {
  std::vector<int> step_of(frame.timbers.size(), -1);
  for (std::size_t s = 0; s < plan.steps.size(); ++s)
    for (const int t : timbers_of(frame, marks_in(plan.steps[s]))) step_of[at(t)] = static_cast<int>(s);
  for (std::size_t s = 0; s < plan.steps.size(); ++s) {
    if (plan.steps[s].done) continue;
    for (const std::string& name : std::vector<std::string>(plan.steps[s].take_out)) {
      const auto is_it = [&](const Temporary& t) { return t.name == name; };
      const auto it = std::find_if(plan.temporaries.begin(), plan.temporaries.end(), is_it);
      const int stays = it == plan.temporaries.end() ? -1 : step_of_plate(frame, *it, step_of);
      if (stays <= static_cast<int>(s)) continue;
      std::erase(plan.steps[s].take_out, name);
      bool goes_up_again = false;  // and is taken out after that
      for (std::size_t k = s + 1; k <= at(stays); ++k) {
        if (std::erase(plan.steps[k].put_up, name) > 0) goes_up_again = true;
        if (std::erase(plan.steps[k].take_out, name) > 0) goes_up_again = false;
      }
      if (!goes_up_again) plan.steps[at(stays)].take_out.push_back(name);
    }
  }
}

}  // namespace bentbook
