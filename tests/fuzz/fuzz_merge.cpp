#include "fuzz.h"
#include "logs.h"
#include "shop/log/conflicts.h"
#include "shop/log/seen.h"
#include "shop/log/state.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto [first, second] = fuzz::two_of(fuzz::text_of(data, size));
  const Log a = fuzz::log_of(first), b = fuzz::log_of(second);
  const auto both = merged(a, b);
  fuzz::hold(both.has_value() == (a.book.empty() || b.book.empty() || a.book == b.book));
  if (!both) return 0;
  fuzz::hold(*both == *merged(b, a) && *both == *merged(*both, a));
  // What two phones took each for itself they take together.
  const auto read = read_log(write_log(*both));
  fuzz::hold(read.has_value() && *read == *both);
  const ShopState state = fold(*both);
  ShopState one_by_one;
  for (const Event& e : both->events) apply(one_by_one, e);
  fuzz::hold(state == one_by_one);
  fuzz::hold(conflicts_of(state).size() <= 8 * both->events.size() + 2);
  fuzz::hold(events_beyond(a, seen_of(b)).events.size() <= a.events.size());
  // The shop goes on.
  const auto next = next_event(*both, 7, Event{0, 1, 1, 0, EventAction::kDone, {}, "P-A1", "slot/a", {}, {}});
  fuzz::hold(next.has_value());
  return 0;
}
