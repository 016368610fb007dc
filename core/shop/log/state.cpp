#include "shop/log/state.h"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

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

Place step_at(ShopState& state, const Event& e) {
  const std::uint32_t new_timber = count_of(state.timbers.size());
  const std::uint32_t timber = place_of(state, e.timber, nullptr, {new_timber, PlaceIndex::kWhole}).timber;
  if (timber == new_timber) state.timbers.push_back({e.timber, {}});
  std::vector<StepState>& steps = state.timbers[timber].steps;
  const std::uint32_t new_step = count_of(steps.size());
  const std::uint32_t step = place_of(state, e.timber, &e.step, {timber, new_step}).step;
  if (step == new_step) steps.push_back({e.step, {}});
  return {timber, step};
}

std::vector<Claim>& claims_at(ShopState& state, Place at) { return state.timbers[at.timber].steps[at.step].claims; }

/// False: the device has used that number before.
bool count(DeviceState& device, std::uint64_t sequence) {
  const bool fresh = sequence > device.last;
  if (fresh) device.last = sequence;
  if (sequence == device.whole + 1) ++device.whole;
  return fresh;
}

/// The same for many events, by device and not by time: a walk through all devices instead of a search for each event.
void count_devices(ShopState& state, std::span<const Event> events) {
  std::vector<Keyed> all;
  all.reserve(events.size());
  for (std::size_t i = 0; i < events.size(); ++i) all.push_back({events[i].device, 0, i});
  std::vector<std::size_t> twice;
  auto device = state.devices.end();
  for (const Keyed& one : in_order(std::move(all))) {
    if (device == state.devices.end() || device->first != one.first)
      device = state.devices.try_emplace(device == state.devices.end() ? state.devices.begin() : std::next(device),
                                         one.first);
    if (!count(device->second, events[one.at].sequence)) twice.push_back(one.at);
  }
  std::sort(twice.begin(), twice.end());
  state.twice.reserve(state.twice.size() + twice.size());
  for (const std::size_t at : twice) state.twice.push_back(events[at].id());
}

/// What of an event goes beside the timbers; true: nothing else does.
bool take_beside(ShopState& state, const Event& e) {
  ++state.events;
  state.digest = mixed(state.digest, digest_of(e));
  state.last_logical = e.logical;
  state.last = e.id();
  if (!is_rule(e.action)) return false;
  take_rule(state.rules, e);
  return true;
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
  if (!count(state.devices[e.device], e.sequence)) state.twice.push_back(e.id());
  if (!take_beside(state, e)) take_claim(claims_at(state, step_at(state, e)), e);
}

void apply_all(ShopState& state, std::span<const Event> events) {
  constexpr std::size_t kMany = 64;  // fewer are walked through faster than they are looked up
  std::map<std::pair<std::uint32_t, std::uint32_t>, ManyClaims> many;
  for (const Event& e : events) {
    if (take_beside(state, e)) continue;
    const Place at = step_at(state, e);
    std::vector<Claim>& claims = claims_at(state, at);
    if (claims.size() < kMany)
      take_claim(claims, e);
    else
      many[{at.timber, at.step}].take(claims, e);
  }
  for (const auto& [at, lookup] : many) lookup.sweep(claims_at(state, {at.first, at.second}));
  count_devices(state, events);
}

ShopState fold(const Log& log) {
  ShopState state;
  apply_all(state, log.events);
  return state;
}

}  // namespace bentbook
