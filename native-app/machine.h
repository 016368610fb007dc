#pragma once
/// What only this machine knows: its clocks, and numbers that nobody can foretell.

#include <cstdint>

namespace bentbook::desktop {

/// Milliseconds since 1970, UTC.
[[nodiscard]] std::int64_t wall_clock_ms();
/// How far the clock on the user's wall was ahead of UTC at that moment.
[[nodiscard]] int clock_ahead_minutes(std::int64_t wall_ms);
[[nodiscard]] std::uint64_t random_bits();

}  // namespace bentbook::desktop
