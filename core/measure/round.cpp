#include "measure/round.h"

#include "numeric/libm.h"

namespace bentbook {

std::int64_t nearest_count(double x, std::int64_t limit) {
  if (!(x == x)) return 0;
  const double size = libm::fabs(x);
  if (size >= static_cast<double>(limit)) return x < 0 ? -limit : limit;
  // The fraction is taken apart rather than 0.5 added: 0.49999999999999994 + 0.5 is 1 in doubles.
  const double whole = libm::floor(size);
  const std::int64_t count = static_cast<std::int64_t>(whole) + (size - whole >= 0.5 ? 1 : 0);
  return x < 0 ? -count : count;
}

}  // namespace bentbook
