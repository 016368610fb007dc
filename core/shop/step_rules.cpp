#include "shop/step_rules.h"

#include <algorithm>

#include "frame/keys.h"
#include "shop/log/record.h"

namespace bentbook {
namespace {

using Steps = std::vector<WorkStep>;

/// One past the last step that goes by this word; the list's own size where none does.
std::size_t after_last(const Steps& steps, std::string_view word) {
  for (std::size_t i = steps.size(); i-- > 0;)
    if (steps[i].word == word) return i + 1;
  return steps.size();
}

std::size_t after_tick(const Steps& steps, Tick tick) {
  for (std::size_t i = steps.size(); i-- > 0;)
    if (steps[i].tick == tick) return i + 1;
  return steps.size();
}

void add(Steps& steps, const Rule& rule) {
  const auto added = read_added(rule.value);
  if (!added) return;
  WorkStep step;
  step.id = step.word = rule.step;
  step.work = StepWork::kOwn;
  step.tick = added->tick;
  step.place = added->place;
  step.name = rule.note;
  const std::size_t at = added->after == "-" ? after_tick(steps, step.tick) : after_last(steps, added->after);
  steps.insert(steps.begin() + static_cast<std::ptrdiff_t>(at), std::move(step));
}

void move(Steps& steps, const Rule& rule) {
  if (rule.value == rule.step) return;
  const auto is_it = [&](const WorkStep& s) { return s.word == rule.step; };
  Steps moved;
  std::copy_if(steps.begin(), steps.end(), std::back_inserter(moved), is_it);
  Steps rest;
  std::copy_if(steps.begin(), steps.end(), std::back_inserter(rest), [&](const WorkStep& s) { return !is_it(s); });
  std::size_t at = 0;
  if (rule.value != "-") {
    at = after_last(rest, rule.value);
    if (at == 0 || rest[at - 1].word != rule.value) return;  // comes after nothing that is there
  }
  rest.insert(rest.begin() + static_cast<std::ptrdiff_t>(at), moved.begin(), moved.end());
  steps = std::move(rest);
}

Length wanted_of(const WorkStep& step) {
  for (const StepNumber& n : step.numbers)
    if (!is_degrees(n.name)) return Length::from_inches(n.value);
  return {};
}

void ask(Steps& steps, const Rule& rule) {
  const auto count = read_decimal(rule.value);
  for (WorkStep& step : steps) {
    if (step.word != rule.step) continue;
    step.tolerance = count ? std::optional(Length{static_cast<std::int64_t>(*count)}) : std::nullopt;
    step.wanted = wanted_of(step);
  }
}

void use(Steps& steps, const Rule& rule) {
  switch (rule.action) {
    case EventAction::kStepAdded:
      return add(steps, rule);
    case EventAction::kStepMoved:
      return move(steps, rule);
    case EventAction::kStepAsks:
      return ask(steps, rule);
    case EventAction::kStepRenamed:
      for (WorkStep& step : steps)
        if (step.word == rule.step && !(step.work == StepWork::kOwn && rule.note.empty())) step.name = rule.note;
      return;
    default:
      return;
  }
}

}  // namespace

std::vector<WorkStep> with_rules(std::vector<WorkStep> steps, TimberKind kind, std::span<const Rule> rules) {
  const std::string_view word = keys::word(keys::kTimberKind, kind);
  // What was added is there before it is moved, renamed or asked, whatever came first in the log; dropping comes last.
  for (const Rule& rule : rules)
    if (rule.kind == word && rule.action == EventAction::kStepAdded) use(steps, rule);
  for (const Rule& rule : rules)
    if (rule.kind == word && rule.action != EventAction::kStepAdded) use(steps, rule);
  for (const Rule& rule : rules)
    if (rule.kind == word && rule.action == EventAction::kStepDropped)
      steps.erase(std::remove_if(steps.begin(), steps.end(), [&](const WorkStep& s) { return s.word == rule.step; }),
                  steps.end());
  return steps;
}

}  // namespace bentbook
