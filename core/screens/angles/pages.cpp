#include "screens/angles/pages.h"

#include <string>
#include <utility>

#include "cut/angle_drawing.h"
#include "cut/flip_test.h"
#include "cut/mitre.h"
#include "screens/angles/saw_sheet.h"
#include "screens/form/drawing_form.h"
#include "words/error_words.h"
#include "words/figures.h"

namespace bentbook::screens {
namespace {

std::string key_of(std::string_view figure) { return "angles." + std::string(figure); }

// ── Mitre ─────────────────────────────────────────────────────────────────────────────────────────────────────────

AnglesInput mitre_edits(Context& context) {
  Places next = context.places;
  if (const auto v = context.keypad.take_angle("angles.between")) next.angles.mitre_between = *v;
  if (const auto v = context.keypad.take_length("angles.depth_a")) next.angles.mitre_depth_a = *v;
  if (const auto v = context.keypad.take_length("angles.depth_b")) next.angles.mitre_depth_b = *v;
  AnglesInput shown = next.angles;
  if (!(next == context.places)) context.change(std::move(next));
  if (const auto v = context.keypad.preview_angle("angles.between")) shown.mitre_between = *v;
  if (const auto v = context.keypad.preview_length("angles.depth_a")) shown.mitre_depth_a = *v;
  if (const auto v = context.keypad.preview_length("angles.depth_b")) shown.mitre_depth_b = *v;
  return shown;
}

void open_mitre(Context& context, std::string_view figure) {
  const AnglesInput& angles = context.places.angles;
  const std::string name = field_name(figure, context.ui.language);
  if (figure == "between")
    context.keypad.open_angle(key_of(figure), name, angles.mitre_between, Angle::degrees(1), Angle::degrees(179));
  else
    context.keypad.open_length(key_of(figure), name, figure == "depth_a" ? angles.mitre_depth_a : angles.mitre_depth_b);
}

void mitre_screen(Context& context) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  AnglesInput shown = mitre_edits(context);
  Result<Mitre> solved = solve_mitre(shown.mitre_between, shown.mitre_depth_a, shown.mitre_depth_b);
  if (!solved && context.keypad.is_open()) {
    shown = context.places.angles;
    solved = solve_mitre(shown.mitre_between, shown.mitre_depth_a, shown.mitre_depth_b);
  }
  begin_scroll(ui, "mitre.page", context.page);
  if (!solved) {
    refusal(ui, "mitre.refused", error_text(solved.error(), voice));
    for (const auto& [figure, value] : {std::pair{"depth_a", shown.mitre_depth_a}, {"depth_b", shown.mitre_depth_b}})
      if (given(ui, key_of(figure), field_name(figure, ui.language), say_length(value, voice)))
        open_mitre(context, figure);
    end_scroll(ui);
    return;
  }
  const Mitre& mitre = *solved;
  const auto words = [&](std::string_view figure) {
    return mitre_figure(figure, shown.mitre_between, shown.mitre_depth_a, shown.mitre_depth_b, mitre, voice);
  };
  const auto tapped =
      drawing_form(context, "mitre.picture", context.say(Msg::kMitrePicture), drawing_height(context, 300),
                   mitre_drawing(shown.mitre_between, shown.mitre_depth_a, shown.mitre_depth_b, mitre), words);
  if (tapped) open_mitre(context, *tapped);
  side_by_side(
      ui, 16, 120,
      [&](Ui& half) {
        answer(half, "mitre.a", context.say(Msg::kMitreOffSquareA), say_angle(mitre.off_square_a, voice),
               say(Msg::kMitreFromLength, ui.language, say_angle(mitre.from_length_a, voice)));
      },
      [&](Ui& half) {
        answer(half, "mitre.b", context.say(Msg::kMitreOffSquareB), say_angle(mitre.off_square_b, voice),
               say(Msg::kMitreFromLength, ui.language, say_angle(mitre.from_length_b, voice)));
      });
  fact(ui, "mitre.line", context.say(Msg::kMitreLine), say_length(mitre.line, voice), true);
  space(ui, 24);
  end_scroll(ui);
}

// ── Flip test ─────────────────────────────────────────────────────────────────────────────────────────────────────

AnglesInput flip_edits(Context& context) {
  Places next = context.places;
  if (const auto v = context.keypad.take_length("angles.flip_gap")) next.angles.flip_gap = *v;
  if (const auto v = context.keypad.take_length("angles.flip_depth")) next.angles.flip_depth = *v;
  AnglesInput shown = next.angles;
  if (!(next == context.places)) context.change(std::move(next));
  if (const auto v = context.keypad.preview_length("angles.flip_gap")) shown.flip_gap = *v;
  if (const auto v = context.keypad.preview_length("angles.flip_depth")) shown.flip_depth = *v;
  return shown;
}

void open_flip(Context& context, std::string_view figure) {
  const AnglesInput& angles = context.places.angles;
  const std::string name = field_name(figure, context.ui.language);
  const bool gap = figure == "flip_gap";
  LengthEntry range;
  if (gap) range.min = Length::inches(-12);
  context.keypad.open_length(key_of(figure), name, gap ? angles.flip_gap : angles.flip_depth, range);
}

void remember_row(Context& context, Angle error, const Voice& voice) {
  Ui& ui = context.ui;
  const Saw& saw = saw_in_use(context);
  fact(ui, "flip.known", say(Msg::kFlipKnown, ui.language, shown_name(saw.name, ui.language)),
       say_angle(saw.scale_error, voice, 2));
  const std::string label = say(Msg::kFlipRemember, ui.language, {{"saw", shown_name(saw.name, ui.language)}});
  if (!button(ui, "flip.remember", label, Weight::kPrimary, !(saw.scale_error == error))) return;
  Kit next = context.kit;
  for (Saw& other : next.saws)
    if (other.name == saw.name) other.scale_error = error;
  context.change_kit(std::move(next));
  context.toast(say(Msg::kFlipRemembered, ui.language, {{"saw", shown_name(saw.name, ui.language)}}), true);
}

void flip_screen(Context& context) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const AnglesInput shown = flip_edits(context);
  const Result<Angle> solved = scale_error_from_flip(shown.flip_gap, shown.flip_depth);
  begin_scroll(ui, "flip.page", context.page);
  body(ui, "flip.how", context.say(Msg::kFlipHow));
  if (!solved) {
    refusal(ui, "flip.refused", error_text(solved.error(), voice));
    for (const auto& [figure, value] : {std::pair{"flip_gap", shown.flip_gap}, {"flip_depth", shown.flip_depth}})
      if (given(ui, key_of(figure), field_name(figure, ui.language), say_length(value, voice)))
        open_flip(context, figure);
    end_scroll(ui);
    return;
  }
  const auto words = [&](std::string_view figure) {
    return flip_figure(figure, shown.flip_gap, shown.flip_depth, *solved, voice);
  };
  const auto tapped =
      drawing_form(context, "flip.picture", context.say(Msg::kFlipPicture), drawing_height(context, 240),
                   flip_drawing(shown.flip_gap, shown.flip_depth, *solved), words);
  if (tapped) open_flip(context, *tapped);
  note(ui, "flip.sign", context.say(Msg::kFlipSign));
  answer(ui, "flip.error", context.say(Msg::kFlipError), say_angle(*solved, voice, 2));
  saw_row(context, "flip");
  remember_row(context, *solved, voice);
  space(ui, 24);
  end_scroll(ui);
}

}  // namespace

Page mitre_page() { return {"angles.mitre", Msg::kMitreTitle, mitre_screen}; }
Page flip_page() { return {"angles.flip", Msg::kFlipTitle, flip_screen}; }

}  // namespace bentbook::screens
