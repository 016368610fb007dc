#include "shop/progress.h"

#include <algorithm>

#include "numeric/libm.h"
#include "shop/limits.h"
#include "shop/log/conflicts.h"

namespace bentbook {
namespace {

bool same(const StepNumber& a, const StepNumber& b) {
  return a.from == b.from &&
         libm::fabs(a.value - b.value) <= (is_degrees(a.name) ? limits::kSameDegrees : limits::kSameInches);
}

/// The n-th number of that name.
const StepNumber* find_number(std::span<const StepNumber> numbers, StepNumberName name, int n) {
  for (const StepNumber& number : numbers)
    if (number.name == name && n-- == 0) return &number;
  return nullptr;
}

/// How many numbers before this one have its name.
int place_of(std::span<const StepNumber> numbers, const StepNumber& number) {
  return static_cast<int>(
      std::count_if(numbers.data(), &number, [&](const StepNumber& n) { return n.name == number.name; }));
}

StepFlag flag_of(const std::string& step, StepNumberName name, const StepNumber* was, const StepNumber* now,
                 EventId id) {
  const auto value = [](const StepNumber* n) { return n != nullptr ? std::optional(n->value) : std::nullopt; };
  return {step, false, name, value(was), value(now), id};
}

void compare(const WorkStep& step, const Claim& finish, std::vector<StepFlag>& flags) {
  const std::vector<StepNumber> was = read_numbers(finish.value);
  if (was.empty()) return;  // finished with no numbers kept: nothing to compare
  for (const StepNumber& now : step.numbers) {
    if (now.follows) continue;
    const StepNumber* old = find_number(was, now.name, place_of(step.numbers, now));
    // Of many bores the value held no more.
    if (old == nullptr && (now.name == StepNumberName::kAt || now.name == StepNumberName::kOff)) continue;
    if (old == nullptr || !same(*old, now)) flags.push_back(flag_of(step.id, now.name, old, &now, finish.id));
  }
  for (const StepNumber& old : was)
    if (find_number(step.numbers, old.name, place_of(was, old)) == nullptr)
      flags.push_back(flag_of(step.id, old.name, &old, nullptr, finish.id));
}

/// Names that numbers had before every setting was a step.
StepNumberName name_now(const WorkStep& step, StepNumberName name) {
  const bool gone = find_number(step.numbers, name, 0) == nullptr;
  if (name == StepNumberName::kFrom && gone) return StepNumberName::kAt;
  if (name == StepNumberName::kAcross && gone) return StepNumberName::kWidth;
  return name;
}

/// An event that names no face is older than the settings: what it says must be a number of one of the steps that it
/// stands for now, the others say what it did not.
void compare_older(std::span<const WorkStep* const> steps, const Claim& finish, std::vector<StepFlag>& flags) {
  for (const StepNumber& old : read_numbers(finish.value)) {
    const WorkStep* first = nullptr;
    const StepNumber* differs = nullptr;
    bool found = false;
    for (const WorkStep* step : steps)
      for (const StepNumber& now : step->numbers) {
        if (now.name != name_now(*step, old.name)) continue;
        found = found || same({now.name, old.value, now.from}, now);
        if (differs == nullptr) first = step, differs = &now;
      }
    if (!found && differs != nullptr) flags.push_back(flag_of(first->id, differs->name, &old, differs, finish.id));
  }
}

bool names_face(const Claim& finish) { return finish.value.starts_with("face="); }

/// The steps that an event's id stands for: the one of this id, or those that were one step in older logs.
std::vector<const WorkStep*> find_steps(std::span<const WorkStep> steps, std::string_view id) {
  std::vector<const WorkStep*> found;
  for (const WorkStep& step : steps)
    if (step.id == id || std::find(step.was.begin(), step.was.end(), id) != step.was.end()) found.push_back(&step);
  return found;
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
    const std::vector<const WorkStep*> found = find_steps(steps, finished.step);
    if (found.empty())
      flags.push_back({finished.step, true, {}, std::nullopt, std::nullopt, finish->id});
    else if (found.size() == 1 && found[0]->id == finished.step && (names_face(*finish) || !found[0]->face_up()))
      compare(*found[0], *finish, flags);
    else
      compare_older(found, *finish, flags);
  }
  return flags;
}

bool finished(const WorkStep& step, const TimberState& state) {
  const auto has = [&](const std::string& id) {
    const StepState* known = state.find(id);
    return known != nullptr && finish_of(*known) != nullptr;
  };
  return has(step.id) || (!step.was.empty() && std::all_of(step.was.begin(), step.was.end(), has));
}

std::vector<StepClaim> finishes_of(const WorkStep& step, const TimberState* state) {
  std::vector<StepClaim> out;
  if (state == nullptr || !finished(step, *state)) return out;
  std::vector<std::string_view> ids{step.id};
  ids.insert(ids.end(), step.was.begin(), step.was.end());
  for (const std::string_view id : ids)
    if (const StepState* known = state->find(id); known != nullptr)
      for (const Claim& claim : known->claims)
        if (claim.action == EventAction::kDone) out.push_back({id, &claim});
  return out;
}

TimberProgress progress_of(std::span<const WorkStep> steps, const TimberState* state) {
  TimberProgress progress;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const bool done = state != nullptr && finished(steps[i], *state);
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

std::optional<PlateTrouble> plate_trouble(const ShopState& state, std::string_view mark,
                                          std::span<const WorkStep> steps, const WorkStep& step) {
  const WorkStep* seat = plate_step(steps, step);
  const TimberState* timber = state.find(mark);
  const StepState* told = seat == nullptr || timber == nullptr ? nullptr : timber->find(seat->id);
  if (told == nullptr) return {};
  if (const Claim* in_hand = told->find(EventAction::kPaired)) {
    const PairingAnswer answer = check_pairing(state, mark, seat->id, in_hand->value);
    if (answer.pairing == Pairing::kOther)
      return PlateTrouble{false, in_hand->value, answer.recorded, answer.other_timber};
  }
  if (const Claim* plate = told->find(EventAction::kPlate)) {
    const PairingAnswer answer = check_pairing(state, mark, seat->id, plate->value);
    if (!answer.other_timber.empty()) return PlateTrouble{true, plate->value, plate->value, answer.other_timber};
  }
  return {};
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
