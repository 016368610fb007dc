#include "screens/angles/saw_sheet.h"

#include <string>

#include "cut/angle_drawing.h"
#include "screens/app/drawing_form.h"
#include "screens/app/pages.h"
#include "screens/settings/saws.h"
#include "words/error_words.h"
#include "words/figures.h"

namespace bentbook::screens {
namespace {

void costs(Context& context, const std::string& prefix, const Graduations& marks, const Voice& voice) {
  Ui& ui = context.ui;
  if (marks.on_mark) {
    fact(ui, prefix + ".on_mark", context.say(Msg::kSawOnMark), say_reading(marks.below.reads, voice), true);
    return;
  }
  const auto one = [&](const char* key, const Graduation& at) {
    const Msg label = &at == &marks.best() ? Msg::kSawSetAtBetter : Msg::kSawSetAt;
    fact(ui, prefix + key, say(label, ui.language, say_reading(at.reads, voice)), say_costs(at, voice), true);
  };
  one(".below", marks.below);
  one(".above", marks.above);
}

}  // namespace

const Saw& saw_in_use(const Context& context) { return find_saw(context.kit, context.places.angles.saw); }

void saw_row(Context& context, ItemKey prefix) {
  const Saw& saw = saw_in_use(context);
  if (list_row(context.ui, std::string(prefix) + ".saw", shown_name(saw.name, context.ui.language),
               context.say(Msg::kSawRowNote)))
    context.pages.push(saws_page());
}

void saw_sheet(Context& context, ItemKey prefix, std::string_view label, const Saw& saw, const Section& section,
               Angle off_square) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const std::string key(prefix);
  const Result<Setting> solved = saw_setting(saw, section, off_square);
  if (!solved) {
    caution(ui, key + ".refused", error_text(solved.error(), voice));
    return;
  }
  const Setting& setting = *solved;
  if (saw.kind == SawKind::kHand) {
    answer(ui, key + ".set_to", say(Msg::kSawMarkByHand, ui.language, label), say_angle(setting.exact, voice));
    fact(ui, key + ".travel", context.say(Msg::kSawTravel), say_length(setting.travel, voice));
    return;
  }
  answer(ui, key + ".set_to", say(Msg::kSawSetFor, ui.language, label), say_angle(setting.set_to, voice));
  costs(context, key, setting.graduations, voice);
  if (!setting.graduations.on_mark) {
    (void)drawing_form(context, key + ".graduations", context.say(Msg::kSawGraduationsPicture),
                       drawing_height(context, 190), graduation_drawing(setting),
                       [&](std::string_view figure) { return setting_figure(figure, setting, section, voice); });
  }
  fact(ui, key + ".travel", context.say(Msg::kSawTravel), say_length(setting.travel, voice));
  body(ui, key + ".on_side", say(Msg::kSawOnSide, ui.language, pass_text(setting.on_side, saw, voice)));
  body(ui, key + ".on_top", say(Msg::kSawOnTop, ui.language, pass_text(setting.on_top, saw, voice)));
}

}  // namespace bentbook::screens
