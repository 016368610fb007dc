#include "book/kit.h"
#include "fuzz.h"

using namespace bentbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto kit = read_kit(fuzz::text_of(data, size));
  if (!kit) {
    fuzz::hold(!kit.error().where.empty());
    fuzz::hold(kit.error().at <= static_cast<std::int64_t>(size));
    return 0;
  }
  // What is written again is read again, and then no longer changes.
  const std::string once = write_kit(*kit);
  const auto again = read_kit(once);
  fuzz::hold(again.has_value());
  fuzz::hold(again->saws == kit->saws && again->settings == kit->settings);
  fuzz::hold(write_kit(*again) == once);
  return 0;
}
