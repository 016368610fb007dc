#pragma once
/// Whether the events that are there explain an event's numbers. A device counts 1, 2, 3 … and its logical time is one
/// more than the greatest that it had seen, so neither runs ahead of the number of events that were ever made. Not all
/// of those need be in hand: a phone passes on what another lacks, a phone's events may be lost. But a building has no
/// more than kMostEvents, and where a device says n it has made n.
///
/// What is explained stays so when more events come, and so does whatever is done knowing of it: a merge of good logs
/// is good, a tick after it too. And no log can bring the clock near its end.

#include <cstdint>
#include <map>

#include "shop/log/state.h"

namespace bentbook {

/// More events than a log may hold, and than may be missing before one that is there.
inline constexpr std::size_t kMostEvents = 1'000'000;

class Explained {
 public:
  Explained() = default;
  /// After what was folded.
  explicit Explained(const ShopState& state);
  /// Events in the log's order. False: nothing explains this one, and it explains nothing.
  [[nodiscard]] bool take(const Event& event);

 private:
  std::map<std::uint64_t, std::uint64_t> last_;  ///< greatest sequence of a device
  std::uint64_t events_ = 0;                     ///< that must have been made
};

/// False: the state was folded from an event that nothing explains.
[[nodiscard]] bool is_explained(const ShopState& state);

}  // namespace bentbook
