#include "screens/angles/screen.h"

#include <array>
#include <string>
#include <utility>

#include "cut/angle_drawing.h"
#include "cut/triangle.h"
#include "screens/angles/pages.h"
#include "screens/angles/saw_sheet.h"
#include "screens/app/aloud.h"
#include "screens/app/pages.h"
#include "screens/form/drawing_form.h"
#include "words/error_words.h"
#include "words/figures.h"

namespace bentbook::screens {
namespace {

struct PartKey {
  TrianglePart part;
  std::string_view key;
};
constexpr std::array<PartKey, 4> kParts{{{TrianglePart::kRise, "rise"},
                                         {TrianglePart::kRun, "run"},
                                         {TrianglePart::kSlopeLength, "slope_length"},
                                         {TrianglePart::kSlope, "slope"}}};

std::string full_key(std::string_view part) { return "angles." + std::string(part); }

/// The length of a part; not for the angle.
Length& length_of(TriangleInput& input, TrianglePart part) {
  if (part == TrianglePart::kRise) return input.rise;
  return part == TrianglePart::kRun ? input.run : input.slope_length;
}

void give(AnglesInput& angles, TrianglePart part, Length value) {
  length_of(angles.triangle, part) = value;
  angles.triangle.tell(part);
}

void give(AnglesInput& angles, const Slope& value) {
  angles.triangle.slope = value;
  angles.triangle.tell(TrianglePart::kSlope);
}

/// What the keypad finished goes into the book.
void take_edits(Context& context) {
  Places next = context.places;
  for (const PartKey& part : kParts) {
    if (part.part == TrianglePart::kSlope) {
      if (const auto value = context.keypad.take_slope(full_key(part.key))) give(next.angles, *value);
    } else if (const auto length = context.keypad.take_length(full_key(part.key))) {
      give(next.angles, part.part, *length);
    }
  }
  if (const auto depth = context.keypad.take_length("angles.depth")) next.angles.section.depth = *depth;
  if (const auto breadth = context.keypad.take_length("angles.breadth")) next.angles.section.breadth = *breadth;
  if (!(next == context.places)) context.change(std::move(next));
}

/// The input with what stands in the open keypad, so that the drawing follows each digit.
AnglesInput with_preview(const Context& context) {
  AnglesInput shown = context.places.angles;
  for (const PartKey& part : kParts) {
    if (part.part == TrianglePart::kSlope) {
      if (const auto value = context.keypad.preview_slope(full_key(part.key))) give(shown, *value);
    } else if (const auto length = context.keypad.preview_length(full_key(part.key))) {
      give(shown, part.part, *length);
    }
  }
  if (const auto depth = context.keypad.preview_length("angles.depth")) shown.section.depth = *depth;
  if (const auto breadth = context.keypad.preview_length("angles.breadth")) shown.section.breadth = *breadth;
  return shown;
}

/// The slope as it was given, else as it follows.
Slope slope_of(const TriangleInput& input, const Triangle& triangle) {
  return input.given(TrianglePart::kSlope) ? input.slope : Slope::of_angle(triangle.angle);
}

void open_keypad(Context& context, std::string_view part, const Triangle& triangle) {
  const AnglesInput& angles = context.places.angles;
  const std::string key = full_key(part);
  const std::string name = field_name(part, context.ui.language);
  if (part == "slope") {
    context.keypad.open_slope(key, name, slope_of(angles.triangle, triangle));
  } else if (part == "rise") {
    context.keypad.open_length(key, name, triangle.rise);
  } else if (part == "run") {
    context.keypad.open_length(key, name, triangle.run);
  } else if (part == "slope_length") {
    context.keypad.open_length(key, name, triangle.slope_length);
  } else if (part == "depth") {
    context.keypad.open_length(key, name, angles.section.depth);
  } else if (part == "breadth") {
    context.keypad.open_length(key, name, angles.section.breadth);
  }
}

void slope_words(Context& context, const Slope& slope) {
  Ui& ui = context.ui;
  const SlopeFacts facts = slope_facts(slope);
  Abreast abreast(ui, 32, kRowAbreast);
  abreast.next();
  fact(ui, "angles.in_12", context.say(Msg::kAnglesIn12),
       say(Msg::kAnglesIn12Value, ui.language, print_fixed(facts.in_12, 3)), true);
  abreast.next();
  fact(ui, "angles.percent", context.say(Msg::kAnglesPercent), print_fixed(facts.percent, 2) + " %", true);
  abreast.next();
  fact(ui, "angles.mm_per_m", context.say(Msg::kAnglesMmPerM), print_fixed(facts.mm_per_m, 1) + " mm/m", true);
}

void cut_answers(Context& context, Angle plumb, const Voice& voice) {
  const Angle seat = Angle::degrees(90) - plumb;
  side_by_side(
      context.ui, 16, 120,
      [&](Ui& half) {
        answer(half, "angles.plumb_cut", context.say(Msg::kPlumbCut), say_angle(plumb, voice),
               say_angle(plumb, voice, 3));
      },
      [&](Ui& half) {
        answer(half, "angles.seat_cut", context.say(Msg::kSeatCut), say_angle(seat, voice), say_angle(seat, voice, 3));
      });
}

void saw_part(Context& context, const AnglesInput& shown, const SlopeFacts& facts) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const Saw& saw = saw_in_use(context);
  heading(ui, "angles.saw_heading", context.say(Msg::kAnglesSawHeading));
  saw_row(context, "angles");
  space(ui, 8);
  if (const auto setting = saw_setting(saw, shown.section, facts.angle)) {
    const auto tapped =
        drawing_form(context, "angles.timber", context.say(Msg::kAnglesTimberPicture), drawing_height(context, 240),
                     cut_on_timber_drawing(*setting, shown.section),
                     [&](std::string_view key) { return setting_figure(key, *setting, shown.section, voice); });
    if (tapped) open_keypad(context, *tapped, {});
  } else {
    if (given(ui, "angles.depth", field_name("depth", ui.language), say_length(shown.section.depth, voice)))
      open_keypad(context, "depth", {});
    if (given(ui, "angles.breadth", field_name("breadth", ui.language), say_length(shown.section.breadth, voice)))
      open_keypad(context, "breadth", {});
  }
  side_by_side(
      ui, 24, kRowAbreast,
      [&](Ui&) { saw_sheet(context, "angles.plumb", context.say(Msg::kPlumbCut), saw, shown.section, facts.angle); },
      [&](Ui& part) {
        space(part, 16);
        saw_sheet(context, "angles.seat", context.say(Msg::kSeatCut), saw, shown.section, facts.complement);
      });
}

}  // namespace

void angles_screen(Context& context) {
  Ui& ui = context.ui;
  take_edits(context);
  const Voice voice = voice_of(context);
  AnglesInput shown = with_preview(context);
  Result<Triangle> solved = solve_triangle(shown.triangle);
  if (!solved && context.keypad.is_open()) {  // half typed: the drawing keeps what it last knew
    shown = context.places.angles;
    solved = solve_triangle(shown.triangle);
  }

  begin_scroll(ui, "angles.page", context.page);
  if (!solved) {
    refusal(ui, "angles.refused", error_text(solved.error(), voice));
    for (const PartKey& part : kParts) {
      if (!shown.triangle.given(part.part)) continue;
      const std::string value = part.part == TrianglePart::kSlope
                                    ? print_slope(shown.triangle.slope, voice.marks)
                                    : say_length(length_of(shown.triangle, part.part), voice);
      const TriangleInput& told = shown.triangle;
      if (given(ui, full_key(part.key), field_name(part.key, ui.language), value))
        open_keypad(context, part.key, {told.rise, told.run, told.slope_length, {}, 0, false, false});
    }
    end_scroll(ui);
    return;
  }
  const Triangle& triangle = *solved;
  const Slope slope = slope_of(shown.triangle, triangle);
  side_by_side(
      ui, 16, beside_drawing(context),
      [&](Ui&) {
        const auto tapped = drawing_form(
            context, "angles.triangle", context.say(Msg::kAnglesTrianglePicture), drawing_height(context, 250),
            triangle_drawing(shown.triangle, triangle),
            [&](std::string_view key) { return triangle_figure(key, shown.triangle, triangle, voice); },
            Tappable::kAll);
        if (tapped) open_keypad(context, *tapped, triangle);
        note(ui, "angles.hint", context.say(Msg::kAnglesHint));
      },
      [&](Ui&) {
        cut_answers(context, triangle.angle, voice);
        aloud_row(context, "angles.aloud", {"angles.plumb_cut", "angles.seat_cut"});
        if (!triangle.vertical) slope_words(context, slope);
      });

  space(ui, 16);
  if (!triangle.vertical && !triangle.level) saw_part(context, shown, slope_facts(slope));

  space(ui, 16);
  if (list_row(ui, "angles.mitre", context.say(Msg::kMitreTitle), context.say(Msg::kMitreNote)))
    context.pages.push(mitre_page());
  if (list_row(ui, "angles.flip", context.say(Msg::kFlipTitle), context.say(Msg::kFlipNote)))
    context.pages.push(flip_page());
  space(ui, 24);
  end_scroll(ui);
}

}  // namespace bentbook::screens
