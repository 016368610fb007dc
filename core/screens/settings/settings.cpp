#include "screens/settings/settings.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <utility>

namespace bentbook::screens {
namespace {

constexpr std::array<int, 4> kDivisions{8, 16, 32, 64};

/// Of LengthStyle: millimetres as a tape has them, or a tenth as well.
constexpr int kWholeMm = 0, kTenths = LengthStyle{}.decimals;

/// Place of `value` in a list; 0 if it is not there.
template <class List, class Value>
int place_of(const List& list, const Value& value) {
  const auto found = std::find(std::begin(list), std::end(list), value);
  return found == std::end(list) ? 0 : static_cast<int>(found - std::begin(list));
}

void lengths(Ui& ui, Settings& next) {
  heading(ui, "settings.lengths", ui.say(Msg::kSetLengths));
  if (const auto form = choice(ui, "settings.form", {},
                               {ui.say(Msg::kSetFormFeet), ui.say(Msg::kSetFormInches), ui.say(Msg::kSetFormDecimal),
                                ui.say(Msg::kSetFormMm), ui.say(Msg::kSetFormMetres)},
                               static_cast<int>(next.lengths.form))) {
    next.lengths.form = static_cast<LengthForm>(*form);
    if (next.lengths.decimals == kWholeMm) next.lengths.decimals = kTenths;  // of metres or inches it would be none
  }
  if (next.lengths.form == LengthForm::kMm) {
    if (const auto step = choice(ui, "settings.step_mm", ui.say(Msg::kSetStepMm), {"1 mm", "0.1 mm"},
                                 next.lengths.decimals == kWholeMm ? 0 : 1))
      next.lengths.decimals = *step == 0 ? kWholeMm : kTenths;
  }
  const bool fractions = next.lengths.form == LengthForm::kFeetInches || next.lengths.form == LengthForm::kInchFraction;
  if (!fractions) return;
  if (const auto division = choice(ui, "settings.division", ui.say(Msg::kSetDivision),
                                   {"1⁄8″", "1⁄16″", "1⁄32″", "1⁄64″"}, place_of(kDivisions, next.lengths.denominator)))
    next.lengths.denominator = kDivisions[static_cast<std::size_t>(*division)];
}

/// The device's own language, then every language by its own name.
void language(Ui& ui, Settings& next) {
  std::array<std::string_view, 1 + kLanguageCount> tags{}, names{ui.say(Msg::kSetLanguageFollow)};
  for (std::size_t i = 0; i < kLanguageCount; ++i) {
    tags[i + 1] = language_tag(static_cast<Language>(i));
    names[i + 1] = language_name(static_cast<Language>(i));
  }
  if (const auto tag = choice(ui, "settings.language", ui.say(Msg::kSetLanguage), names, place_of(tags, next.language)))
    next.language = tags[static_cast<std::size_t>(*tag)];
}

void looks(Ui& ui, Settings& next) {
  if (const auto theme = choice(ui, "settings.theme", ui.say(Msg::kSetTheme),
                                {ui.say(Msg::kSetThemeFollow), ui.say(Msg::kSetThemeSun), ui.say(Msg::kSetThemeNight)},
                                static_cast<int>(next.theme)))
    next.theme = static_cast<bentbook::Theme>(*theme);
  if (const auto percent = slider(ui, "settings.text", ui.say(Msg::kSetText), next.text_percent, 100, 200, 25,
                                  std::to_string(next.text_percent) + " %"))
    next.text_percent = static_cast<int>(*percent);
  language(ui, next);
}

void draw_settings(Context& context) {
  Ui& ui = context.ui;
  Kit next = context.kit;
  begin_scroll(ui, "settings.page", context.page);
  lengths(ui, next.settings);
  heading(ui, "settings.looks", ui.say(Msg::kSetReading));
  looks(ui, next.settings);
  if (toggle(ui, "settings.glove", ui.say(Msg::kSetGlove), next.settings.glove, ui.say(Msg::kSetGloveNote)))
    next.settings.glove = !next.settings.glove;
  if (toggle(ui, "settings.awake", ui.say(Msg::kSetAwake), next.settings.keep_awake, ui.say(Msg::kSetAwakeNote)))
    next.settings.keep_awake = !next.settings.keep_awake;
  if (context.aloud.can_speak(ui.language) &&
      toggle(ui, "settings.aloud", ui.say(Msg::kSetAloud), next.settings.read_aloud, ui.say(Msg::kSetAloudNote)))
    next.settings.read_aloud = !next.settings.read_aloud;
  end_scroll(ui);
  if (next.settings != context.kit.settings) context.change_kit(std::move(next));
}

}  // namespace

Page settings_page() { return {"settings", Msg::kSettings, draw_settings}; }

}  // namespace bentbook::screens
