// Rows that a finger puts in order, and the strip below them that says what came of it.

#include <imgui_internal.h>

#include <algorithm>
#include <string>
#include <utility>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

constexpr float kEdge = 56;                         ///< px from an area's edge in which it scrolls by itself
constexpr float kSlowest = 0.12F, kFastest = 1.4F;  ///< px/ms, at the zone's inner end and at the very edge
constexpr float kDash = 6, kDashGap = 4;            ///< px

void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 colour) {
  const bool level = from.y == to.y;
  const float length = level ? to.x - from.x : to.y - from.y;
  for (float at = 0; at < length; at += kDash + kDashGap) {
    const float end = std::min(at + kDash, length);
    if (level)
      list.AddRectFilled({from.x + at, from.y - 1}, {from.x + end, from.y + 1}, colour);
    else
      list.AddRectFilled({from.x - 1, from.y + at}, {from.x + 1, from.y + end}, colour);
  }
}

constexpr float kFootSign = 40, kFootChevron = 32;                     ///< px
constexpr float kBesideFoot = 2 * kMargin + kFootSign + kFootChevron;  ///< of a strip's width, at most

/// A verdict is never cut: over two lines it is set in smaller letters.
struct FootTitle {
  ImFont* font;
  std::vector<std::string> lines;
  FootTitle(Ui& ui, std::string_view title, float width)
      : font(ui.fonts.strong), lines(wrap_text(*ui.fonts.strong, title, width)) {
    if (lines.size() <= 2) return;
    font = ui.fonts.note;
    lines = wrap_text(*font, title, width);
  }
  [[nodiscard]] float height() const { return font->FontSize * static_cast<float>(lines.size()); }
};

bool can_be_seen(const Ui& ui, const Rect& box) {
  const Rect& clip = ui.column.clip;
  return box.y < clip.y + clip.h && box.y + box.h > clip.y;
}

}  // namespace

MovableSaid movable_row(Ui& ui, ItemKey key, ItemKey grip_key, const MovableRow& row) {
  // The grip reaches into the margin: the row's words keep their room.
  const float side = ui.theme.target, width = ui.column.width - side;
  const float left = row.caution ? 28 : 0, inner = width - 32 - left;
  const TwoLines lines = measure_two(ui, row.title, row.note, inner);
  const Rect whole = take_box(ui, std::max({ui.theme.target + kGap, lines.height() + 2 * kRowPad, row.at_least}));
  const Rect box{whole.x, whole.y, width, whole.h};
  const Rect grip{whole.x + whole.w + kGap - side, whole.y, side, whole.h};
  const Rect all{whole.x - kGap, whole.y, whole.w + 2 * kGap, whole.h};
  const bool seen = can_be_seen(ui, whole);
  ImDrawList& list = pen(ui);
  if (row.lifted) list.AddRectFilled(top_left(all), bottom_right(all), ui.theme.ground);
  MovableSaid out;
  out.box = whole;
  const Look look = add_pressed(
      ui, {std::string(key), Role::kButton, Touch::kPress, std::string(row.title), std::string(row.note), box}, false);
  out.pressed = look.pressed;
  if (seen) {
    draw_row(ui, look, box);
    list.AddRectFilled({box.x + box.w, box.y + box.h - 1}, bottom_right(whole), ui.theme.rule);
    const float top = box.y + (box.h - lines.height()) / 2, sign = 22;
    if (row.caution) draw_triangle_sign(list, {box.x, top, sign, sign}, ui.theme.caution);
    draw_wrapped(list, *ui.fonts.body, {box.x + left, top}, ui.theme.ink, row.title, inner);
    draw_wrapped(list, *ui.fonts.note, {box.x + left, top + lines.title},
                 row.caution ? ui.theme.caution : ui.theme.quiet, row.note, inner);
    draw_icon(list, Icon::kForward, {box.x + box.w - 24, box.y + box.h / 2 - 10, 20, 20}, ui.theme.ink);
    draw_focus(ui, look, box);
  }
  const Rect sign{grip.x + grip.w / 2 - 12, grip.y + grip.h / 2 - 12, 24, 24};
  if (row.grip.empty()) {
    if (seen) draw_icon(list, Icon::kTick, sign, ui.theme.quiet);
    return out;
  }
  const Look held =
      add_pressed(ui, {std::string(grip_key), Role::kButton, Touch::kDrag, std::string(row.grip), {}, grip});
  out.gripped = held.pressed;
  if (!seen) return out;
  if (held.lit && !row.lifted) list.AddRectFilled(top_left(grip), bottom_right(grip), ui.theme.pressed);
  draw_icon(list, Icon::kMove, sign, ui.locked || ui.read_only ? ui.theme.rule : ui.theme.edit);
  draw_focus(ui, held, grip);
  if (!row.lifted) return out;
  const Rect edge = shrunk(all, 1);
  list.AddRect(top_left(edge), bottom_right(edge), ui.theme.edit, 0, ImDrawFlags_None, 2);
  return out;
}

void dashed_box(Ui& ui, const Rect& box) {
  ImDrawList& list = pen(ui);
  const float right = box.x + box.w, foot = box.y + box.h;
  dashed_line(list, {box.x, box.y}, {right, box.y}, ui.theme.rule);
  dashed_line(list, {box.x, foot}, {right, foot}, ui.theme.rule);
  dashed_line(list, {box.x, box.y}, {box.x, foot}, ui.theme.rule);
  dashed_line(list, {right, box.y}, {right, foot}, ui.theme.rule);
}

Hold hold_of(Ui&, ItemKey key) {
  if (GImGui->ActiveId == 0 || GImGui->ActiveId != ImGui::GetID(key.data(), key.data() + key.size())) return {};
  const ImGuiIO& io = ImGui::GetIO();
  // A key of the keyboard holds it too, yet moves nothing.
  if (GImGui->ActiveIdSource != ImGuiInputSource_Mouse || !ImGui::IsMousePosValid()) return {};
  return {io.MouseDown[0] ? Hold::Is::kHeld : Hold::Is::kLetGo, io.MousePos.y};
}

void scroll_near_edge(Ui& ui, float y, double elapsed_ms, bool up, bool down) {
  if (ui.memory.open.empty()) return;
  const Ui::Memory::Open& open = ui.memory.open.back();
  Ui::Memory::Scroll& scroll = ui.memory.scrolls[open.index];
  const float zone = std::min(kEdge, open.box.h / 4);
  const float above = open.box.y + zone - y, below = y - (open.box.y + open.box.h - zone);
  const float deep = std::min(1.0F, std::max(above, below) / zone);
  if (deep <= 0 || !(above > below ? up : down)) return;
  const float speed = kSlowest + (kFastest - kSlowest) * deep * deep;
  const float by = speed * static_cast<float>(std::clamp(elapsed_ms, 0.0, 33.0));
  const float to = std::clamp(scroll.offset + (above > below ? -by : by), 0.0F, scroll.max);
  if (to == scroll.offset) return;
  scroll.offset = to;
  scroll.moved = true;
  ui.memory.want_frame = true;
}

float foot_height(Ui& ui, const Rect& page, std::span<const std::string_view> titles) {
  float title = 0;
  for (const std::string_view t : titles) title = std::max(title, FootTitle(ui, t, page.w - kBesideFoot).height());
  const float lines = page.h < 440 || title > ui.fonts.strong->FontSize ? 1 : 2;
  return std::max(ui.theme.target + kGap, title + lines * ui.fonts.note->FontSize + 2 * kRowPad);
}

void foot_ground(Ui& ui, Rect box) {
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.panel);
  list.AddRectFilled(top_left(box), {box.x + box.w, box.y + 1}, ui.theme.rule);
}

bool foot_row(Ui& ui, ItemKey key, Rect box, std::string_view title, std::string_view second, bool caution,
              bool leads_on) {
  const Theme& t = ui.theme;
  // Read aloud when it changes, whether it leads on or not: a text of its own beside the key that leads on.
  std::string words(title);
  if (!second.empty()) words += ". " + std::string(second);
  Item item{std::string(key), Role::kText, Touch::kNone, std::move(words), {}, box};
  item.live = true;
  add_read(ui, std::move(item));
  Look look;
  if (leads_on)
    look =
        add_pressed(ui, {std::string(key) + ".open", Role::kButton, Touch::kPress, std::string(title), {}, box}, false);
  ImDrawList& list = pen(ui);
  const ImU32 ground = caution ? t.caution_ground : t.panel, ink = caution ? t.caution : t.ink;
  list.AddRectFilled(top_left(box), bottom_right(box), look.lit || look.held ? t.pressed : ground);
  list.AddRectFilled(top_left(box), {box.x + box.w, box.y + 1}, t.rule);
  float left = box.x + kMargin;
  if (caution) {
    list.AddRectFilled(top_left(box), {box.x + 4, box.y + box.h}, t.caution);
    draw_triangle_sign(list, {left, box.y + box.h / 2 - 14, 28, 28}, t.caution);
    left += kFootSign;
  }
  const float right = box.x + box.w - kMargin - (leads_on ? kFootChevron : 0), width = right - left;
  ImFont& small = *ui.fonts.note;
  const FootTitle head(ui, title, width);
  std::vector<std::string> lines = wrap_text(small, second, width);
  if (second.empty()) lines.clear();
  const auto room = static_cast<std::size_t>((box.h - 2 * kRowPad - head.height()) / small.FontSize + 0.01F);
  if (lines.size() > room) {
    // What is cut stands in full where the strip leads to.
    std::string last;
    for (std::size_t i = std::max<std::size_t>(room, 1) - 1; i < lines.size(); ++i) last += lines[i] + ' ';
    lines.resize(std::max<std::size_t>(room, 1));
    lines.back() = fit_text(small, last, width);
  }
  float y = box.y + (box.h - head.height() - small.FontSize * static_cast<float>(lines.size())) / 2;
  for (const std::string& line : head.lines) {
    draw_text(list, *head.font, {left, y}, ink, line);
    y += head.font->FontSize;
  }
  for (const std::string& line : lines) {
    draw_text(list, small, {left, y}, ink, line);
    y += small.FontSize;
  }
  if (leads_on) draw_icon(list, Icon::kForward, {right + 8, box.y + box.h / 2 - 10, 20, 20}, ink);
  draw_focus(ui, look, box);
  return look.pressed;
}

}  // namespace bentbook::screens
