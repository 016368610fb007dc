#include "numeric/sorting.h"

namespace bentbook {

// Runs of a few are put in order by insertion, then merged, each level into the other list.
std::vector<int> sorted_order(std::size_t count, FunctionRef<bool(int, int)> before) {
  constexpr std::size_t kRun = 8;
  std::vector<int> order(count), merged(count);
  for (std::size_t i = 0; i < count; ++i) {
    std::size_t at = i;
    const auto item = static_cast<int>(i);
    for (; at % kRun != 0 && before(item, order[at - 1]); --at) order[at] = order[at - 1];
    order[at] = item;
  }
  for (std::size_t width = kRun; width < count; width *= 2) {
    for (std::size_t from = 0; from < count; from += 2 * width) {
      const std::size_t middle = from + width < count ? from + width : count;
      const std::size_t end = middle + width < count ? middle + width : count;
      std::size_t left = from, right = middle;
      for (std::size_t to = from; to < end; ++to) {
        const bool take_right = left == middle || (right < end && before(order[right], order[left]));
        merged[to] = order[take_right ? right++ : left++];
      }
    }
    order.swap(merged);
  }
  return order;
}

}  // namespace bentbook
