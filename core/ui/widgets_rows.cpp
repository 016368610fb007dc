#include <algorithm>
#include <string>
#include <utility>

#include "text/invisible.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

std::optional<std::string> text_typed(Ui& ui, ItemKey key) {
  Action action;
  if (!ui.locked && !ui.read_only && ui.registry.take(key, Action::Kind::kSetText, &action)) return action.text;
  for (const PlatformEvent& e : ui.memory.committed_texts)
    if (e.key == key) return e.text;
  return std::nullopt;
}

}  // namespace

void draw_row(Ui& ui, const Look& look, const Rect& box) {
  ImDrawList& list = pen(ui);
  if (look.lit || look.held) list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
  list.AddRectFilled({box.x, box.y + box.h - 1}, bottom_right(box), ui.theme.rule);
}

TwoLines measure_two(Ui& ui, std::string_view title, std::string_view second, float width) {
  return {wrapped_height(*ui.fonts.body, title, width),
          second.empty() ? 0 : wrapped_height(*ui.fonts.note, second, width)};
}

namespace {

void draw_two(Ui& ui, const TwoLines& lines, std::string_view title, std::string_view second, const Rect& box,
              bool strong) {
  const float top = box.y + (box.h - lines.height()) / 2;
  draw_wrapped(pen(ui), strong ? *ui.fonts.strong : *ui.fonts.body, {box.x, top}, ui.theme.ink, title, box.w);
  if (!second.empty()) draw_wrapped(pen(ui), *ui.fonts.note, {box.x, top + lines.title}, ui.theme.quiet, second, box.w);
}

/// A row with an icon at its right edge.
bool icon_row(Ui& ui, ItemKey key, std::string_view title, std::string_view second, Icon icon) {
  const float inner = ui.column.width - 32;
  const TwoLines lines = measure_two(ui, title, second, inner);
  const Rect box = take_box(ui, std::max(ui.theme.target + kGap, lines.height() + 2 * kRowPad));
  const Look look = add_pressed(
      ui, {std::string(key), Role::kButton, Touch::kPress, std::string(title), std::string(second), box}, false);
  draw_row(ui, look, box);
  draw_two(ui, lines, title, second, {box.x, box.y, inner, box.h}, false);
  draw_icon(pen(ui), icon, {box.x + box.w - 24, box.y + box.h / 2 - 10, 20, 20}, ui.theme.ink);
  draw_focus(ui, look, box);
  return look.pressed;
}

}  // namespace

bool list_row(Ui& ui, ItemKey key, std::string_view title, std::string_view second) {
  return icon_row(ui, key, title, second, Icon::kForward);
}

bool fold_row(Ui& ui, ItemKey key, std::string_view title, std::string_view second, bool open) {
  return icon_row(ui, key, title, second, open ? Icon::kMinus : Icon::kPlus);
}

bool caution_row(Ui& ui, ItemKey key, std::string_view text, bool open) {
  const Theme& t = ui.theme;
  const float pad = 12, sign = 28, side = 20, left = 2 * pad + sign;
  const float inner = ui.column.width - left - side - 2 * pad;
  const float height = wrapped_height(*ui.fonts.body, text, inner);
  const Rect box = take_box(ui, std::max(t.target, height + 2 * kRowPad));
  const std::string name = std::string(ui.say(Msg::kCaution)) + ": " + std::string(text);
  const Look look = add_pressed(ui, {std::string(key), Role::kButton, Touch::kPress, name, {}, box}, false);
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), look.lit || look.held ? t.pressed : t.caution_ground);
  list.AddRectFilled(top_left(box), {box.x + 4, box.y + box.h}, t.caution);
  draw_triangle_sign(list, {box.x + pad, box.y + (box.h - sign) / 2, sign, sign}, t.caution);
  draw_wrapped(list, *ui.fonts.body, {box.x + left, box.y + (box.h - height) / 2}, t.caution, text, inner);
  draw_icon(list, open ? Icon::kMinus : Icon::kPlus,
            {box.x + box.w - pad - side, box.y + (box.h - side) / 2, side, side}, t.caution);
  draw_focus(ui, look, box);
  space(ui, kGap);
  return look.pressed;
}

bool pick_row(Ui& ui, ItemKey key, std::string_view title, std::string_view second, bool chosen) {
  const float left = 40, inner = ui.column.width - left;
  const TwoLines lines = measure_two(ui, title, second, inner);
  const Rect box = take_box(ui, std::max(ui.theme.target + kGap, lines.height() + 2 * kRowPad));
  Item item{std::string(key), Role::kRadio, Touch::kPress, std::string(title), std::string(second), box};
  item.checked = chosen;
  const Look look = add_pressed(ui, std::move(item));
  draw_row(ui, look, box);
  const ImVec2 middle{box.x + 16, box.y + box.h / 2};
  pen(ui).AddCircle(middle, 11, ui.theme.ink, 32, 2);
  if (chosen) pen(ui).AddCircleFilled(middle, 6, ui.theme.edit, 32);
  draw_two(ui, lines, title, second, {box.x + left, box.y, inner, box.h}, chosen);
  draw_focus(ui, look, box);
  return look.pressed;
}

bool toggle(Ui& ui, ItemKey key, std::string_view label, bool on, std::string_view second) {
  const float left = 40, inner = ui.column.width - left;
  const TwoLines lines = measure_two(ui, label, second, inner);
  const Rect box = take_box(ui, std::max(ui.theme.target, lines.height() + 2 * kRowPad));
  Item item{std::string(key), Role::kCheckbox, Touch::kPress, std::string(label), std::string(second), box};
  item.checked = on;
  const Look look = add_pressed(ui, std::move(item));
  draw_row(ui, look, box);
  const Rect mark{box.x + 4, box.y + box.h / 2 - 12, 24, 24};
  if (on) {
    pen(ui).AddRectFilled(top_left(mark), bottom_right(mark), ui.theme.edit);
    draw_icon(pen(ui), Icon::kTick, shrunk(mark, 2), ui.theme.on_edit, 3);
  } else {
    pen(ui).AddRect(top_left(mark), bottom_right(mark), ui.theme.ink, 0, ImDrawFlags_None, 2);
  }
  draw_two(ui, lines, label, second, {box.x + left, box.y, inner, box.h}, false);
  draw_focus(ui, look, box);
  space(ui, kGap);
  return look.pressed;
}

bool given(Ui& ui, ItemKey key, std::string_view label, std::string_view value, bool editing) {
  ImFont& font = *ui.fonts.measure;
  const float width = ui.column.width;
  const ImVec2 size = text_size(font, value);
  const float label_width = text_size(*ui.fonts.body, label).x;
  const bool one_line = label_width + 2 * kGap + size.x + kRowPad <= width;
  const float label_height = wrapped_height(*ui.fonts.body, label, width - kRowPad);
  const float content = one_line ? std::max(label_height, size.y) : label_height + size.y;
  const Rect box = take_box(ui, std::max(ui.theme.target, content + 2 * kRowPad));
  const Look look =
      add_pressed(ui, {std::string(key), Role::kButton, Touch::kPress, std::string(label), std::string(value), box});
  ImDrawList& list = pen(ui);
  if (look.lit || look.held) list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
  editing = editing || ui.memory.editing == key;
  if (editing) {
    const Rect edge = shrunk(box, 1);
    list.AddRect(top_left(edge), bottom_right(edge), ui.theme.edit, 0, ImDrawFlags_None, 2);
    list.AddRectFilled(top_left(box), {box.x + 6, box.y + box.h}, ui.theme.edit);
  }
  const float top = box.y + (box.h - content) / 2, left = box.x + (editing ? 2 * kRowPad : 0);
  const float label_top = one_line ? box.y + (box.h - label_height) / 2 : top;
  draw_wrapped(list, *ui.fonts.body, {left, label_top}, ui.theme.ink, label, width - kRowPad);
  const ImVec2 at{box.x + width - size.x - (editing ? kRowPad : 0),
                  one_line ? box.y + (box.h - size.y) / 2 : top + label_height};
  draw_text(list, font, at, ui.theme.edit, value);
  draw_dotted_line(list, {at.x, at.y + size.y - 1}, size.x, ui.theme.edit);
  draw_focus(ui, look, box);
  space(ui, kGap / 2);
  return look.pressed;
}

std::optional<std::string> text_field(Ui& ui, ItemKey key, std::string_view label, std::string_view value) {
  const Theme& t = ui.theme;
  const Rect line = take_box(ui, wrapped_height(*ui.fonts.note, label, ui.column.width) + 4);
  draw_wrapped(pen(ui), *ui.fonts.note, top_left(line), t.ink, label, line.w);
  const Rect box = take_box(ui, std::max(t.target, ui.fonts.body->FontSize + 2 * kRowPad));
  const Look look =
      add_pressed(ui, {std::string(key), Role::kTextField, Touch::kPress, std::string(label), std::string(value), box});
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), look.lit || look.held ? t.pressed : t.ground);
  const Rect edge = shrunk(box, 1);
  list.AddRect(top_left(edge), bottom_right(edge), t.rule, 0, ImDrawFlags_None, 2);
  const std::string shown = fit_text(*ui.fonts.body, value, box.w - 3 * kRowPad);
  const ImVec2 at{box.x + kRowPad + 4, box.y + (box.h - ui.fonts.body->FontSize) / 2};
  draw_text(list, *ui.fonts.body, at, t.edit, shown);
  draw_dotted_line(list, {at.x, box.y + box.h - 8}, box.w - 3 * kRowPad, t.edit);
  draw_focus(ui, look, box);
  space(ui, kGap);
  if (look.pressed && ui.memory.platform)
    ui.memory.platform->begin_text({std::string(key), std::string(label), std::string(value), box});
  std::optional<std::string> typed = text_typed(ui, key);
  auto& refused = ui.memory.refused_text;
  const std::optional<std::uint32_t> invisible = typed ? invisible_in(*typed) : std::nullopt;
  if (invisible)
    refused = {std::string(key), *invisible};
  else if (typed && refused.key == key)
    refused = {};
  if (refused.key == key)
    caution(ui, std::string(key) + ".refused",
            say(Msg::kTextInvisible, ui.language, {{"code", code_name(refused.code)}}));
  return invisible ? std::nullopt : typed;
}

std::optional<double> slider(Ui& ui, ItemKey key, std::string_view name, double value, double min, double max,
                             double step, std::string_view value_text) {
  const Theme& t = ui.theme;
  const Rect line = take_box(ui, ui.fonts.body->FontSize);
  const float value_width = text_size(*ui.fonts.strong, value_text).x;
  draw_text(pen(ui), *ui.fonts.body, top_left(line), t.ink, fit_text(*ui.fonts.body, name, line.w - value_width - 16));
  draw_text(pen(ui), *ui.fonts.strong, {line.x + line.w - value_width, line.y}, t.ink, value_text);
  const Rect box = take_box(ui, t.target);
  Item item{std::string(key), Role::kSlider, Touch::kDrag, std::string(name), std::string(value_text), box};
  item.min = min;
  item.max = max;
  item.step = step;
  item.number = value;
  const Look look = add_pressed(ui, std::move(item));
  const float inset = 16, left = box.x + inset, width = box.w - 2 * inset, y = box.y + box.h / 2;
  const auto place = [&](double v) { return left + width * static_cast<float>((v - min) / (max - min)); };
  ImDrawList& list = pen(ui);
  list.AddLine({left, y}, {left + width, y}, t.ink, 2);
  const int stops = static_cast<int>((max - min) / step + 0.5);
  for (int i = 0; i <= stops && stops <= 40; ++i) {
    const float x = place(min + step * i);
    list.AddLine({x, y - 5}, {x, y + 5}, t.ink, 1);
  }
  const float at = place(value);
  list.AddRectFilled({at - 7, y - 16}, {at + 7, y + 16}, t.edit);
  draw_focus(ui, look, box);
  space(ui, kGap);

  double wanted = value;
  Action action;
  if (!ui.locked && !ui.read_only && ui.registry.take(key, Action::Kind::kSetNumber, &action))
    wanted = action.number;
  else if (look.held)
    wanted = min + static_cast<double>((ImGui::GetIO().MousePos.x - left) / width) * (max - min);
  else
    return std::nullopt;
  const double steps = (std::clamp(wanted, min, max) - min) / step + 0.5;
  wanted = std::min(max, min + step * static_cast<double>(static_cast<long long>(steps)));
  if (wanted == value) return std::nullopt;
  return wanted;
}

}  // namespace bentbook::screens
