#include "screens/raising/yard/figures.h"

#include <algorithm>
#include <string>

#include "screens/form/field_form.h"
#include "words/frame_words.h"
#include "words/raising_words.h"

namespace bentbook::screens {
namespace {

/// The field's value; empty: there is no such field.
std::string value_at(const Book& book, const std::string& path, const Voice& voice) {
  const auto field = field_at(book, "raising." + path);
  return field ? field_text(voice, *field) : std::string{};
}

/// A weight that nobody entered.
bool field_is_none(const Book& book, const std::string& path) {
  const auto field = field_at(book, "raising." + path);
  const auto* weight = field ? std::get_if<bentbook::Weight>(&field->value) : nullptr;
  return weight != nullptr && weight->count == 0;
}

bentbook::FigureText named(std::string text, Msg name, const Voice& voice) {
  return {std::move(text), std::string(bentbook::text(name, voice.language))};
}

}  // namespace

ChartSize chart_size(float width, float target, float text, std::size_t rows) {
  constexpr float kBody = 0.26F, kLeast = 100, kMargins = 56;
  const float weight = 108 * text, beside = (width - kMargins - weight) / (1 + kBody);
  const bool column = beside >= kLeast;
  const float radius = column ? beside : (width - kMargins) / (1 + kBody);
  const float row = column ? std::max(target + kGap, 40 * text) : 2 * std::max(target + kGap, 40 * text);
  return {{static_cast<double>(row / radius), column ? 1 + static_cast<double>((24 + weight / 2) / radius) : 0},
          radius * 0.8F + 70 * text + (static_cast<float>(rows) + 1) * row};
}

bentbook::FigureText lifter_figure(std::string_view key, const Book& book, std::string_view lifter,
                                   const Voice& voice) {
  const std::string value = value_at(book, std::string(lifter) + "." + std::string(key), voice);
  const bool none = field_is_none(book, std::string(lifter) + "." + std::string(key));
  if (key == "hook_block")
    return named(
        none ? std::string(text(Msg::kAsideBlockNone, voice.language)) : say(Msg::kAsideBlock, voice.language, value),
        Msg::kGearBlock, voice);
  if (key == "rigging")
    return named(none ? std::string(text(Msg::kAsideRiggingNone, voice.language))
                      : say(Msg::kAsideRigging, voice.language, value),
                 Msg::kGearRigging, voice);
  if (key == "rated") return named(say(Msg::kAsideRated, voice.language, value), Msg::kGearGinPoleRated, voice);
  return named(value, key.ends_with("radius") ? Msg::kGearRadius : Msg::kGearCapacity, voice);
}

bentbook::FigureText site_figure(std::string_view key, const Book& book, InYard shown, const Voice& voice) {
  const auto quiet = [&](std::string_view said) { return bentbook::FigureText{std::string(said), std::string(said)}; };
  if (const auto told = site_answer(book.raising, shown, key)) {
    // A radius is paced out: whole inches or centimetres, to the safe side.
    const double step = is_metric(voice.lengths.form) ? 1 / 2.54 : 1, steps = *told / step, hair = 1e-6;
    const double whole = key == "reach" ? libm::floor(steps + hair) : -libm::floor(hair - steps);
    const std::string value = say_inches(whole * step, voice);
    if (key == "reach") return named(say(Msg::kAsideReach, voice.language, value), Msg::kGearReach, voice);
    return named(say(Msg::kAsideStackOff, voice.language, value), Msg::kGearRadiusStack, voice);
  }
  if (key == "bent:1") return quiet(say(Msg::kViewBent, voice.language, "1"));
  if (key == "stack") return quiet(text(Msg::kAsideStack, voice.language));
  if (key == "crane") return quiet(lift_by_text(LiftBy::kCrane, voice.language));
  if (key == "crane_two") return quiet(lift_by_text(LiftBy::kCraneTwo, voice.language));
  if (key == "telehandler") return quiet(text(Msg::kAsideTelehandler, voice.language));
  const std::string value = value_at(book, std::string(key), voice);
  if (key == "stack_x") return drawn_unsigned(named(value, Msg::kGearStackX, voice));
  if (key == "stack_y") return drawn_unsigned(named(value, Msg::kGearStackY, voice));
  return drawn_unsigned(named(value, key.ends_with(".x") ? Msg::kGearCraneX : Msg::kGearCraneY, voice));
}

bentbook::FigureText gear_figure(std::string_view key, const Book& book, std::size_t piece, const Voice& voice) {
  const LiftingGear& gear = book.raising.gear[piece];
  const std::string value = value_at(book, "gear." + std::to_string(piece) + "." + std::string(key), voice);
  if (key == "length") return named(value, Msg::kFieldLength, voice);
  if (key == "count") return named(say(Msg::kAsideCount, voice.language, value), Msg::kGearCount, voice);
  if (key == "choked")
    return named(gear.choked.count == 0 ? std::string(text(Msg::kAsideNoChoker, voice.language))
                                        : say(Msg::kAsideChoker, voice.language, value),
                 Msg::kGearChoked, voice);
  // A sling has two ratings, told apart.
  return named(say(gear.kind == GearKind::kSling ? Msg::kAsideStraight : Msg::kAsideRated, voice.language, value),
               gear.kind == GearKind::kSling ? Msg::kGearRated : Msg::kGearGinPoleRated, voice);
}

bentbook::FigureText truck_figure(std::string_view key, const Book& book, double longest, const Voice& voice) {
  if (key == "longest") return named(say_inches(longest, voice), Msg::kGearLongest, voice);
  const std::string value = value_at(book, "truck." + std::string(key), voice);
  if (key == "carries") return named(say(Msg::kAsideCarries, voice.language, value), Msg::kGearTruckCarries, voice);
  return named(value, Msg::kGearTruckLength, voice);
}

}  // namespace bentbook::screens
