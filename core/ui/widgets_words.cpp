#include <algorithm>
#include <string>
#include <utility>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

void words(Ui& ui, ItemKey key, std::string_view text, ImFont& font, ImU32 colour, Role role, int level) {
  const Rect box = take_box(ui, wrapped_height(font, text, ui.column.width));
  draw_wrapped(pen(ui), font, top_left(box), colour, text, box.w);
  Item item{std::string(key), role, Touch::kNone, std::string(text), {}, box};
  item.level = level;
  add_read(ui, std::move(item));
}

}  // namespace

void heading(Ui& ui, ItemKey key, std::string_view text, int level) {
  space(ui, level <= 2 ? kGap : 0);
  words(ui, key, text, level <= 2 ? *ui.fonts.measure : *ui.fonts.strong, ui.theme.ink, Role::kHeading, level);
  space(ui, kGap);
}

void body(Ui& ui, ItemKey key, std::string_view text) {
  words(ui, key, text, *ui.fonts.body, ui.theme.ink, Role::kText, 0);
  space(ui, kGap);
}

void note(Ui& ui, ItemKey key, std::string_view text) {
  words(ui, key, text, *ui.fonts.note, ui.theme.quiet, Role::kText, 0);
  space(ui, kGap);
}

void refusal(Ui& ui, ItemKey key, std::string_view text) {
  const Theme& t = ui.theme;
  const float pad = 12, inner = ui.column.width - 2 * pad - 4;
  const Rect box = take_box(ui, wrapped_height(*ui.fonts.body, text, inner) + 2 * pad);
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), t.panel);
  list.AddRectFilled(top_left(box), {box.x + 4, box.y + box.h}, t.caution);
  draw_wrapped(list, *ui.fonts.body, {box.x + pad + 4, box.y + pad}, t.ink, text, inner);
  add_read(ui, {std::string(key), Role::kText, Touch::kNone, std::string(text), {}, box});
  space(ui, kGap);
}

void caution(Ui& ui, ItemKey key, std::string_view text) {
  const Theme& t = ui.theme;
  const std::string_view word = ui.say(Msg::kCaution);
  const float pad = 12, sign = 28, inner = ui.column.width - 3 * pad - sign;
  const float height = ui.fonts.strong->FontSize + wrapped_height(*ui.fonts.body, text, inner) + 2 * pad;
  const Rect box = take_box(ui, height);
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), t.caution_ground);
  list.AddRectFilled(top_left(box), {box.x + 4, box.y + box.h}, t.caution);
  draw_triangle_sign(list, {box.x + pad, box.y + pad, sign, sign}, t.caution);
  const float left = box.x + 2 * pad + sign;
  draw_text(list, *ui.fonts.strong, {left, box.y + pad}, t.caution, word);
  draw_wrapped(list, *ui.fonts.body, {left, box.y + pad + ui.fonts.strong->FontSize}, t.caution, text, inner);
  add_read(ui, {std::string(key), Role::kText, Touch::kNone, std::string(word) + ": " + std::string(text), {}, box});
  space(ui, kGap);
}

void answer(Ui& ui, ItemKey key, std::string_view label, std::string_view value, std::string_view exact, bool about) {
  const Theme& t = ui.theme;
  const std::string shown = about ? "≈ " + std::string(value) : std::string(value);
  const float width = ui.column.width;
  ImFont* font = ui.fonts.answer;
  if (text_size(*font, shown).x > width) font = ui.fonts.measure_strong;
  if (!has_glyphs(*font, shown)) font = ui.fonts.strong;  // a mark in small letters, a unit in words
  const float label_height = label.empty() ? 0 : wrapped_height(*ui.fonts.body, label, width);
  const float value_height = text_size(*font, shown).x > width ? wrapped_height(*font, shown, width) : font->FontSize;
  const float exact_height = exact.empty() ? 0 : wrapped_height(*ui.fonts.note, exact, width);
  const Rect box = take_box(ui, label_height + value_height + exact_height);
  ImDrawList& list = pen(ui);
  if (!label.empty()) draw_wrapped(list, *ui.fonts.body, top_left(box), t.ink, label, width);
  draw_wrapped(list, *font, {box.x, box.y + label_height}, t.ink, shown, width);
  if (!exact.empty())
    draw_wrapped(list, *ui.fonts.note, {box.x, box.y + label_height + value_height}, t.quiet, exact, width);
  Item item{std::string(key), Role::kAnswer, Touch::kNone, std::string(label), shown, box};
  item.live = true;
  if (!exact.empty()) item.value += " (" + std::string(exact) + ")";
  add_read(ui, std::move(item));
  space(ui, kGap);
}

void fact(Ui& ui, ItemKey key, std::string_view label, std::string_view value, bool live) {
  const float width = ui.column.width;
  ImFont& quiet = *ui.fonts.body;
  ImFont& strong = *ui.fonts.strong;
  const float value_width = text_size(strong, value).x;
  const bool one_line = text_size(quiet, label).x + 2 * kGap + value_width <= width;
  const float label_height = wrapped_height(quiet, label, width);
  const float value_height = one_line ? strong.FontSize : wrapped_height(strong, value, width);
  const Rect box = take_box(ui, (one_line ? std::max(label_height, value_height) : label_height + value_height) + 6);
  draw_wrapped(pen(ui), quiet, top_left(box), ui.theme.ink, label, width);
  if (one_line)
    draw_text(pen(ui), strong, {box.x + width - value_width, box.y}, ui.theme.ink, value);
  else
    draw_wrapped(pen(ui), strong, {box.x, box.y + label_height}, ui.theme.ink, value, width);
  Item item{std::string(key), Role::kAnswer, Touch::kNone, std::string(label), std::string(value), box};
  item.live = live;
  add_read(ui, std::move(item));
}

void figure_read(Ui& ui, ItemKey key, std::string_view name, std::string_view value, Rect drawn, bool live) {
  Item item{std::string(key), Role::kAnswer, Touch::kNone, std::string(name), std::string(value), drawn};
  item.live = live;
  add_read(ui, std::move(item));
}

}  // namespace bentbook::screens
