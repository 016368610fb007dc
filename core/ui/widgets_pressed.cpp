#include <algorithm>
#include <string>
#include <utility>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

void draw_ground(Ui& ui, const Look& look, const Rect& box) {
  if (look.lit || look.held) pen(ui).AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
}

struct ButtonInk {
  ImU32 fill = 0, line = 0, text = 0;
};

ButtonInk button_ink(const Theme& t, Weight weight, bool enabled, const Look& look) {
  if (!enabled) return {0, 0, t.quiet};
  const ImU32 quiet_fill = look.lit || look.held ? t.pressed : t.ground;
  if (weight == Weight::kDestructive) return {quiet_fill, t.ink, t.ink};
  if (weight == Weight::kQuiet) return {quiet_fill, t.rule, t.ink};
  return {look.held ? mix(t.edit, t.ink, 0.25F) : t.edit, t.edit, t.on_edit};
}

}  // namespace

bool button_in(Ui& ui, ItemKey key, Rect box, std::string_view label, Weight weight, bool enabled,
               std::string_view name) {
  Item item{std::string(key), Role::kButton, Touch::kPress, std::string(name.empty() ? label : name), {}, box};
  item.enabled = enabled;
  const Look look = add_pressed(ui, std::move(item));
  const ButtonInk ink = button_ink(ui.theme, weight, enabled, look);
  ImDrawList& list = pen(ui);
  if (enabled) {
    list.AddRectFilled(top_left(box), bottom_right(box), ink.fill);
    const Rect edge = shrunk(box, 1);
    list.AddRect(top_left(edge), bottom_right(edge), ink.line, 0, ImDrawFlags_None, 2);
    if (weight == Weight::kDestructive) {
      const Rect inner = shrunk(box, 5);
      list.AddRect(top_left(inner), bottom_right(inner), ink.line, 0, ImDrawFlags_None, 1);
    }
  }
  draw_centred(list, *ui.fonts.strong, shrunk(box, 4), ink.text, label);
  draw_focus(ui, look, box);
  return look.pressed;
}

bool button(Ui& ui, ItemKey key, std::string_view label, Weight weight, bool enabled) {
  const float width = std::min(ui.column.width, 480.0F);
  const float height = std::max(ui.theme.target, wrapped_height(*ui.fonts.strong, label, width - 32) + 16);
  const bool pressed = button_in(ui, key, take_box(ui, width, height), label, weight, enabled);
  space(ui, kGap);
  return pressed;
}

bool icon_button(Ui& ui, ItemKey key, Rect box, Icon icon, std::string_view name, bool enabled) {
  Item item{std::string(key), Role::kButton, Touch::kPress, std::string(name), {}, box};
  item.enabled = enabled;
  const Look look = add_pressed(ui, std::move(item), false);
  draw_ground(ui, look, box);
  const float side = 24;
  draw_icon(pen(ui), icon, {box.x + (box.w - side) / 2, box.y + (box.h - side) / 2, side, side},
            enabled ? ui.theme.ink : ui.theme.rule);
  draw_focus(ui, look, box);
  return look.pressed;
}

float tab_type(Ui& ui, std::span<const std::string_view> names, float width) {
  float widest = 1;
  for (const std::string_view name : names) widest = std::max(widest, text_size(*ui.fonts.strong, name).x);
  return ui.fonts.strong->FontSize * std::min(1.0F, width / widest);
}

bool tab_in(Ui& ui, ItemKey key, Rect box, Icon icon, std::string_view name, bool chosen, float type) {
  Item item{std::string(key), Role::kTab, Touch::kPress, std::string(name), {}, box};
  item.checked = chosen;
  const Look look = add_pressed(ui, std::move(item), false);
  draw_ground(ui, look, box);
  ImDrawList& list = pen(ui);
  const ImU32 ink = chosen ? ui.theme.edit : ui.theme.ink;
  ImFont& font = chosen ? *ui.fonts.strong : *ui.fonts.body;
  const float icon_side = std::min(24.0F, box.h - type - 8);
  const float top = box.y + (box.h - type - icon_side) / 2;
  if (chosen) list.AddRectFilled(top_left(box), {box.x + box.w, box.y + 4}, ui.theme.edit);
  draw_icon(list, icon, {box.x + (box.w - icon_side) / 2, top, icon_side, icon_side}, ink, chosen ? 3.0F : 2.0F);
  const float wide = text_size(font, name).x * type / font.FontSize;
  list.AddText(&font, type, {box.x + (box.w - wide) / 2, top + icon_side}, ink, name.data(), name.data() + name.size());
  draw_focus(ui, look, box);
  return look.pressed;
}

namespace {

/// How many stand beside one another so that every label fits, on two lines at most.
int columns_for(Ui& ui, std::span<const std::string_view> options, float width) {
  const int n = static_cast<int>(options.size());
  ImFont& font = *ui.fonts.strong;
  const auto fits = [&](int columns, std::size_t lines) {
    const float cell = (width - kGap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    return cell >= ui.theme.target && std::all_of(options.begin(), options.end(), [&](std::string_view o) {
             const auto wrapped = wrap_text(font, o, cell - 16);
             return wrapped.size() <= lines && std::all_of(wrapped.begin(), wrapped.end(), [&](const std::string& l) {
                      return text_size(font, l).x <= cell - 12;
                    });
           });
  };
  for (const std::size_t lines : {1U, 2U})
    if (fits(n, lines)) return n;
  // Several rows of as many as fit, two rows first.
  for (const std::size_t lines : {1U, 2U})
    for (int columns = (n + 1) / 2; n > 3 && columns > 1; --columns)
      if (fits(columns, lines)) return columns;
  return 1;
}

bool option_in(Ui& ui, ItemKey key, std::string_view group, std::string_view label, const Rect& box, bool chosen) {
  Item item{std::string(key), Role::kRadio, Touch::kPress, std::string(label), std::string(group), box};
  item.checked = chosen;
  const Look look = add_pressed(ui, std::move(item));
  const Theme& t = ui.theme;
  ImDrawList& list = pen(ui);
  const ImU32 fill = chosen ? t.edit : look.lit || look.held ? t.pressed : t.ground;
  list.AddRectFilled(top_left(box), bottom_right(box), fill);
  const Rect edge = shrunk(box, 1);
  list.AddRect(top_left(edge), bottom_right(edge), chosen ? t.edit : t.rule, 0, ImDrawFlags_None, 2);
  // The chosen one carries a notch at its foot, so that it is told without its colour.
  if (chosen) {
    const float mid = box.x + box.w / 2, foot = box.y + box.h;
    list.AddTriangleFilled({mid - 7, foot}, {mid + 7, foot}, {mid, foot - 7}, t.on_edit);
  }
  draw_centred(list, chosen ? *ui.fonts.strong : *ui.fonts.body, shrunk(box, 4), chosen ? t.on_edit : t.ink, label);
  draw_focus(ui, look, box);
  return look.pressed && !chosen;
}

}  // namespace

std::optional<int> choice(Ui& ui, ItemKey key, std::string_view name, std::span<const std::string_view> options,
                          int chosen) {
  if (!name.empty()) {
    const Rect line = take_box(ui, wrapped_height(*ui.fonts.note, name, ui.column.width) + 4);
    draw_wrapped(pen(ui), *ui.fonts.note, top_left(line), ui.theme.ink, name, line.w);
  }
  const int columns = columns_for(ui, options, ui.column.width);
  const float cell = (ui.column.width - kGap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  float height = ui.theme.target;
  for (const std::string_view& o : options)
    height = std::max(height, wrapped_height(*ui.fonts.strong, o, cell - 16) + 16);
  std::optional<int> picked;
  for (int i = 0; i < static_cast<int>(options.size()); ++i) {
    const float x = ui.column.x + static_cast<float>(i % columns) * (cell + kGap);
    const float y = ui.column.y + static_cast<float>(i / columns) * (height + kGap);
    const std::string item_key = std::string(key) + "." + std::to_string(i);
    const std::string_view label = options[static_cast<std::size_t>(i)];
    if (option_in(ui, item_key, name, label, {x, y, cell, height}, i == chosen)) picked = i;
  }
  const int rows = (static_cast<int>(options.size()) + columns - 1) / columns;
  ui.column.y += static_cast<float>(rows) * (height + kGap);
  return picked;
}

std::optional<int> choice(Ui& ui, ItemKey key, std::string_view name, std::initializer_list<std::string_view> options,
                          int chosen) {
  return choice(ui, key, name, std::span<const std::string_view>(options.begin(), options.size()), chosen);
}

bool figure(Ui& ui, ItemKey key, std::string_view name, std::string_view value, Rect drawn) {
  const float grow_x = std::max(0.0F, (ui.theme.target - drawn.w) / 2);
  const float grow_y = std::max(0.0F, (ui.theme.target - drawn.h) / 2);
  const Rect box{drawn.x - grow_x, drawn.y - grow_y, drawn.w + 2 * grow_x, drawn.h + 2 * grow_y};
  const Look look =
      add_pressed(ui, {std::string(key), Role::kButton, Touch::kPress, std::string(name), std::string(value), box});
  if (look.lit || look.held || look.focused || ui.memory.editing == key) {
    const Rect edge = shrunk(box, 1);
    pen(ui).AddRect(top_left(edge), bottom_right(edge), ui.theme.edit, 0, ImDrawFlags_None, look.held ? 3.0F : 2.0F);
  }
  return look.pressed;
}

void picture(Ui& ui, ItemKey key, std::string_view name, Rect box, bool drag) {
  Item item{std::string(key), Role::kImage, drag ? Touch::kDrag : Touch::kNone, std::string(name), {}, box};
  if (drag)
    add_pressed(ui, std::move(item), false);
  else
    add_read(ui, std::move(item));
}

bool hold_button(Ui& ui, ItemKey key, Rect box, std::string_view label, double hold_ms, std::optional<Icon> icon) {
  const Look look =
      add_pressed(ui, {std::string(key), Role::kButton, Touch::kHold, std::string(label), {}, box}, false);
  Ui::Memory& memory = ui.memory;
  bool fired = ui.registry.take(key, Action::Kind::kHold);
  float share = 0;
  if (look.held) {
    if (memory.hold != key) {
      memory.hold = key;
      memory.hold_from_ms = ui.now_ms;
      memory.hold_fired = false;
    }
    share = static_cast<float>(std::min(1.0, (ui.now_ms - memory.hold_from_ms) / hold_ms));
    if (share >= 1 && !memory.hold_fired) {
      memory.hold_fired = true;
      fired = true;
    }
    if (!memory.hold_fired) memory.want_frame = true;
  } else if (memory.hold == key) {
    memory.hold.clear();
  }
  const Theme& t = ui.theme;
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), t.ground);
  const Rect edge = shrunk(box, 1);
  list.AddRect(top_left(edge), bottom_right(edge), t.rule, 0, ImDrawFlags_None, 2);
  const float r = std::min(box.h, 64.0F) / 2 - 10, cx = box.x + 12 + r, cy = box.y + box.h / 2;
  list.AddCircle({cx, cy}, r, t.rule, 32, 2);
  if (share > 0) {
    list.PathArcTo({cx, cy}, r, -1.5707963F, -1.5707963F + 6.2831853F * share, 32);
    list.PathStroke(t.edit, ImDrawFlags_None, 6);
  }
  if (icon) draw_icon(list, *icon, {cx - r * 0.6F, cy - r * 0.6F, r * 1.2F, r * 1.2F}, t.ink);
  const float left = 2 * r + 20;
  draw_centred(list, *ui.fonts.strong, {box.x + left, box.y, box.w - left - 8, box.h}, t.ink, label);
  draw_focus(ui, look, box);
  return fired;
}

}  // namespace bentbook::screens
