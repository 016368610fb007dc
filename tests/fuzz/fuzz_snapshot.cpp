#include "fuzz.h"
#include "logs.h"
#include "shop/log/conflicts.h"
#include "shop/log/snapshot.h"

using namespace bentbook;

/// A state and a log that it was not folded from.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto [first, second] = fuzz::two_of(fuzz::text_of(data, size));
  auto state = read_snapshot(fuzz::mended(first));
  if (!state) return 0;
  (void)is_explained(*state);
  const Log log = fuzz::log_of(second);
  Explained explained(*state);
  for (const Event& e : log.events) (void)explained.take(e);
  const ShopState before = *state;
  const bool went_on = go_on(*state, log.events);
  fuzz::hold(went_on || *state == before);
  (void)conflicts_of(*state);
  const auto again = read_snapshot(write_snapshot(*state));
  fuzz::hold(again.has_value() && *again == *state);
  for (const TimberState& timber : state->timbers) fuzz::hold(state->find(timber.mark) != nullptr);
  return 0;
}
