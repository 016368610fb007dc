#include "shop/progress.h"

#include <algorithm>

#include "numeric/libm.h"
#include "shop/limits.h"

namespace bentbook {
namespace {

const StepNumber* find_number(std::span<const StepNumber> numbers, StepNumberName name) {
  for (const StepNumber& n : numbers)
    if (n.name == name) return &n;
  return nullptr;
}

bool same(const StepNumber& a, const StepNumber& b) {
  return libm::fabs(a.value - b.value) <= (is_degrees(a.name) ? limits::kSameDegrees : limits::kSameInches);
}

void compare(const WorkStep& step, const Claim& finish, std::vector<StepFlag>& flags) {
  const std::vector<StepNumber> was = read_numbers(finish.value);
  if (was.empty()) return;  // finished with no numbers kept: nothing to compare
  for (const StepNumber& now : step.numbers) {
    const StepNumber* old = find_number(was, now.name);
    if (old != nullptr && same(*old, now)) continue;
    flags.push_back(
        {step.id, false, now.name, old != nullptr ? std::optional(old->value) : std::nullopt, now.value, finish.id});
  }
  for (const StepNumber& old : was)
    if (find_number(step.numbers, old.name) == nullptr)
      flags.push_back({step.id, false, old.name, old.value, std::nullopt, finish.id});
}

const WorkStep* find_step(std::span<const WorkStep> steps, std::string_view id) {
  for (const WorkStep& step : steps)
    if (step.id == id) return &step;
  return nullptr;
}

/// What a device finished last: of several the newest numbers count.
const Claim* finish_of(const StepState& step) {
  const Claim* last = nullptr;
  for (const Claim& c : step.claims)
    if (c.action == EventAction::kDone) last = &c;
  return last;
}

}  // namespace

std::vector<StepFlag> flags_of(std::span<const WorkStep> steps, const TimberState* state) {
  std::vector<StepFlag> flags;
  if (state == nullptr) return flags;
  for (const StepState& finished : state->steps) {
    const Claim* finish = finish_of(finished);
    if (finish == nullptr) continue;
    const WorkStep* step = find_step(steps, finished.step);
    if (step != nullptr)
      compare(*step, *finish, flags);
    else
      flags.push_back({finished.step, true, {}, std::nullopt, std::nullopt, finish->id});
  }
  return flags;
}

TimberProgress progress_of(std::span<const WorkStep> steps, const TimberState* state) {
  TimberProgress progress;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const StepState* known = state != nullptr ? state->find(steps[i].id) : nullptr;
    const bool done = known != nullptr && finish_of(*known) != nullptr;
    TickCount& count = progress.ticks[static_cast<std::size_t>(steps[i].tick)];
    ++count.steps;
    count.done += done ? 1 : 0;
    progress.done.push_back(done);
    if (!done && progress.next < 0) progress.next = static_cast<int>(i);
  }
  progress.held = state != nullptr && state->held();
  progress.flags = flags_of(steps, state);
  return progress;
}

std::vector<Event> tick_events(std::string_view mark, std::span<const WorkStep> steps, const TimberProgress& progress,
                               Tick tick) {
  std::vector<Event> events;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (steps[i].tick != tick || progress.done[i]) continue;
    Event& event = events.emplace_back();
    event.timber = mark;
    event.step = steps[i].id;
    event.value = numbers_text(steps[i].numbers);
  }
  return events;
}

}  // namespace bentbook
