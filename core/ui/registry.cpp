#include "ui/registry.h"

#include <algorithm>
#include <utility>

namespace bentbook::screens {
namespace {

bool holds(const Rect& r, float x, float y, float slop) {
  return r.w > 0 && r.h > 0 && x >= r.x - slop && x < r.x + r.w + slop && y >= r.y - slop && y < r.y + r.h + slop;
}

}  // namespace

void Registry::begin_frame() {
  before_.swap(items_);
  items_.clear();
  areas_.clear();
}

void Registry::add(Item item) { items_.push_back(std::move(item)); }
void Registry::add(ScrollArea area) { areas_.push_back(std::move(area)); }

void Registry::end_frame() {
  if (items_ != before_) ++revision_;
  actions_.clear();
}

const Item* Registry::at(float x, float y, float slop) const {
  // What was drawn later lies on top. An exact hit wins over one that only the slop reaches.
  for (const float reach : {0.0F, slop}) {
    for (auto item = items_.rbegin(); item != items_.rend(); ++item)
      if (item->touch != Touch::kNone && item->enabled && holds(item->rect, x, y, reach)) return &*item;
  }
  return nullptr;
}

const Item* Registry::held_at(float x, float y) const {
  const auto means = [](const Item& i) {
    return i.touch != Touch::kNone ? i.enabled : i.role == Role::kAnswer || i.role == Role::kImage;
  };
  const auto found =
      std::find_if(items_.rbegin(), items_.rend(), [&](const Item& i) { return means(i) && holds(i.rect, x, y, 0); });
  return found == items_.rend() ? nullptr : &*found;
}

const Item* Registry::find(std::string_view key) const {
  const auto found = std::find_if(items_.begin(), items_.end(), [&](const Item& i) { return i.key == key; });
  return found == items_.end() ? nullptr : &*found;
}

const ScrollArea* Registry::area_at(float x, float y) const {
  for (auto area = areas_.rbegin(); area != areas_.rend(); ++area)
    if (area->max_offset > 0 && holds(area->rect, x, y, 0)) return &*area;
  return nullptr;
}

void Registry::queue(Action action) { actions_.push_back(std::move(action)); }

bool Registry::take(std::string_view key, Action::Kind kind, Action* out) {
  const auto found =
      std::find_if(actions_.begin(), actions_.end(), [&](const Action& a) { return a.kind == kind && a.key == key; });
  if (found == actions_.end()) return false;
  if (out) *out = std::move(*found);
  actions_.erase(found);
  return true;
}

}  // namespace bentbook::screens
