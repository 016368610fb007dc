#include "answers/shop_words.h"

#include "answers/frame_words.h"
#include "measure/print.h"

namespace bentbook {
namespace {

std::string_view row(std::string_view stem, std::string_view key, Language language) {
  const auto msg = find_msg(std::string(stem) + std::string(key));
  return msg ? text(*msg, language) : key;
}

template <class Words, class Enum>
std::string_view word(const Words& words, Enum value) {
  return words[static_cast<std::size_t>(value)];
}

std::string two_digits(std::int64_t n) { return (n < 10 ? "0" : "") + std::to_string(n); }

}  // namespace

std::string_view tick_name(Tick tick, Language language) { return row("tick_", word(kTickWords, tick), language); }

std::string_view workplace_name(Workplace place, Language language) {
  return row("workplace_", word(kWorkplaceWords, place), language);
}

std::string step_title(const WorkStep& step, Language language) {
  std::string title =
      step.name.empty() ? std::string(row("step_", word(kStepWorkWords, step.work), language)) : step.name;
  if (step.end) title = say(Msg::kStepAt, language, {{"step", title}, {"end", *step.end == End::kA ? "A" : "B"}});
  if (!step.mate.empty()) title = say(Msg::kStepWith, language, {{"step", title}, {"mate", step.mate}});
  return title;
}

std::string_view step_number_name(StepNumberName name, Language language) {
  return row("number_", word(kStepNumberWords, name), language);
}

std::string step_number_value(const StepNumber& number, const Voice& voice) {
  if (is_degrees(number.name)) return say_angle(Angle::from_degrees(number.value), voice);
  return say_inches(number.value, voice);
}

std::string step_numbers_value(std::string_view kept, const Voice& voice) {
  std::string out;
  for (const StepNumber& n : read_numbers(kept)) {
    if (!out.empty()) out += " · ";
    out += step_number_value(n, voice);
  }
  return out;
}

std::vector<std::string_view> step_cautions(std::uint8_t cautions, Language language) {
  std::vector<std::string_view> out;
  const struct {
    WorkCaution bit;
    Msg words;
  } all[] = {{kKickback, Msg::kWorkKickback},
             {kEyesEars, Msg::kWorkEyesEars},
             {kCords, Msg::kWorkCords},
             {kWorkHeld, Msg::kWorkHeld}};
  for (const auto& one : all)
    if ((cautions & one.bit) != 0) out.push_back(text(one.words, language));
  return out;
}

std::string conflict_text(const Conflict& conflict, const Voice& voice) {
  const auto msg = find_msg("conflict_" + std::string(word(kConflictWords, conflict.kind)));
  if (!msg) return {};
  return say(*msg, voice.language,
             {{"timber", conflict.timber},
              {"step", conflict.step},
              {"first", conflict.first_value},
              {"second", conflict.second_value},
              {"other", conflict.other_timber}});
}

std::string moment_text(std::int64_t wall_ms) {
  // Days since 1970 to a date of the Gregorian calendar, counted from a March 1st so that leap days come last.
  const std::int64_t minutes = wall_ms / 60'000;
  const std::int64_t days = minutes / 1440, of_day = minutes % 1440;
  const std::int64_t z = days + 719'468, era = z / 146'097, doe = z - era * 146'097;
  const std::int64_t yoe = (doe - doe / 1460 + doe / 36'524 - doe / 146'096) / 365;
  const std::int64_t doy = doe - (365 * yoe + yoe / 4 - yoe / 100), mp = (5 * doy + 2) / 153;
  const std::int64_t day = doy - (153 * mp + 2) / 5 + 1, month = mp < 10 ? mp + 3 : mp - 9;
  return two_digits(month) + '-' + two_digits(day) + ' ' + two_digits(of_day / 60) + ':' + two_digits(of_day % 60);
}

}  // namespace bentbook
