#include "machine.h"

#include <chrono>
#include <ctime>
#include <random>

namespace bentbook::desktop {

std::int64_t wall_clock_ms() {
  using namespace std::chrono;
  return duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count();
}

int clock_ahead_minutes(std::int64_t wall_ms) {
  const auto seconds = static_cast<std::time_t>(wall_ms / 1000);
  std::tm there{};
  if (localtime_r(&seconds, &there) == nullptr) return 0;
  return static_cast<int>(there.tm_gmtoff / 60);
}

std::uint64_t random_bits() {
  std::random_device device;
  const std::uint64_t high = device();
  return high << 32 | device();
}

}  // namespace bentbook::desktop
