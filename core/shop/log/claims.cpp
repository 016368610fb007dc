#include "shop/log/claims.h"

#include <algorithm>

namespace bentbook {
namespace {

/// Words on a thing that has one value, so that a device's newer one stands for its older one.
bool replaces(EventAction action) {
  return action != EventAction::kHeld && action != EventAction::kReleased && action != EventAction::kNoted;
}

/// A hold ends by a release alone, and a release stays.
bool can_be_taken_back(EventAction action) { return action != EventAction::kHeld && action != EventAction::kReleased; }

Claim claim_of(const Event& e, EventAction action) { return {action, e.id(), e.wall, e.who, e.value, e.note}; }

bool holds_the_timber(const Event& e) {
  if (e.action != EventAction::kMeasured) return false;
  const auto reading = read_reading(e.value);
  return reading && !reading->within();
}

void put(std::vector<Claim>& claims, const Event& e, EventAction action) {
  if (replaces(action))
    std::erase_if(claims, [&](const Claim& c) { return c.action == action && c.id.device == e.device; });
  claims.push_back(claim_of(e, action));
}

void take_back(std::vector<Claim>& claims, EventId id) {
  std::erase_if(claims, [&](const Claim& c) { return c.id == id && can_be_taken_back(c.action); });
}

void release(std::vector<Claim>& claims, const Event& e, EventId id) {
  const auto hold = std::find_if(claims.begin(), claims.end(),
                                 [&](const Claim& c) { return c.action == EventAction::kHeld && c.id == id; });
  if (hold == claims.end()) return;
  claims.erase(hold);
  put(claims, e, EventAction::kReleased);
}

std::pair<std::uint64_t, std::uint64_t> word_key(EventAction action, std::uint64_t device) {
  return {static_cast<std::uint64_t>(action), device};
}
std::pair<std::uint64_t, std::uint64_t> event_key(EventId id) { return {id.device, id.sequence}; }

}  // namespace

void take_claim(std::vector<Claim>& claims, const Event& e) {
  if (e.action == EventAction::kTakenBack) {
    if (const auto id = read_id(e.value)) take_back(claims, *id);
  } else if (e.action == EventAction::kReleased) {
    if (const auto id = read_id(e.value)) release(claims, e, *id);
  } else {
    put(claims, e, e.action);
    if (holds_the_timber(e)) put(claims, e, EventAction::kHeld);
  }
}

ManyClaims::ManyClaims(const std::vector<Claim>& claims) : ended_(claims.size()) {
  for (std::size_t i = 0; i < claims.size(); ++i) note(claims[i], i);
}

void ManyClaims::note(const Claim& claim, std::size_t at) {
  if (replaces(claim.action)) words_.emplace(word_key(claim.action, claim.id.device), at);
  if (can_be_taken_back(claim.action)) events_.emplace(event_key(claim.id), at);
  if (claim.action == EventAction::kHeld) holds_.emplace(event_key(claim.id), at);
}

void ManyClaims::end_all(Places& places, std::pair<std::uint64_t, std::uint64_t> key) {
  const auto [from, to] = places.equal_range(key);
  for (auto it = from; it != to; ++it) ended_[it->second] = true;
  places.erase(from, to);
}

void ManyClaims::put(std::vector<Claim>& claims, const Event& e, EventAction action) {
  if (replaces(action)) end_all(words_, word_key(action, e.device));
  claims.push_back(claim_of(e, action));
  ended_.push_back(false);
  note(claims.back(), claims.size() - 1);
}

void ManyClaims::take(std::vector<Claim>& claims, const Event& e) {
  if (e.action == EventAction::kTakenBack) {
    if (const auto id = read_id(e.value)) end_all(events_, event_key(*id));
  } else if (e.action == EventAction::kReleased) {
    const auto id = read_id(e.value);
    const auto hold = id ? holds_.lower_bound(event_key(*id)) : holds_.end();
    if (hold == holds_.end() || hold->first != event_key(*id)) return;
    ended_[hold->second] = true;
    holds_.erase(hold);
    put(claims, e, EventAction::kReleased);
  } else {
    put(claims, e, e.action);
    if (holds_the_timber(e)) put(claims, e, EventAction::kHeld);
  }
}

void ManyClaims::sweep(std::vector<Claim>& claims) const {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < claims.size(); ++i) {
    if (ended_[i]) continue;
    if (kept != i) claims[kept] = std::move(claims[i]);
    ++kept;
  }
  claims.resize(kept);
}

}  // namespace bentbook
