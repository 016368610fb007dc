#include "fuzz.h"
#include "logs.h"
#include "shop/log/conflicts.h"
#include "shop/log/seen.h"
#include "shop/log/snapshot.h"

using namespace bentbook;

namespace {

void read_others(std::string_view bytes) {
  if (const auto seen = read_seen(bytes)) {
    fuzz::hold(write_seen(seen->book, seen->seen) == bytes);
  } else {
    fuzz::hold_error_inside(seen, bytes.size());
  }
  if (const auto state = read_snapshot(bytes)) {
    const auto again = read_snapshot(write_snapshot(*state));
    fuzz::hold(again.has_value() && *again == *state);
    (void)conflicts_of(*state);
  } else {
    fuzz::hold_error_inside(state, bytes.size());
  }
}

void read_bytes(std::string_view bytes) {
  read_others(bytes);
  // Whatever is left of a damaged file is a log.
  const LogScan scan = scan_log(bytes);
  const auto log = read_log(bytes);
  fuzz::hold(log.has_value() == scan.troubles.empty());
  if (!log) fuzz::hold_error_inside(log, bytes.size());
  if (log) fuzz::hold(write_log(*log) == bytes);
  const auto again = read_log(write_log(scan.log));
  fuzz::hold(again.has_value() && *again == scan.log);
  const ShopState state = fold(scan.log);
  fuzz::hold(state.events == scan.log.events.size());
  (void)conflicts_of(state);
  fuzz::hold(*read_snapshot(write_snapshot(state)) == state);
  fuzz::hold(events_beyond(scan.log, seen_of(scan.log)).events.size() <= scan.log.events.size());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  read_bytes(bytes);
  read_bytes(fuzz::mended(bytes));
  return 0;
}
