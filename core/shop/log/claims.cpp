#include "shop/log/claims.h"

#include <algorithm>
#include <tuple>
#include <utility>

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

/// Calls work(from, to) for each run of one key.
template <class Work>
void by_key(const std::vector<Keyed>& all, Work work) {
  for (auto from = all.begin(), to = from; from != all.end(); from = to) {
    to = std::find_if(from, all.end(),
                      [&](const Keyed& k) { return k.first != from->first || k.second != from->second; });
    work(from, to);
  }
}

using EndedClaims = std::vector<bool>;

/// A device's newer word ends its older one.
void end_older_words(const std::vector<Claim>& claims, EndedClaims& ended) {
  std::vector<Keyed> words;
  words.reserve(claims.size());
  for (std::size_t i = 0; i < claims.size(); ++i)
    if (replaces(claims[i].action))
      words.push_back({static_cast<std::uint64_t>(claims[i].action), claims[i].id.device, i});
  by_key(in_order(std::move(words)), [&](auto from, auto to) {
    for (; from + 1 != to; ++from) ended[from->at] = true;
  });
}

}  // namespace

std::vector<Keyed> in_order(std::vector<Keyed> all) {
  std::sort(all.begin(), all.end(), [](const Keyed& a, const Keyed& b) {
    return std::tie(a.first, a.second, a.at, b.ends) < std::tie(b.first, b.second, b.at, a.ends);
  });
  return all;
}

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

void ManyClaims::take(std::vector<Claim>& claims, const Event& e) {
  if (e.action == EventAction::kTakenBack) {
    if (const auto id = read_id(e.value)) taken_back_.push_back({*id, claims.size()});
  } else if (e.action == EventAction::kReleased) {
    const auto id = read_id(e.value);
    if (!id) return;
    released_.push_back({*id, claims.size()});
    claims.push_back(claim_of(e, EventAction::kReleased));
  } else {
    claims.push_back(claim_of(e, e.action));
    if (holds_the_timber(e)) claims.push_back(claim_of(e, EventAction::kHeld));
  }
}

void ManyClaims::sweep(std::vector<Claim>& claims) const {
  EndedClaims ended(claims.size());
  end_older_words(claims, ended);
  std::vector<Keyed> backs, holds;
  for (std::size_t i = 0; i < claims.size(); ++i) {
    const Claim& c = claims[i];
    if (!taken_back_.empty() && can_be_taken_back(c.action)) backs.push_back({c.id.device, c.id.sequence, i});
    if (!released_.empty() && c.action == EventAction::kHeld) holds.push_back({c.id.device, c.id.sequence, i});
  }
  for (const Ending& e : taken_back_) backs.push_back({e.id.device, e.id.sequence, e.at, true});
  by_key(in_order(std::move(backs)), [&](auto from, auto to) {
    while (to != from && !(to - 1)->ends) --to;  // what comes after the last taking back stands
    for (; from != to; ++from)
      if (!from->ends) ended[from->at] = true;
  });
  for (const Ending& e : released_) holds.push_back({e.id.device, e.id.sequence, e.at, true});
  by_key(in_order(std::move(holds)), [&](auto from, auto to) {
    auto oldest = from;  // that is not released yet
    for (; from != to; ++from) {
      if (!from->ends) continue;
      while (oldest->ends && oldest != from) ++oldest;
      ended[oldest->at] = true;  // the hold; or the release, which finds none
      if (oldest != from) ++oldest;
    }
  });
  std::size_t kept = 0;
  for (std::size_t i = 0; i < claims.size(); ++i) {
    if (ended[i]) continue;
    if (kept != i) claims[kept] = std::move(claims[i]);
    ++kept;
  }
  claims.resize(kept);
}

}  // namespace bentbook
