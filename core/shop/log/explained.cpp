#include "shop/log/explained.h"

namespace bentbook {

Explained::Explained(const ShopState& state) : events_(state.twice.size()) {
  for (const auto& [device, d] : state.devices) {
    last_[device] = d.last;
    events_ += d.last;
  }
}

bool Explained::take(const Event& e) {
  const auto known = last_.find(e.device);
  const std::uint64_t last = known == last_.end() ? 0 : known->second;
  if (e.sequence > last + 1 + kMostEvents || e.logical > events_ + 1 + kMostEvents) return false;
  if (e.sequence > last) {
    events_ += e.sequence - last;
    last_[e.device] = e.sequence;
  } else {
    ++events_;  // the number was used twice
  }
  return true;
}

bool is_explained(const ShopState& state) {
  std::uint64_t events = state.twice.size();
  for (const auto& [device, d] : state.devices) events += d.last;
  return state.last_logical <= events + kMostEvents;
}

}  // namespace bentbook
