// The upper part of the keypad: title and echo, the slots or the typed line, the inch of tape, the forms of a slope.

#include <algorithm>
#include <string>
#include <utility>

#include "text/utf8.h"
#include "ui/keypad/keypad_parts.h"
#include "words/error_words.h"
#include "words/words.h"

namespace bentbook::screens {
namespace {

// ── Entry and echo ────────────────────────────────────────────────────────────────────────────────────────────────

/// Trouble that more typing may mend is not cried out: nothing entered yet, or the text only ends too early.
bool still_typing(const Keypad& keypad, const Error& error) {
  return error.code == ErrorCode::kEmpty ||
         (error.at >= 0 && error.at >= static_cast<std::int64_t>(keypad.entry().size()));
}

/// A line under the byte that could not be read.
void mark_spot(Ui& ui, ImFont& font, ImVec2 at, const std::string& entry, std::int64_t byte) {
  const auto from = static_cast<std::size_t>(byte);
  if (from >= entry.size()) return;
  const std::size_t to = end_of_character(entry, from);
  const float left = text_size(font, std::string_view(entry).substr(0, from)).x;
  const float width = std::max(8.0F, text_size(font, std::string_view(entry).substr(0, to)).x - left);
  pen(ui).AddRectFilled({at.x + left, at.y + font.FontSize - 3}, {at.x + left + width, at.y + font.FontSize},
                        ui.theme.caution);
}

void draw_trouble(Ui& ui, std::string_view words, const Rect& box) {
  const Theme& t = ui.theme;
  ImDrawList& list = pen(ui);
  list.AddRectFilled(top_left(box), bottom_right(box), t.caution_ground);
  draw_triangle_sign(list, {box.x + 2, box.y, 20, 20}, t.caution);
  list.PushClipRect(top_left(box), bottom_right(box), true);
  draw_wrapped(list, *ui.fonts.note, {box.x + 26, box.y}, t.caution, words, box.w - 28);
  list.PopClipRect();
}

/// What a number alone is read in; "" where only one unit can be meant.
std::string_view bare_unit(Ui& ui, const Keypad& keypad) {
  if (keypad.quantity() != Quantity::kLength) return {};
  switch (keypad.bare_kind()) {
    case Keypad::SlotKind::kFeet:
      return ui.say(Msg::kUnitFeet);
    case Keypad::SlotKind::kInches:
      return ui.say(Msg::kUnitInches);
    case Keypad::SlotKind::kMm:
      return "mm";
    case Keypad::SlotKind::kMetres:
      return "m";
    default:
      return {};
  }
}

/// At the right end of the title's line, as much of it as there is room for.
void draw_bare_unit(Ui& ui, const Keypad& keypad, const Rect& line) {
  const std::string_view unit = bare_unit(ui, keypad);
  if (unit.empty()) return;
  const std::string words = say(Msg::kKeypadBare, ui.language, unit);
  for (const std::string_view shown : {std::string_view(words), unit}) {
    const float width = text_size(*ui.fonts.note, shown).x;
    if (width > line.w) continue;
    draw_text(pen(ui), *ui.fonts.note, {line.x + line.w - width, line.y}, ui.theme.quiet, shown);
    break;
  }
  add_read(ui, {"keypad.bare", Role::kText, Touch::kNone, words, {}, line});
}

void draw_words(Ui& ui, const Keypad& keypad, const Rect& box) {
  ImDrawList& list = pen(ui);
  const Theme& t = ui.theme;
  const Keypad::Reading now = keypad.reading();
  const std::string title = fit_text(*ui.fonts.note, keypad.title(), box.w);
  draw_text(list, *ui.fonts.note, top_left(box), t.ink, title);
  // A sum stands beside the title until it is done.
  const bool long_entry = !keypad.sum().empty() && !keypad.typing();
  const float title_width = text_size(*ui.fonts.note, title).x + 2 * kGap;
  if (!long_entry) {
    draw_bare_unit(ui, keypad,
                   {box.x + title_width, box.y, std::max(0.0F, box.w - title_width), ui.fonts.note->FontSize});
  } else if (title_width < box.w) {
    const std::string entry = keypad.entry();
    const float width = text_size(*ui.fonts.note, entry).x;
    const ImVec2 at{box.x + std::max(title_width, box.w - width), box.y};
    list.PushClipRect({box.x + title_width, box.y}, {box.x + box.w, box.y + box.h}, true);
    draw_text(list, *ui.fonts.note, {std::min(at.x, box.x + box.w - width), at.y}, t.edit, entry);
    list.PopClipRect();
  }
  Item item{"keypad.echo", Role::kAnswer, Touch::kNone, keypad.title(), {}, box};
  item.live = true;
  const float top = box.y + ui.fonts.note->FontSize;
  const Rect lines{box.x, top, box.w, box.h - ui.fonts.note->FontSize};
  if (now.good()) {
    item.value = say(Msg::kKeypadReads, ui.language, keypad.echo());
    draw_wrapped(list, *ui.fonts.strong, top_left(lines), t.ink, item.value, lines.w);
  } else if (still_typing(keypad, *now.error)) {
    item.value = ui.say(Msg::kKeypadReadsNone);
    draw_wrapped(list, *ui.fonts.body, top_left(lines), t.ink, item.value, lines.w);
  } else {
    const Voice voice{ui.language, keypad.style(), Marks::kScreen};
    const std::string limit = keypad.limit_text(*now.error);
    item.value = limit.empty() ? error_text(*now.error, voice) : error_text(*now.error, limit, voice);
    draw_trouble(ui, item.value, wrapped_height(*ui.fonts.note, item.value, lines.w - 28) <= lines.h ? lines : box);
  }
  add_read(ui, std::move(item));
}

struct SlotLook {
  Msg name;
  std::string_view mark;
};

SlotLook slot_look(Keypad::SlotKind kind, Quantity quantity) {
  switch (kind) {
    case Keypad::SlotKind::kFeet:
      return {Msg::kSlotFeet, "′"};
    case Keypad::SlotKind::kInches:
      return quantity == Quantity::kSlope ? SlotLook{Msg::kSlotRise, ""} : SlotLook{Msg::kSlotInches, "″"};
    case Keypad::SlotKind::kFraction:
      return {Msg::kSlotFraction, quantity == Quantity::kSlope ? ":12" : "″"};
    case Keypad::SlotKind::kMm:
      return {Msg::kSlotMm, "mm"};
    case Keypad::SlotKind::kMetres:
      return {Msg::kSlotMetres, "m"};
    case Keypad::SlotKind::kDegrees:
      return {Msg::kSlotDegrees, "°"};
    case Keypad::SlotKind::kPercent:
      return {Msg::kSlotPercent, "%"};
    case Keypad::SlotKind::kMmPerM:
      return {Msg::kSlotMmPerM, "mm/m"};
    case Keypad::SlotKind::kPlain:
      break;
  }
  return {Msg::kSlotNumber, ""};
}

std::string tick_text(int tick, int denominator) {
  if (tick == 0) return "0";
  while (tick % 2 == 0) {
    tick /= 2;
    denominator /= 2;
  }
  return std::to_string(tick) + "⁄" + std::to_string(denominator);
}

/// What stands in a slot, without its mark.
std::string slot_text(const Keypad& keypad, int i) {
  const Keypad::Slot& slot = keypad.slot(i);
  std::string text = slot.digits;
  if (slot.kind == Keypad::SlotKind::kFraction)
    text = keypad.tick() > 0 ? tick_text(keypad.tick(), keypad.denominator()) : "";
  return i == 0 && keypad.negative() ? "−" + text : text;
}

void draw_slot(Ui& ui, Keypad& keypad, int i, const Rect& box) {
  const Theme& t = ui.theme;
  const Keypad::Slot& slot = keypad.slot(i);
  const SlotLook look = slot_look(slot.kind, keypad.quantity());
  const std::string text = slot_text(keypad, i);
  const bool active = i == keypad.active_slot();
  Item item{"keypad.slot." + std::to_string(i), Role::kButton, Touch::kPress,
            std::string(ui.say(look.name)),     text,          box};
  item.checked = active;
  const Look press = add_pressed(ui, std::move(item));
  ImDrawList& list = pen(ui);
  const bool old = keypad.fresh() && active;
  list.AddRectFilled(top_left(box), bottom_right(box), press.lit || press.held ? t.pressed : t.ground);
  ImFont& font = figure_font(ui, box.h - 4);
  const float text_width = text_size(font, text).x, mark_width = text_size(font, look.mark).x;
  const float x = box.x + std::max(4.0F, (box.w - text_width - mark_width - 4) / 2),
              y = box.y + (box.h - font.FontSize) / 2;
  // The value that the next digit replaces stands on a ground of its own.
  if (old && !text.empty())
    list.AddRectFilled({x - 2, y}, {x + text_width + 2, y + font.FontSize}, mix(t.ground, t.edit, 0.18F));
  draw_text(list, font, {x, y}, t.edit, text);
  if (active && !old)
    list.AddRectFilled({x + text_width + 1, y + 3}, {x + text_width + 3, y + font.FontSize - 3}, t.edit);
  draw_text(list, font, {x + text_width + 4, y}, t.ink, look.mark);
  const Rect edge = shrunk(box, 1);
  list.AddRect(top_left(edge), bottom_right(edge), active ? t.edit : t.rule, 0, ImDrawFlags_None, active ? 3.0F : 1.0F);
  draw_focus(ui, press, box);
  if (press.pressed) keypad.press({Stroke::Kind::kSlot, i});
}

void draw_free_text(Ui& ui, const Keypad& keypad, const Rect& box) {
  ImDrawList& list = pen(ui);
  const Rect edge = shrunk(box, 1);
  list.AddRect(top_left(edge), bottom_right(edge), ui.theme.edit, 0, ImDrawFlags_None, 3);
  const std::string entry = keypad.entry();
  ImFont& font = *ui.fonts.strong;
  const float width = text_size(font, entry).x, room = box.w - 20;
  // The end of a long entry stays in sight.
  const ImVec2 at{box.x + 8 - std::max(0.0F, width - room), box.y + (box.h - font.FontSize) / 2};
  list.PushClipRect({box.x + 4, box.y}, {box.x + box.w - 4, box.y + box.h}, true);
  draw_text(list, font, at, ui.theme.edit, entry);
  list.AddRectFilled({at.x + width + 2, at.y + 2}, {at.x + width + 4, at.y + font.FontSize - 2}, ui.theme.edit);
  const Keypad::Reading now = keypad.reading();
  if (now.error && now.error->at >= 0 && !still_typing(keypad, *now.error))
    mark_spot(ui, font, at, entry, now.error->at);
  list.PopClipRect();
}

/// One field for a screen reader and for the tests: the whole entry as text.
void add_entry(Ui& ui, Keypad& keypad, const Rect& box) {
  Item item{"keypad.entry", Role::kTextField,
            Touch::kNone,   say(Msg::kKeyEntry, ui.language, keypad.title()),
            keypad.entry(), box};
  add_read(ui, std::move(item));
  Action action;
  if (!ui.locked && ui.registry.take("keypad.entry", Action::Kind::kSetText, &action)) keypad.set_text(action.text);
}

void draw_slots(Ui& ui, Keypad& keypad, const Rect& box) {
  add_entry(ui, keypad, box);
  if (keypad.typing()) return draw_free_text(ui, keypad, box);
  const auto n = static_cast<float>(keypad.slot_count());
  const float width = (box.w - kGap * (n - 1)) / n;
  // Pressing a slot may change how many there are: what is drawn is settled first.
  const int count = keypad.slot_count();
  for (int i = 0; i < count && i < keypad.slot_count(); ++i)
    draw_slot(ui, keypad, i, {box.x + static_cast<float>(i) * (width + kGap), box.y, width, box.h});
}

// ── The inch of tape ──────────────────────────────────────────────────────────────────────────────────────────────

/// As long as on a real tape: the half longest, then quarters, eighths, …
float tick_length(int tick, int denominator) {
  if (tick == 0 || tick == denominator) return 1;
  float length = 0.78F;
  for (int d = denominator / 2; tick % d != 0; d /= 2) length *= 0.76F;
  return length;
}

void draw_tape(Ui& ui, const Keypad& keypad, const Rect& box, float left, float width) {
  const Theme& t = ui.theme;
  ImDrawList& list = pen(ui);
  const int den = keypad.denominator();
  list.AddRectFilled(top_left(box), bottom_right(box), t.ground);
  list.AddRect(top_left(box), bottom_right(box), t.rule, 0, ImDrawFlags_None, 1);
  const float top = box.y + 2, reach = box.h - 6;
  for (int i = 0; i <= den; ++i) {
    const float x = left + width * static_cast<float>(i) / static_cast<float>(den);
    list.AddLine({x, top}, {x, top + reach * tick_length(i, den)}, t.ink, i % (den / 4) == 0 ? 2.0F : 1.0F);
  }
  const float x = left + width * static_cast<float>(keypad.tick()) / static_cast<float>(den);
  list.AddLine({x, top}, {x, box.y + box.h - 2}, t.edit, 4);
  list.AddTriangleFilled({x - 9, box.y + box.h}, {x + 9, box.y + box.h}, {x, box.y + box.h - 14}, t.edit);
}

void tape(Ui& ui, Keypad& keypad, Rect box) {
  const int den = keypad.denominator();
  // Finer than a finger can set: keys at both ends take one division each.
  if (den >= 32) {
    const float key = ui.theme.target;
    if (icon_button(ui, "keypad.tape.less", {box.x, box.y, key, box.h}, Icon::kMinus, tick_text(1, den)))
      keypad.press({Stroke::Kind::kTick, keypad.tick() - 1});
    if (icon_button(ui, "keypad.tape.more", {box.x + box.w - key, box.y, key, box.h}, Icon::kPlus, tick_text(1, den)))
      keypad.press({Stroke::Kind::kTick, keypad.tick() + 1});
    box = {box.x + key + kGap, box.y, box.w - 2 * (key + kGap), box.h};
  }
  Item item{"keypad.tape",
            Role::kSlider,
            Touch::kDrag,
            std::string(ui.say(Msg::kKeyTape)),
            tick_text(keypad.tick(), den) + "″",
            box};
  item.max = den - 1;
  item.step = 1;
  item.number = keypad.tick();
  const Look look = add_pressed(ui, std::move(item));
  const float inset = 14, left = box.x + inset, width = box.w - 2 * inset;
  draw_tape(ui, keypad, box, left, width);
  draw_focus(ui, look, box);
  Action action;
  if (!ui.locked && ui.registry.take("keypad.tape", Action::Kind::kSetNumber, &action)) {
    keypad.press({Stroke::Kind::kTick, static_cast<int>(std::clamp(action.number, 0.0, 127.0))});
  } else if (look.held) {
    const float share = std::clamp((ImGui::GetIO().MousePos.x - left) / width, 0.0F, 1.0F);
    const int tick = static_cast<int>(share * static_cast<float>(den) + 0.5F);
    if (tick != keypad.tick() || keypad.fresh()) keypad.press({Stroke::Kind::kTick, tick});
  }
}

void forms(Ui& ui, Keypad& keypad, const Rect& box) {
  const std::string_view names[] = {ui.say(Msg::kFormIn12), ui.say(Msg::kFormDegrees), ui.say(Msg::kFormPercent),
                                    ui.say(Msg::kFormMmPerM)};
  const float width = (box.w - 3 * kGap) / 4;
  for (int i = 0; i < 4; ++i) {
    const Rect cell{box.x + static_cast<float>(i) * (width + kGap), box.y, width, box.h};
    const bool chosen = static_cast<int>(keypad.form()) == i;
    Item item{"keypad.form." + std::to_string(i), Role::kRadio, Touch::kPress, std::string(names[i]),
              std::string(ui.say(Msg::kKeyForm)), cell};
    item.checked = chosen;
    const Look look = add_pressed(ui, std::move(item));
    ImDrawList& list = pen(ui);
    if (look.lit || look.held) list.AddRectFilled(top_left(cell), bottom_right(cell), ui.theme.pressed);
    const Rect edge = shrunk(cell, 1);
    list.AddRect(top_left(edge), bottom_right(edge), chosen ? ui.theme.edit : ui.theme.rule, 0, ImDrawFlags_None,
                 chosen ? 3.0F : 1.0F);
    draw_centred(list, *ui.fonts.note, shrunk(cell, 2), chosen ? ui.theme.edit : ui.theme.ink, names[i]);
    draw_focus(ui, look, cell);
    if (look.pressed) keypad.press({Stroke::Kind::kForm, i});
  }
}

}  // namespace

void keypad_strip(Ui& ui, Keypad& keypad, const Rect& strip) {
  const Rect inner{strip.x + kGap, strip.y + kGap, strip.w - 2 * kGap, strip.h - kGap};
  draw_words(ui, keypad, {inner.x, inner.y, inner.w, words_height(ui)});
  float y = inner.y + words_height(ui);
  if (shows_forms(keypad)) {
    forms(ui, keypad, {inner.x, y, inner.w, ui.theme.target});
    y += ui.theme.target + kGap;
  }
  const float target = ui.theme.target;
  if (strip.w < kWideStrip) {
    draw_slots(ui, keypad, {inner.x, y, inner.w, target});
    if ((keypad.has_tape() && !keypad.typing())) tape(ui, keypad, {inner.x, y + target + kGap, inner.w, kTapeHeight});
    return;
  }
  const float slots = (keypad.has_tape() && !keypad.typing()) ? std::min(280.0F, inner.w * 0.45F) : inner.w;
  draw_slots(ui, keypad, {inner.x, y, slots, target});
  if ((keypad.has_tape() && !keypad.typing()))
    tape(ui, keypad, {inner.x + slots + kGap, y, inner.w - slots - kGap, target});
}

}  // namespace bentbook::screens
