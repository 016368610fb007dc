#pragma once
/// From computed doubles back to exact counts.

#include <cstdint>

namespace bentbook {

/// Nearest whole number, half away from zero; past ±limit it saturates there, NaN gives 0. limit: 0 to 2^62.
[[nodiscard]] std::int64_t nearest_count(double x, std::int64_t limit);

}  // namespace bentbook
