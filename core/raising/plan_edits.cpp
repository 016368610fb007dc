#include "raising/plan_edits.h"

#include <utility>

#include "frame/joints/joint_table.h"
#include "numeric/sorting.h"
#include "raising/order.h"

namespace bentbook {
std::vector<std::string> marks_left(const Frame& frame, const RaisingPlan& plan) {
  std::vector<std::string> brought;
  for (const RaisingStep& step : plan.steps)
    for (std::string& mark : marks_in(step)) brought.push_back(std::move(mark));
  sort_up(brought);
  std::vector<std::string> left;
  for (const Timber& timber : frame.timbers)
    if (timber.placed && !std::binary_search(brought.begin(), brought.end(), timber.mark)) left.push_back(timber.mark);
  return left;
}

void add_step(RaisingPlan& plan, std::vector<std::string> marks) {
  RaisingStep step;
  step.marks = std::move(marks);
  if (!plan.steps.empty()) step.day = plan.steps.back().day;
  plan.steps.push_back(std::move(step));
}

void toggle_name(std::vector<std::string>& names, std::string_view name) {
  const auto it = std::find(names.begin(), names.end(), name);
  if (it == names.end())
    names.emplace_back(name);
  else
    names.erase(it);
}

std::string free_temporary_name(const RaisingPlan& plan) {
  for (int n = 1;; ++n) {
    std::string name = "T" + std::to_string(n);
    const bool taken = std::any_of(plan.temporaries.begin(), plan.temporaries.end(),
                                   [&](const Temporary& t) { return t.name == name; });
    if (!taken) return name;
  }
}

Temporary* find_temporary(RaisingPlan& plan, std::string_view name) {
  const auto it = std::find_if(plan.temporaries.begin(), plan.temporaries.end(),
                               [&](const Temporary& t) { return t.name == name; });
  return it == plan.temporaries.end() ? nullptr : &*it;
}

void drop_temporary(RaisingPlan& plan, std::string_view name) {
  std::erase_if(plan.temporaries, [&](const Temporary& t) { return t.name == name; });
  for (RaisingStep& step : plan.steps) {
    std::erase(step.put_up, name);
    std::erase(step.take_out, name);
  }
}

void take_braces(RaisingPlan& plan, int step, const std::vector<Temporary>& braces) {
  for (Temporary brace : braces) {
    brace.name = free_temporary_name(plan);
    plan.steps[static_cast<std::size_t>(step)].put_up.push_back(brace.name);
    plan.temporaries.push_back(std::move(brace));
  }
}

HoldChange& hold_change(RaisingPlan& plan, JointKind joint) {
  for (HoldChange& h : plan.holds)
    if (h.joint == joint) return h;
  return plan.holds.emplace_back(HoldChange{joint, false, false, false, {}});
}

void drop_hold_change(RaisingPlan& plan, JointKind joint) {
  std::erase_if(plan.holds, [&](const HoldChange& h) { return h.joint == joint; });
}

}  // namespace bentbook
