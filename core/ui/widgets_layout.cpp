#include <algorithm>
#include <cstdint>
#include <utility>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

Ui::Memory::Scroll& scroll_of(Ui& ui, ItemKey key, std::size_t& index) {
  auto& all = ui.memory.scrolls;
  for (index = 0; index < all.size(); ++index)
    if (all[index].key == key) return all[index];
  // Ids only tell areas of this run apart; they need not mean the same in the next.
  all.push_back({std::string(key), static_cast<int>(all.size()) + 1});
  return all.back();
}

void bring_into_view(Ui& ui, const Rect& item) {
  if (ui.memory.open.empty()) return;
  const Ui::Memory::Open& open = ui.memory.open.back();
  Ui::Memory::Scroll& scroll = ui.memory.scrolls[open.index];
  const float above = open.box.y + kGap - item.y;
  const float below = item.y + item.h - (open.box.y + open.box.h - kGap);
  const float by = above > 0 ? -above : below > 0 ? std::min(below, -above) : 0;
  ui.memory.want_frame = true;
  if (by == 0) return;
  scroll.offset = std::max(0.0F, scroll.offset + by);
  scroll.moved = true;
}

void answer_focus(Ui& ui, const Item& item, const Rect& whole) {
  if (ui.registry.take(item.key, Action::Kind::kFocus)) {
    ui.memory.focus = item.key;
    bring_into_view(ui, whole);
  } else if (!ui.memory.reveal.empty() && ui.memory.reveal == item.key) {
    ui.memory.reveal.clear();
    bring_into_view(ui, whole);
  }
}

/// What is left of an area's height above a short word that lies over its foot: it is scrolled from under it.
float above_message(const Ui& ui, const Rect& box) {
  const Rect& message = ui.memory.message;
  const bool beside = message.w <= 0 || message.x >= box.x + box.w || message.x + message.w <= box.x;
  if (beside || message.y >= box.y + box.h || message.y + message.h <= box.y) return box.h;
  return message.y - box.y < ui.theme.target ? box.h : message.y - box.y;
}

}  // namespace

Rect shared_part(const Rect& a, const Rect& b) {
  const float left = std::max(a.x, b.x), top = std::max(a.y, b.y);
  const float right = std::min(a.x + a.w, b.x + b.w), bottom = std::min(a.y + a.h, b.y + b.h);
  // Something scrolled out keeps its place at the edge, without size: it can be named and reached, not touched.
  return {std::clamp(left, b.x, b.x + b.w), std::clamp(top, b.y, b.y + b.h), std::max(0.0F, right - left),
          std::max(0.0F, bottom - top)};
}

void space(Ui& ui, float px) { ui.column.y += px; }

Rect take_box(Ui& ui, float height) { return take_box(ui, ui.column.width, height); }

Rect take_box(Ui& ui, float width, float height) {
  const Rect box{ui.column.x, ui.column.y, width, height};
  ui.column.y += height;
  return box;
}

Abreast::Abreast(Ui& ui, float gap, float at_least)
    : ui_(ui), whole_(ui.column), step_((ui.column.width + gap) / 2), two_(step_ - gap >= at_least) {
  bottom_ = whole_.y;
  if (two_) ui.column.width = step_ - gap;
}

Abreast::~Abreast() {
  if (!two_) return;
  const float bottom = std::max(bottom_, ui_.column.y);
  ui_.column = whole_;
  ui_.column.y = bottom;
}

void Abreast::next() {
  if (!two_) return;
  right_ = !right_;
  bottom_ = std::max(bottom_, ui_.column.y);
  if (!right_) top_ = bottom_;
  ui_.column.x = right_ ? whole_.x + step_ : whole_.x;
  ui_.column.y = top_;
}

ImDrawList& pen(Ui&) { return *ImGui::GetWindowDrawList(); }

void reveal(Ui& ui, ItemKey item) {
  ui.memory.reveal = item;
  ui.memory.want_frame = true;
}

void turn_to(Ui& ui, ItemKey item) {
  ui.memory.last_pressed = item;
  ui.memory.want_frame = true;
}

void begin_scroll(Ui& ui, ItemKey key, Rect box) {
  box.h = above_message(ui, box);
  std::size_t index = 0;
  Ui::Memory::Scroll& scroll = scroll_of(ui, key, index);
  if (ui.memory.new_page && scroll.offset != 0) {
    scroll.offset = 0;
    scroll.moved = true;
  }
  for (const ScrollBy& s : ui.memory.scroll_by) {
    if (s.area != scroll.id) continue;
    scroll.offset = std::clamp(scroll.offset + s.by, 0.0F, scroll.max);
    scroll.moved = true;
  }
  if (scroll.moved) ImGui::SetNextWindowScroll({-1, scroll.offset});
  ImGui::SetCursorScreenPos({box.x, box.y});
  const std::string name(key);
  ImGui::BeginChild(name.c_str(), {box.w, box.h}, ImGuiChildFlags_None,
                    ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NavFlattened);
  // ImGui keeps whole pixels; ours differs only when its wheel or its keys moved the page.
  const float told = ImGui::GetScrollY();
  if (told > scroll.offset + 1 || told < scroll.offset - 1) scroll.offset = told;
  scroll.moved = false;

  ui.memory.open.push_back({ui.column, index, box, box.y - told});
  ui.column = {box.x + kMargin, box.y - told + kGap, box.w - 2 * kMargin, scroll.id,
               ui.column.clip.w > 0 ? shared_part(box, ui.column.clip) : box};
}

void end_scroll(Ui& ui) {
  const Ui::Memory::Open open = ui.memory.open.back();
  Ui::Memory::Scroll& scroll = ui.memory.scrolls[open.index];
  const float bottom = ui.column.y + kMargin;
  ImGui::SetCursorScreenPos({open.box.x, bottom});
  ImGui::Dummy({0, 0});
  const float content = bottom - open.top;
  scroll.max = std::max(0.0F, content - open.box.h);
  if (scroll.offset > scroll.max) {
    scroll.offset = scroll.max;
    scroll.moved = true;
    ui.memory.want_frame = true;
  }
  if (scroll.max > 0) {
    // Where one is on the page: a short stroke at the edge, never a target.
    const float length = std::max(24.0F, open.box.h * open.box.h / content);
    const float at = open.box.y + (open.box.h - length) * (scroll.offset / scroll.max);
    const float right = open.box.x + open.box.w - 3;
    ImGui::GetWindowDrawList()->AddRectFilled({right - 3, at}, {right, at + length}, ui.theme.rule);
  }
  ImGui::EndChild();
  ui.registry.add(ScrollArea{scroll.id, scroll.key, open.box, scroll.offset, scroll.max, false});
  ui.column = open.outer;
  ui.memory.open.pop_back();
}

void add_read(Ui& ui, Item item) {
  answer_focus(ui, item, item.rect);
  if (ui.column.clip.w > 0) item.rect = shared_part(item.rect, ui.column.clip);
  item.scroll = ui.column.scroll;
  ui.registry.add(std::move(item));
}

Look add_pressed(Ui& ui, Item item, bool writes) {
  const bool unlocks = item.key.starts_with("lock.");
  const bool harmless = !writes || unlocks || item.key.starts_with("notice.") || item.key.starts_with("welcome.");
  if ((ui.locked && !unlocks) || (ui.read_only && !harmless)) item.enabled = false;
  const Rect whole = item.rect;
  answer_focus(ui, item, whole);
  Look look;
  if (item.enabled && whole.w > 0 && whole.h > 0) {
    ImGui::SetCursorScreenPos(top_left(whole));
    if (item.role == Role::kImage) ImGui::SetNextItemAllowOverlap();
    look.pressed = ImGui::InvisibleButton(item.key.c_str(), {whole.w, whole.h});
    look.lit = ImGui::IsItemHovered();
    look.held = ImGui::IsItemActive();
    look.focused = ImGui::GetIO().NavVisible && ImGui::IsItemFocused();
    if (ui.registry.take(item.key, Action::Kind::kPress)) look.pressed = true;
  }
  if (ui.memory.focus == item.key) look.focused = true;
  if (look.pressed && !item.key.starts_with("keypad.")) ui.memory.last_pressed = item.key;
  if (item.touch == Touch::kNone) item.touch = Touch::kPress;
  if (ui.column.clip.w > 0) item.rect = shared_part(whole, ui.column.clip);
  item.scroll = ui.column.scroll;
  ui.registry.add(std::move(item));
  return look;
}

std::optional<Pinch> pinched(Ui& ui, ItemKey key) {
  std::optional<Pinch> sum;
  for (const Pinch& p : ui.memory.pinches) {
    if (p.key != key) continue;
    if (!sum) {
      sum = p;
      continue;
    }
    sum->factor *= p.factor;
    sum->dx += p.dx;
    sum->dy += p.dy;
  }
  return ui.locked ? std::nullopt : sum;
}

bool long_pressed(Ui& ui, ItemKey key) { return !ui.locked && ui.memory.long_press == key; }

}  // namespace bentbook::screens
