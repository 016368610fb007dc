#include "stock/pattern.h"

#include <algorithm>
#include <iterator>
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
  singles_.reserve(items_.size());
  for (const Item& item : items_) singles_.push_back({item.size, item.value});
  sort_by(singles_, [](const Single& a, const Single& b) { return a.size < b.size; });
  for (std::size_t i = 1; i < singles_.size(); ++i)
    singles_[i].value = std::max(singles_[i].value, singles_[i - 1].value);
}

std::int64_t PatternSearch::dearest_single(std::int64_t room) const {
  const auto beyond =
      std::partition_point(singles_.begin(), singles_.end(), [&](const Single& s) { return s.size <= room; });
  return beyond == singles_.begin() ? 0 : std::prev(beyond)->value;
}

PatternSearch::Found PatternSearch::best(std::int64_t room, std::int64_t more_than, WorkLeft& work) const {
  // What the pieces from an item on are worth: as many of each as there are, in parts. Raised by more than a double's
  // last places, so that it is never too low.
  const auto in_parts = [&](std::size_t item, std::int64_t left) {
    constexpr double kRaised = 1 + 1e-14;
    if (item >= items_.size()) return std::int64_t{0};
    double worth = 0;
    for (; left > 0 && item < items_.size(); ++item) {
      const std::int64_t part = std::min(left, items_[item].size * items_[item].count);
      worth += static_cast<double>(part) * items_[item].density;
      left -= part;
    }
    return static_cast<std::int64_t>(worth * kRaised) + 1;
  };
  // Where one more piece has room at most, no more than the dearest that has.
  const auto bound = [&](std::size_t item, std::int64_t left) {
    const std::int64_t worth = in_parts(item, left);
    return left < 2 * items_[item].least ? std::min(worth, dearest_single(left)) : worth;
  };
  Found found;
  found.value = more_than;
  found.most = std::max(more_than, in_parts(0, room));
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
    // Back: one less of the last item, where what comes behind it may make that good. In parts, what makes no good of
    // one less makes none of two.
    bool open = false;
    while (!open && !taken.empty()) {
      RowCount& last = taken.back();
      const Item& item = items_[at(last.row)];
      left += item.size;
      value -= item.value;
      next = at(last.row) + 1;
      open = value + in_parts(next, left) > found.value;
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
