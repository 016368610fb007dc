#include "shop/state.h"

#include <algorithm>
#include <tuple>

namespace bentbook {
namespace {

std::string place_key(std::string_view timber, std::string_view step) {
  std::string key;
  key.reserve(timber.size() + step.size() + 1);
  key += timber;
  key += '\t';
  key += step;
  return key;
}

ShopState::Place timber_place(ShopState& state, const std::string& mark) {
  const auto [it, fresh] =
      state.places.try_emplace(mark, ShopState::Place{static_cast<std::uint32_t>(state.timbers.size()), 0});
  if (fresh) state.timbers.push_back({mark, {}});
  return it->second;
}

StepState& step_at(ShopState& state, const Event& e) {
  std::string key = place_key(e.timber, e.step);
  const auto known = state.places.find(key);
  if (known != state.places.end()) return state.timbers[known->second.timber].steps[known->second.step];
  const ShopState::Place place = timber_place(state, e.timber);
  std::vector<StepState>& steps = state.timbers[place.timber].steps;
  state.places.emplace(std::move(key), ShopState::Place{place.timber, static_cast<std::uint32_t>(steps.size())});
  steps.push_back({e.step, {}});
  return steps.back();
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
bool replaces(Action action) {
  return action != Action::kHeld && action != Action::kReleased && action != Action::kNoted;
}

void claim(StepState& step, const Event& e, Action action) {
  if (replaces(action))
    step.claims.erase(std::remove_if(step.claims.begin(), step.claims.end(),
                                     [&](const Claim& c) { return c.action == action && c.id.device == e.device; }),
                      step.claims.end());
  step.claims.push_back({action, e.id(), e.wall, e.who, e.value, e.note});
}

void take_back(StepState& step, EventId id) {
  step.claims.erase(std::remove_if(step.claims.begin(), step.claims.end(),
                                   [&](const Claim& c) {
                                     return c.id == id && c.action != Action::kHeld && c.action != Action::kReleased;
                                   }),
                    step.claims.end());
}

void release(StepState& step, const Event& e, EventId id) {
  const auto hold = std::find_if(step.claims.begin(), step.claims.end(),
                                 [&](const Claim& c) { return c.action == Action::kHeld && c.id == id; });
  if (hold == step.claims.end()) return;
  step.claims.erase(hold);
  claim(step, e, Action::kReleased);
}

}  // namespace

const Claim* StepState::find(Action action) const {
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
  return std::any_of(steps.begin(), steps.end(), [](const StepState& s) { return s.find(Action::kHeld) != nullptr; });
}

const TimberState* ShopState::find(std::string_view mark) const {
  const auto it = places.find(std::string(mark));
  return it == places.end() ? nullptr : &timbers[it->second.timber];
}

void index_state(ShopState& state) {
  state.places.clear();
  for (std::uint32_t t = 0; t < state.timbers.size(); ++t) {
    const TimberState& timber = state.timbers[t];
    state.places.emplace(timber.mark, ShopState::Place{t, 0});
    for (std::uint32_t s = 0; s < timber.steps.size(); ++s)
      state.places.emplace(place_key(timber.mark, timber.steps[s].step), ShopState::Place{t, s});
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
    case Action::kTakenBack:
      if (const auto id = read_id(e.value)) take_back(step, *id);
      break;
    case Action::kReleased:
      if (const auto id = read_id(e.value)) release(step, e, *id);
      break;
    case Action::kMeasured: {
      claim(step, e, Action::kMeasured);
      const auto reading = read_reading(e.value);
      if (reading && !reading->within()) claim(step, e, Action::kHeld);
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
