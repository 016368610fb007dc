#include "shop/log/state.h"

#include <algorithm>
#include <tuple>

namespace bentbook {
namespace {

using Place = PlaceIndex::Place;

std::uint64_t hash_of(std::string_view timber, const std::string* step) {
  const std::uint64_t h = text_digest(0, timber);
  return step != nullptr ? text_digest(h, *step) : h;
}

bool is_at(const ShopState& state, Place place, std::string_view timber, const std::string* step) {
  const TimberState& found = state.timbers[place.timber];
  if (found.mark != timber || (place.step == PlaceIndex::kWhole) != (step == nullptr)) return false;
  return step == nullptr || found.steps[place.step].step == *step;
}

/// The slot of this timber or step: its own, or the empty one where it would stand. There is always an empty one.
std::size_t slot_of(const ShopState& state, std::string_view timber, const std::string* step) {
  const std::size_t mask = state.places.slots.size() - 1;
  std::size_t slot = static_cast<std::size_t>(hash_of(timber, step)) & mask;
  for (;; slot = (slot + 1) & mask) {
    const std::uint32_t n = state.places.slots[slot];
    if (n == 0 || is_at(state, state.places.places[n - 1], timber, step)) return slot;
  }
}

const std::string* step_text(const ShopState& state, Place place) {
  return place.step == PlaceIndex::kWhole ? nullptr : &state.timbers[place.timber].steps[place.step].step;
}

void grow(ShopState& state) {
  PlaceIndex& index = state.places;
  if (index.slots.size() >= 2 * (index.places.size() + 2)) return;
  index.slots.assign(index.slots.empty() ? 64 : 2 * index.slots.size(), 0);
  for (std::uint32_t i = 0; i < index.places.size(); ++i) {
    const Place place = index.places[i];
    index.slots[slot_of(state, state.timbers[place.timber].mark, step_text(state, place))] = i + 1;
  }
}

/// The place, made where it is new (`fresh`); what it names must be put there before the next call.
Place place_of(ShopState& state, std::string_view timber, const std::string* step, Place fresh) {
  grow(state);
  const std::size_t slot = slot_of(state, timber, step);
  if (state.places.slots[slot] == 0) {
    state.places.places.push_back(fresh);
    state.places.slots[slot] = static_cast<std::uint32_t>(state.places.places.size());
  }
  return state.places.places[state.places.slots[slot] - 1];
}

std::uint32_t count_of(std::size_t n) { return static_cast<std::uint32_t>(n); }

StepState& step_at(ShopState& state, const Event& e) {
  const std::uint32_t new_timber = count_of(state.timbers.size());
  const std::uint32_t timber = place_of(state, e.timber, nullptr, {new_timber, PlaceIndex::kWhole}).timber;
  if (timber == new_timber) state.timbers.push_back({e.timber, {}});
  std::vector<StepState>& steps = state.timbers[timber].steps;
  const std::uint32_t new_step = count_of(steps.size());
  const std::uint32_t step = place_of(state, e.timber, &e.step, {timber, new_step}).step;
  if (step == new_step) steps.push_back({e.step, {}});
  return steps[step];
}

void count_device(ShopState& state, const Event& e) {
  auto it = std::lower_bound(state.devices.begin(), state.devices.end(), e.device,
                             [](const DeviceState& d, std::uint64_t device) { return d.device < device; });
  if (it == state.devices.end() || it->device != e.device) it = state.devices.insert(it, {e.device, 0, 0});
  if (e.sequence <= it->last)
    state.twice.push_back(e.id());
  else
    it->last = e.sequence;
  if (e.sequence == it->whole + 1) ++it->whole;
}

/// Words on a thing that has one value, so that a device's newer one stands for its older one.
bool replaces(EventAction action) {
  return action != EventAction::kHeld && action != EventAction::kReleased && action != EventAction::kNoted;
}

void claim(StepState& step, const Event& e, EventAction action) {
  if (replaces(action))
    step.claims.erase(std::remove_if(step.claims.begin(), step.claims.end(),
                                     [&](const Claim& c) { return c.action == action && c.id.device == e.device; }),
                      step.claims.end());
  step.claims.push_back({action, e.id(), e.wall, e.who, e.value, e.note});
}

void take_back(StepState& step, EventId id) {
  step.claims.erase(std::remove_if(step.claims.begin(), step.claims.end(),
                                   [&](const Claim& c) {
                                     return c.id == id && c.action != EventAction::kHeld &&
                                            c.action != EventAction::kReleased;
                                   }),
                    step.claims.end());
}

void release(StepState& step, const Event& e, EventId id) {
  const auto hold = std::find_if(step.claims.begin(), step.claims.end(),
                                 [&](const Claim& c) { return c.action == EventAction::kHeld && c.id == id; });
  if (hold == step.claims.end()) return;
  step.claims.erase(hold);
  claim(step, e, EventAction::kReleased);
}

}  // namespace

const Claim* StepState::find(EventAction action) const {
  for (const Claim& c : claims)
    if (c.action == action) return &c;
  return nullptr;
}

const StepState* TimberState::find(std::string_view step) const {
  for (const StepState& s : steps)
    if (s.step == step) return &s;
  return nullptr;
}

bool TimberState::held() const {
  return std::any_of(steps.begin(), steps.end(),
                     [](const StepState& s) { return s.find(EventAction::kHeld) != nullptr; });
}

const TimberState* ShopState::find(std::string_view mark) const {
  if (places.slots.empty()) return nullptr;
  const std::uint32_t n = places.slots[slot_of(*this, mark, nullptr)];
  return n == 0 ? nullptr : &timbers[places.places[n - 1].timber];
}

void index_state(ShopState& state) {
  state.places = {};
  for (std::uint32_t t = 0; t < state.timbers.size(); ++t) {
    const TimberState& timber = state.timbers[t];
    (void)place_of(state, timber.mark, nullptr, {t, PlaceIndex::kWhole});
    for (std::uint32_t s = 0; s < timber.steps.size(); ++s)
      (void)place_of(state, timber.mark, &timber.steps[s].step, {t, s});
  }
}

bool follows(const ShopState& state, const Event& e) {
  return std::tie(state.last_logical, state.last.device, state.last.sequence) <=
         std::tie(e.logical, e.device, e.sequence);
}

void apply(ShopState& state, const Event& e) {
  ++state.events;
  state.digest = mixed(state.digest, digest_of(e));
  state.last_logical = e.logical;
  state.last = e.id();
  count_device(state, e);
  if (is_rule(e.action)) return take_rule(state.rules, e);
  StepState& step = step_at(state, e);
  switch (e.action) {
    case EventAction::kTakenBack:
      if (const auto id = read_id(e.value)) take_back(step, *id);
      break;
    case EventAction::kReleased:
      if (const auto id = read_id(e.value)) release(step, e, *id);
      break;
    case EventAction::kMeasured: {
      claim(step, e, EventAction::kMeasured);
      const auto reading = read_reading(e.value);
      if (reading && !reading->within()) claim(step, e, EventAction::kHeld);
      break;
    }
    default:
      claim(step, e, e.action);
  }
}

ShopState fold(const Log& log) {
  ShopState state;
  for (const Event& e : log.events) apply(state, e);
  return state;
}

}  // namespace bentbook
