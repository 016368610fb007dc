#pragma once
/// What an event does to the claims that hold on its step.

#include <cstddef>
#include <cstdint>
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

/// What many events are sorted by to find those that belong together.
struct Keyed {
  std::uint64_t first = 0, second = 0;  ///< the key
  std::size_t at = 0;                   ///< in the order of time
  bool ends = false;                    ///< it ends what lies before it under the key
};
/// By key, under each by time; of two at one time the one that ends first. (std::sort: long lists of plain numbers.)
[[nodiscard]] std::vector<Keyed> in_order(std::vector<Keyed> all);

/// The same for a step with many claims, while many events are folded: every claim is put behind the others, and what
/// has ended meanwhile is found by sweep(), which sorts. (A search tree costs a miss of the cache for each of its
/// levels.)
class ManyClaims {
 public:
  void take(std::vector<Claim>& claims, const Event& event);
  void sweep(std::vector<Claim>& claims) const;

 private:
  /// An event that ends another one's claims, those before `at`; a release is itself the claim at `at`.
  struct Ending {
    EventId id;
    std::size_t at = 0;
  };
  std::vector<Ending> taken_back_, released_;
};

}  // namespace bentbook
