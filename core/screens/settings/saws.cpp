#include "screens/settings/saws.h"

#include <array>
#include <charconv>
#include <string>
#include <utility>

#include "words/words.h"

namespace bentbook::screens {
namespace {

Msg kind_name(SawKind kind) {
  return kind == SawKind::kCircular ? Msg::kSawCircular : kind == SawKind::kHand ? Msg::kSawHand : Msg::kSawChainsaw;
}

Page saw_page(std::size_t index);

void draw_saws(Context& context) {
  Ui& ui = context.ui;
  begin_scroll(ui, "saws.page", context.page);
  const Saw* in_use = &find_saw(context.kit, context.places.angles.saw);
  const float pen_width = ui.theme.target;
  for (std::size_t i = 0; i < context.kit.saws.size(); ++i) {
    const Saw& saw = context.kit.saws[i];
    const std::string key = "saws." + std::to_string(i);
    const Column whole = ui.column;
    ui.column.width -= pen_width + kGap;
    if (pick_row(ui, key, shown_name(saw.name, ui.language), ui.say(kind_name(saw.kind)), &saw == in_use)) {
      Places next = context.places;
      next.angles.saw = saw.name;
      context.change(std::move(next));
    }
    const Rect pen_box{whole.x + whole.width - pen_width, whole.y, pen_width, ui.column.y - whole.y};
    ui.column.x = whole.x;
    ui.column.width = whole.width;
    if (icon_button(ui, key + ".edit", pen_box, Icon::kPen,
                    say(Msg::kSawEdit, ui.language, shown_name(saw.name, ui.language))))
      context.pages.push(saw_page(i));
  }
  space(ui, 16);
  if (button(ui, "saws.add", ui.say(Msg::kSawAdd))) {
    Kit next = context.kit;
    Saw saw;
    saw.name = free_saw_name(next, ui.say(Msg::kSawNew));
    next.saws.push_back(saw);
    const std::size_t added = next.saws.size() - 1;
    context.change_kit(std::move(next));
    context.pages.push(saw_page(added));
  }
  space(ui, 8);
  caution(ui, "saws.guard", ui.say(Msg::kSawGuard));
  end_scroll(ui);
}

/// An angle of the saw that can be changed.
void saw_angle(Context& context, ItemKey key, Msg name, Angle& value, Angle min, Angle max) {
  Keypad& keypad = context.keypad;
  const std::string_view label = context.say(name);
  const std::string shown = print_degrees(value, value.nano_degrees % Angle::kPerDegree == 0 ? 0 : 2, Marks::kScreen);
  if (given(context.ui, key, label, shown, keypad.is_open(key))) keypad.open_angle(key, label, value, min, max);
  if (const auto told = keypad.take_angle(key)) value = *told;
}

void saw_measures(Context& context, Saw& saw) {
  Ui& ui = context.ui;
  if (saw.kind == SawKind::kHand) {
    body(ui, "saw.hand_note", ui.say(Msg::kSawHandNote));
    return;
  }
  const int reads = saw.square_reads == SquareReads::kZero ? 0 : 1;
  if (const auto zero =
          choice(ui, "saw.square", ui.say(Msg::kSawSquare), {ui.say(Msg::kSawReads0), ui.say(Msg::kSawReads90)}, reads))
    saw.square_reads = *zero == 0 ? SquareReads::kZero : SquareReads::kNinety;
  saw_angle(context, "saw.step", Msg::kSawStep, saw.step, Angle{Angle::kPerDegree / 100}, Angle::degrees(45));
  const Msg reach = saw.kind == SawKind::kCircular ? Msg::kSawDepth : Msg::kSawReach;
  const Voice voice{ui.language, context.style(), Marks::kScreen};
  const std::string_view label = ui.say(reach);
  if (given(ui, "saw.reach", label, say_length(saw.reach, voice), context.keypad.is_open("saw.reach")))
    context.keypad.open_length("saw.reach", label, saw.reach, {Length::inches(1, 8), Length::feet(10)});
  if (const auto told = context.keypad.take_length("saw.reach")) saw.reach = *told;
  saw_angle(context, "saw.swing", saw.kind == SawKind::kCircular ? Msg::kSawGuideSwing : Msg::kSawSwing, saw.max_swing,
            Angle{}, Angle::degrees(89));
  saw_angle(context, "saw.tilt", Msg::kSawTilt, saw.max_tilt, Angle{}, Angle::degrees(89));
  if (saw.scale_error == Angle{}) return;
  fact(ui, "saw.error", ui.say(Msg::kSawError), print_degrees(saw.scale_error, 2, Marks::kScreen));
  if (button(ui, "saw.error.clear", ui.say(Msg::kSawErrorClear))) saw.scale_error = {};
}

void delete_saw(Context& context, std::size_t index) {
  Kit next = context.kit;
  const std::string name = next.saws[index].name;
  next.saws.erase(next.saws.begin() + static_cast<std::ptrdiff_t>(index));
  context.change_kit(std::move(next));
  context.toast(say(Msg::kSawDeleted, context.ui.language, shown_name(name, context.ui.language)), true);
  context.pages.pop();
}

void rename(Context& context, Kit& next, std::size_t index, const std::string& wanted) {
  const std::string before = next.saws[index].name;
  if (wanted.empty() || wanted == shown_name(before, context.ui.language)) return;
  next.saws[index].name.clear();
  next.saws[index].name = free_saw_name(next, wanted);
  // The saw in use is known by its name.
  if (context.places.angles.saw != before) return;
  Places places = context.places;
  places.angles.saw = next.saws[index].name;
  context.change(std::move(places));
}

void draw_saw(Context& context) {
  Ui& ui = context.ui;
  std::size_t index = 0;
  const std::string& subject = context.subject;
  std::from_chars(subject.data(), subject.data() + subject.size(), index);
  if (index >= context.kit.saws.size()) return context.pages.pop();
  Kit next = context.kit;
  Saw& saw = next.saws[index];
  begin_scroll(ui, "saw.page", context.page);
  if (const auto name = text_field(ui, "saw.name", ui.say(Msg::kSawName), shown_name(saw.name, ui.language)))
    rename(context, next, index, *name);
  if (const auto kind = choice(ui, "saw.kind", ui.say(Msg::kSawKind),
                               {ui.say(Msg::kSawCircular), ui.say(Msg::kSawChainsaw), ui.say(Msg::kSawHand)},
                               static_cast<int>(saw.kind)))
    saw.kind = static_cast<SawKind>(*kind);
  saw_measures(context, saw);
  space(ui, 16);
  const bool last = context.kit.saws.size() < 2;
  const bool remove = button(ui, "saw.delete", ui.say(Msg::kSawDelete), Weight::kDestructive, !last);
  if (last) note(ui, "saw.last", ui.say(Msg::kSawLast));
  end_scroll(ui);
  if (remove) return delete_saw(context, index);
  if (next != context.kit) context.change_kit(std::move(next));
}

Page saw_page(std::size_t index) { return {"saw", Msg::kSawPage, draw_saw, std::to_string(index)}; }

}  // namespace

Page saws_page() { return {"saws", Msg::kSaws, draw_saws}; }

}  // namespace bentbook::screens
