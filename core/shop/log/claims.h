#pragma once
/// What an event does to the claims that hold on its step.

#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "shop/log/event.h"

namespace bentbook {

/// An event that holds. A reading out of tolerance gives two: kMeasured and, with the same id, kHeld.
struct Claim {
  EventAction action = EventAction::kDone;
  EventId id;
  std::int64_t wall = 0;
  std::string who, value, note;
  friend bool operator==(const Claim&, const Claim&) = default;
};

/// In time that grows with the number of claims.
void take_claim(std::vector<Claim>& claims, const Event& event);

/// The same for a step with many claims, while many events are folded: what a later event may end is found by its key.
/// Claims that have ended stay where they lie until sweep().
class ManyClaims {
 public:
  explicit ManyClaims(const std::vector<Claim>& claims);
  void take(std::vector<Claim>& claims, const Event& event);
  void sweep(std::vector<Claim>& claims) const;

 private:
  using Places = std::multimap<std::pair<std::uint64_t, std::uint64_t>, std::size_t>;
  void note(const Claim& claim, std::size_t at);
  void put(std::vector<Claim>& claims, const Event& event, EventAction action);
  /// Ends all that stand under the key, and forgets it.
  void end_all(Places& places, std::pair<std::uint64_t, std::uint64_t> key);

  std::vector<bool> ended_;
  Places words_;   ///< by action and device: what the device's next word takes the place of
  Places events_;  ///< by event: what can be taken back
  Places holds_;   ///< by event, in their order
};

}  // namespace bentbook
