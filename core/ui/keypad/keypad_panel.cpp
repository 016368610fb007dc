// The keypad's panel: how it divides the screen, and the keys.

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "ui/keypad/keypad_parts.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

constexpr float kKeysAside = 4;  ///< columns and rows of keys

float strip_height(const Ui& ui, const Keypad& keypad, float width) {
  float height = kGap + words_height(ui) + ui.theme.target + kGap;
  if (shows_forms(keypad)) height += ui.theme.target + kGap;
  if (keypad.has_tape() && width < kWideStrip) height += kTapeHeight + kGap;
  return height;
}

/// The row of usual values stands only where this much is left to the page.
constexpr float kLeastPage = 96;

float usual_height(const Ui& ui, const Keypad& keypad) { return keypad.offered().empty() ? 0 : ui.theme.target + kGap; }

/// Takes the usual values' row off the page's foot.
KeypadBoxes with_usual(KeypadBoxes boxes, float height) {
  if (boxes.page.h - height < kLeastPage) return boxes;
  boxes.page.h -= height;
  boxes.usual = {boxes.page.x, boxes.page.y + boxes.page.h, boxes.page.w, height};
  return boxes;
}

float keys_height(float key) { return kKeysAside * key + (kKeysAside - 1) * kGap + 2 * kGap; }

}  // namespace

KeypadBoxes keypad_boxes(const Ui& ui, const Keypad& keypad, Rect area, bool landscape) {
  const float target = ui.theme.target;
  if (landscape) {
    const float width = std::min(area.w * 0.42F, std::max(keys_height(target), 300.0F));
    const Rect keys{area.x + area.w - width, area.y, width, area.h};
    const float left = area.w - width;
    const float strip = std::min(area.h, strip_height(ui, keypad, left));
    return with_usual({{area.x, area.y + area.h - strip, left, strip}, keys, {area.x, area.y, left, area.h - strip}},
                      usual_height(ui, keypad));
  }
  const float key = std::clamp((area.h * 0.36F - 5 * kGap) / kKeysAside, target, std::max(target, 64.0F));
  const float keys = keys_height(key), strip = strip_height(ui, keypad, area.w);
  const float bottom = area.y + area.h;
  return with_usual({{area.x, bottom - keys - strip, area.w, strip},
                     {area.x, bottom - keys, area.w, keys},
                     {area.x, area.y, area.w, std::max(0.0F, area.h - keys - strip)}},
                    usual_height(ui, keypad));
}

namespace {

struct KeyFace {
  std::string_view key;
  std::string_view name;
  std::string_view label;  ///< "" where an icon stands
  std::optional<Icon> icon;
  Weight weight = Weight::kQuiet;
};

/// In the largest of the fonts that has room for it; a word that none has room for is drawn smaller.
void draw_label(Ui& ui, std::string_view label, const Rect& box, ImU32 ink) {
  for (ImFont* font : {&figure_font(ui, box.h + 4), ui.fonts.strong, ui.fonts.note})
    if (has_glyphs(*font, label) && text_size(*font, label).x <= box.w)
      return draw_centred(pen(ui), *font, box, ink, label);
  ImFont& font = *ui.fonts.note;
  const float size = font.FontSize * box.w / text_size(font, label).x;
  pen(ui).AddText(&font, size, {box.x, box.y + (box.h - size) / 2}, ink, label.data(), label.data() + label.size());
}

bool key_in(Ui& ui, const KeyFace& face, const Rect& box) {
  const Theme& t = ui.theme;
  const std::string key = "keypad." + std::string(face.key);
  const Look look = add_pressed(ui, {key, Role::kButton, Touch::kPress, std::string(face.name), {}, box});
  ImDrawList& list = pen(ui);
  const bool primary = face.weight == Weight::kPrimary, down = look.lit || look.held;
  const ImU32 fill = primary ? (down ? mix(t.edit, t.ink, 0.25F) : t.edit) : down ? t.pressed : t.ground;
  const ImU32 ink = primary ? t.on_edit : t.ink;
  list.AddRectFilled(top_left(box), bottom_right(box), fill);
  const Rect edge = shrunk(box, 0.5F);
  list.AddRect(top_left(edge), bottom_right(edge), primary ? t.edit : t.rule, 0, ImDrawFlags_None, 1);
  if (face.icon) {
    // A word that the key has no room for leaves its place to the sign.
    const bool both = !face.label.empty() && text_size(*ui.fonts.strong, face.label).x <= box.w - 4 &&
                      ui.fonts.strong->FontSize + 28 <= box.h;
    const float side = 24, text = both ? ui.fonts.strong->FontSize : 0, top = box.y + (box.h - side - text) / 2;
    draw_icon(list, *face.icon, {box.x + (box.w - side) / 2, top, side, side}, ink, 2.5F);
    if (both) draw_centred(list, *ui.fonts.strong, {box.x + 2, top + side, box.w - 4, text}, ink, face.label);
  } else {
    draw_label(ui, face.label, shrunk(box, 2), ink);
  }
  draw_focus(ui, look, box);
  return look.pressed;
}

struct Grid {
  Rect box;
  [[nodiscard]] Rect cell(int column, int row, int rows = 1) const {
    const float w = (box.w - 3 * kGap) / 4, h = (box.h - 3 * kGap) / 4;
    return {box.x + static_cast<float>(column) * (w + kGap), box.y + static_cast<float>(row) * (h + kGap), w,
            h * static_cast<float>(rows) + kGap * static_cast<float>(rows - 1)};
  }
};

void digit_keys(Ui& ui, Keypad& keypad, const Grid& grid) {
  static constexpr std::string_view kDigits[] = {"0", "1", "2", "3", "4", "5", "6", "7", "8", "9"};
  for (int d = 0; d <= 9; ++d) {
    const int column = d == 0 ? 1 : (d - 1) % 3, row = d == 0 ? 3 : (d - 1) / 3;
    const std::string key = "digit." + std::to_string(d);
    const std::string_view label = kDigits[d];
    if (key_in(ui, {key, label, label, {}}, grid.cell(column, row))) keypad.press({Stroke::Kind::kDigit, d});
  }
  if (keypad.takes_point()) {
    if (key_in(ui, {"point", ui.say(Msg::kKeyPoint), ".", {}}, grid.cell(2, 3))) keypad.press({Stroke::Kind::kPoint});
  } else if (keypad.takes_sign()) {
    if (key_in(ui, {"sign", ui.say(Msg::kKeySign), "+/−", {}}, grid.cell(2, 3))) keypad.press({Stroke::Kind::kSign});
  }
}

void operator_keys(Ui& ui, Keypad& keypad, const Grid& grid) {
  struct Operator {
    char c;
    std::string_view key;
    Msg name;
    std::string_view label;
    std::optional<Icon> icon;
  };
  static constexpr Operator kOperators[] = {
      {'+', "plus", Msg::kKeyPlus, {}, Icon::kPlus},        {'-', "minus", Msg::kKeyMinus, {}, Icon::kMinus},
      {'*', "times", Msg::kKeyTimes, {}, Icon::kTimes},     {'/', "divide", Msg::kKeyDivide, {}, Icon::kDivide},
      {'(', "open_bracket", Msg::kKeyOpenBracket, "(", {}}, {')', "close_bracket", Msg::kKeyCloseBracket, ")", {}},
  };
  for (int i = 0; i < 6; ++i) {
    const Operator& o = kOperators[i];
    if (key_in(ui, {o.key, ui.say(o.name), o.label, o.icon}, grid.cell(i % 2, i / 2)))
      keypad.press({Stroke::Kind::kOperator, o.c});
  }
  if (keypad.takes_sign() && key_in(ui, {"sign", ui.say(Msg::kKeySign), "+/−", {}}, grid.cell(2, 0)))
    keypad.press({Stroke::Kind::kSign});
}

void draw_keys(Ui& ui, Keypad& keypad, const Rect& box) {
  const float width = std::min(box.w - 2 * kGap, 560.0F);
  const Grid grid{{box.x + (box.w - width) / 2, box.y + kGap, width, box.h - 2 * kGap}};
  if (keypad.operators())
    operator_keys(ui, keypad, grid);
  else
    digit_keys(ui, keypad, grid);
  // In words: a sign for closing would stand beside the one for times.
  const std::string_view cancel = ui.say(Msg::kKeyCancel);
  if (key_in(ui, {"cancel", cancel, cancel, {}}, grid.cell(0, 3))) keypad.press({Stroke::Kind::kCancel});
  if (key_in(ui, {"erase", ui.say(Msg::kKeyErase), {}, Icon::kErase}, grid.cell(3, 0)))
    keypad.press({Stroke::Kind::kErase});
  if (keypad.takes_sum()) {
    const std::string_view word = ui.say(Msg::kKeySum);
    const bool fits = text_size(*ui.fonts.strong, word).x <= grid.cell(3, 1).w - 4;
    const KeyFace face = keypad.operators() ? KeyFace{"sum", ui.say(Msg::kKeyDigits), "123", {}}
                                            : KeyFace{"sum", word, fits ? word : "+ −", {}};
    if (key_in(ui, face, grid.cell(3, 1))) keypad.press({Stroke::Kind::kOperators});
  } else if (keypad.takes_sign() && keypad.takes_point()) {
    if (key_in(ui, {"sign", ui.say(Msg::kKeySign), "+/−", {}}, grid.cell(3, 1))) keypad.press({Stroke::Kind::kSign});
  }
  const std::string_view done = ui.say(Msg::kKeyDone), next = ui.say(Msg::kKeyNext);
  const bool leads_on = keypad.has_next();
  if (leads_on && key_in(ui, {"next", next, next, {}}, grid.cell(3, 2))) keypad.press({Stroke::Kind::kNext});
  if (key_in(ui, {"done", done, done, {}, Weight::kPrimary}, leads_on ? grid.cell(3, 3) : grid.cell(3, 2, 2)))
    keypad.press({Stroke::Kind::kDone});
}

/// As many as there is room for, in their order.
void usual_keys(Ui& ui, Keypad& keypad, const Rect& box) {
  float x = box.x + kGap;
  const std::vector<Keypad::Usual>& offered = keypad.offered();
  for (std::size_t i = 0; i < offered.size(); ++i) {
    const std::string& text = offered[i].text;
    const float width = std::max(ui.theme.target, text_size(*ui.fonts.strong, text).x + 2 * kGap);
    if (x + width > box.x + box.w - kGap) break;
    const std::string key = "keypad.usual." + std::to_string(i);
    const std::string name = say(Msg::kKeypadUsual, ui.language, {{"field", keypad.title()}, {"value", text}});
    if (button_in(ui, key, {x, box.y + kGap / 2, width, ui.theme.target}, text, Weight::kQuiet, true, name))
      return keypad.press({Stroke::Kind::kUsual, static_cast<int>(i)});
    x += width + kGap;
  }
}

}  // namespace

void keypad_panel(Ui& ui, Keypad& keypad, const KeypadBoxes& boxes) {
  ImDrawList& list = pen(ui);
  for (const Rect& box : {boxes.usual, boxes.strip, boxes.keys}) {
    list.AddRectFilled(top_left(box), bottom_right(box), ui.theme.panel);
  }
  const Rect& top = boxes.usual.h > 0 ? boxes.usual : boxes.strip;
  list.AddRectFilled(top_left(top), {top.x + top.w, top.y + 2}, ui.theme.rule);
  const Column outer = ui.column;
  ui.column = {};
  if (boxes.usual.h > 0) usual_keys(ui, keypad, boxes.usual);
  if (keypad.is_open()) keypad_strip(ui, keypad, boxes.strip);
  if (keypad.is_open()) draw_keys(ui, keypad, boxes.keys);
  ui.column = outer;
}

}  // namespace bentbook::screens
