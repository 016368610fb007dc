#include "raising/lists.h"

#include <algorithm>

#include "frame/facts.h"
#include "numeric/index.h"
#include "raising/lifting/pick.h"
#include "raising/order.h"
#include "raising/temporary_line.h"

namespace bentbook {
namespace {

/// All that has still to come, the first wanted first.
std::vector<LoadedTimber> wanted(const Frame& frame, const RaisingPlan& plan) {
  const std::vector<PickBody> bodies = pick_bodies(frame, plan);
  std::vector<LoadedTimber> found;
  std::vector<char> seen(frame.timbers.size(), 0);
  const auto add = [&](int timber, int step) {
    const auto t = static_cast<std::size_t>(timber);
    const double weight = bodies[t].weight_lb, length = frame.timbers[t].length;
    found.push_back({timber, step, weight, length, length > plan.truck.length.in(), weight > plan.truck.carries.lb()});
  };
  for (std::size_t s = 0; s < plan.steps.size(); ++s) {
    for (const std::string& mark : marks_in(plan.steps[s])) {
      const int timber = timber_by_mark(frame, mark);
      if (timber < 0 || seen[static_cast<std::size_t>(timber)] != 0) continue;
      seen[static_cast<std::size_t>(timber)] = 1;
      if (!plan.steps[s].done) add(timber, static_cast<int>(s));
    }
  }
  for (std::size_t t = 0; t < seen.size(); ++t)
    if (seen[t] == 0) add(static_cast<int>(t), -1);
  return found;
}

}  // namespace

std::vector<TruckLoad> truck_loads(const Frame& frame, const RaisingPlan& plan) {
  std::vector<TruckLoad> loads;
  for (const LoadedTimber& timber : wanted(frame, plan)) {
    if (loads.empty() || loads.back().weight_lb + timber.weight_lb > plan.truck.carries.lb()) loads.emplace_back();
    TruckLoad& load = loads.back();
    load.timbers.push_back(timber);
    load.weight_lb += timber.weight_lb;
    load.longest = std::max(load.longest, timber.length);
  }
  for (TruckLoad& load : loads) std::reverse(load.timbers.begin(), load.timbers.end());
  return loads;
}

std::vector<double> weights_of(const std::vector<LoadedTimber>& timbers) {
  std::vector<double> weights;
  weights.reserve(timbers.size());
  for (const LoadedTimber& t : timbers) weights.push_back(t.weight_lb);
  return weights;
}

std::vector<LayDownStack> lay_down(const Frame& frame, const RaisingPlan& plan) {
  std::vector<LayDownStack> stacks;
  for (const LoadedTimber& timber : wanted(frame, plan)) {
    const int day = timber.step < 0 ? 0 : plan.steps[static_cast<std::size_t>(timber.step)].day;
    auto stack = std::find_if(stacks.begin(), stacks.end(), [&](const LayDownStack& s) { return s.day == day; });
    if (stack == stacks.end()) {
      stacks.push_back({day, {}, 0});
      stack = stacks.end() - 1;
    }
    stack->timbers.push_back(timber);
    stack->weight_lb += timber.weight_lb;
  }
  for (LayDownStack& stack : stacks) std::reverse(stack.timbers.begin(), stack.timbers.end());
  return stacks;
}

std::vector<TemporaryTime> temporary_times(const Frame& frame, const RaisingPlan& plan) {
  std::vector<TemporaryTime> times;
  for (std::size_t s = 0; s < plan.steps.size(); ++s) {
    for (const std::string& name : plan.steps[s].put_up)
      for (std::size_t i = 0; i < plan.temporaries.size(); ++i) {
        if (plan.temporaries[i].name != name) continue;
        const auto line = temporary_line(frame, plan.temporaries[i]);
        times.push_back({static_cast<int>(i), static_cast<int>(s), -1, line ? norm(line->to - line->from) : 0});
      }
    for (const std::string& name : plan.steps[s].take_out)
      for (TemporaryTime& time : times)
        if (time.to < 0 && plan.temporaries[at(time.temporary)].name == name) time.to = static_cast<int>(s);
  }
  return times;
}

int most_temporaries_up(const RaisingPlan& plan) {
  int up = 0, most = 0;
  for (const RaisingStep& step : plan.steps) {
    up += static_cast<int>(step.put_up.size());
    most = std::max(most, up);
    up -= static_cast<int>(step.take_out.size());
  }
  return most;
}

}  // namespace bentbook
