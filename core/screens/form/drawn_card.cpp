#include "screens/form/drawn_card.h"

#include <algorithm>

#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

constexpr float kNarrowest = 136, kPicture = 72;

float label_height(Ui& ui, const std::vector<DrawnOption>& options, float width) {
  float height = 0;
  for (const DrawnOption& option : options)
    height = std::max(height, wrapped_height(*ui.fonts.strong, option.name, width - 2 * kGap));
  return height;
}

bool card(Ui& ui, std::string_view group, DrawnOption& option, const Rect& box, float label, bool chosen) {
  Item item{option.key, Role::kRadio, Touch::kPress, std::string(option.name), std::string(group), box};
  item.checked = chosen;
  const Look look = add_pressed(ui, std::move(item));
  ImDrawList& list = pen(ui);
  if (look.lit || look.held) list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.pressed);
  draw::Drawing& drawing = option.drawing;
  drawing.dimensions.clear();
  drawing.angles.clear();
  drawing.notes.clear();
  const Rect picture{box.x + kGap, box.y + kGap, box.w - 2 * kGap, box.h - label - 2 * kGap};
  Canvas& canvas = ui.memory.sheets[option.key].canvas;
  canvas.set(ui.theme, ui.fonts, drawing, {picture.w, picture.h},
             [](std::string_view, draw::Meaning) { return std::string{}; });
  canvas.paint(list, ui.theme, ui.fonts, drawing, picture);
  const Rect edge = shrunk(box, 1);
  list.AddRect(top_left(edge), bottom_right(edge), chosen ? ui.theme.edit : ui.theme.rule, 0, ImDrawFlags_None,
               chosen ? 3.0F : 2.0F);
  if (chosen) draw_icon(list, Icon::kTick, {box.x + box.w - 32, box.y + kGap, 24, 24}, ui.theme.edit, 3);
  draw_centred(list, chosen ? *ui.fonts.strong : *ui.fonts.body,
               {box.x + kGap, box.y + box.h - label - kGap / 2, box.w - 2 * kGap, label},
               chosen ? ui.theme.edit : ui.theme.ink, option.name);
  draw_focus(ui, look, box);
  return look.pressed;
}

}  // namespace

std::optional<int> drawn_choice(Context& context, std::string_view group, std::vector<DrawnOption> options,
                                int chosen) {
  Ui& ui = context.ui;
  const int count = static_cast<int>(options.size());
  const int room = static_cast<int>((ui.column.width + kGap) / (kNarrowest + kGap));
  const int columns = std::max(1, std::min({room, count, 4}));
  const float width = (ui.column.width - kGap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  const float label = label_height(ui, options, width), height = kPicture + label + 2 * kGap;
  std::optional<int> pressed;
  for (int i = 0; i < count; ++i) {
    const Rect box{ui.column.x + static_cast<float>(i % columns) * (width + kGap),
                   ui.column.y + static_cast<float>(i / columns) * (height + kGap), width, height};
    if (card(ui, group, options[static_cast<std::size_t>(i)], box, label, i == chosen)) pressed = i;
  }
  ui.column.y += static_cast<float>((count + columns - 1) / columns) * (height + kGap);
  return pressed;
}

}  // namespace bentbook::screens
