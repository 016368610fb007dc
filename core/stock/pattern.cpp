#include "stock/pattern.h"

#include <algorithm>
#include <limits>

#include "numeric/index.h"
#include "numeric/sorting.h"

namespace bentbook {

PatternSearch::PatternSearch(const std::vector<CutRow>& rows, const std::vector<int>& count,
                             const std::vector<std::int64_t>& value) {
  items_.reserve(rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (count[i] > 0 && value[i] > 0)
      items_.push_back({rows[i].size, value[i], 0, static_cast<double>(value[i]) / static_cast<double>(rows[i].size),
                        static_cast<int>(i), count[i]});
  sort_by(items_, [](const Item& a, const Item& b) {
    return a.density > b.density || (a.density == b.density && a.size > b.size);
  });
  std::int64_t least = std::numeric_limits<std::int64_t>::max();
  for (std::size_t i = items_.size(); i-- > 0;) items_[i].least = least = std::min(least, items_[i].size);
}

PatternSearch::Found PatternSearch::best(std::int64_t room, std::int64_t more_than, WorkLeft& work) const {
  // Raised by more than a double's last places, so that it is never too low.
  const auto bound = [&](std::size_t item, std::int64_t left) {
    constexpr double kRaised = 1 + 1e-14;
    return item < items_.size()
               ? static_cast<std::int64_t>(static_cast<double>(left) * items_[item].density * kRaised) + 1
               : 0;
  };
  Found found;
  found.value = more_than;
  found.most = std::max(more_than, bound(0, room));
  std::vector<RowCount> taken, best;  // by item
  std::int64_t left = room, value = 0;
  std::size_t next = 0;
  while (true) {
    std::int64_t steps = 1;
    for (; next < items_.size() && left >= items_[next].least && value + bound(next, left) > found.value; ++next) {
      const Item& item = items_[next];
      ++steps;
      if (item.size > left) continue;
      const auto n = static_cast<int>(std::min<std::int64_t>(item.count, left / item.size));
      taken.push_back({static_cast<int>(next), n});
      left -= n * item.size;
      value += n * item.value;
    }
    if (value > found.value) {
      found.value = value;
      best = taken;
    }
    // Back: one less of the last item, where what comes behind it may make that good.
    bool open = false;
    while (!open && !taken.empty()) {
      RowCount& last = taken.back();
      const Item& item = items_[at(last.row)];
      left += item.size;
      value -= item.value;
      next = at(last.row) + 1;
      open = value + bound(next, left) > found.value;
      if (open && --last.count > 0) break;
      if (!open) {
        left += (last.count - 1) * item.size;
        value -= (last.count - 1) * item.value;
      }
      taken.pop_back();
    }
    if (!open) {
      found.most = found.value;
      break;
    }
    if (!work.spend(steps)) break;
  }
  found.pieces.reserve(best.size());
  for (const RowCount& item : best) found.pieces.push_back({items_[at(item.row)].row, item.count});
  sort_by(found.pieces, [](const RowCount& a, const RowCount& b) { return a.row < b.row; });
  return found;
}

}  // namespace bentbook
