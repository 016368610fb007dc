#include "screens/rafter/corner_pages.h"

#include <algorithm>
#include <string>

#include "roof/corner/corner_drawing.h"
#include "screens/app/aloud.h"
#include "screens/rafter/corner_cuts.h"
#include "screens/rafter/corner_form.h"
#include "words/roofs/corner_words.h"

namespace bentbook::screens {
namespace {

void corner_cautions(Context& context, const RoofCorner& corner, const Voice& voice) {
  int count = 0;
  for (const CornerCaution& item : corner.cautions)
    caution(context.ui, "corner.caution." + std::to_string(count++), corner_caution_text(item, voice));
}

/// The same answer of both roofs, side by side.
template <class Value>
void of_both(Context& context, const std::string& key, std::string_view label, const RoofCorner& corner,
             Value&& value) {
  const auto part = [&](int roof) {
    return [&context, &key, &label, &corner, &value, roof](Ui& half) {
      answer(half, key + (roof == 0 ? "" : "_other"),
             std::string(label) + " · " + std::string(corner_roof_text(roof, context.ui.language)),
             value(corner.roof(roof)));
    };
  };
  side_by_side(context.ui, 16, 140, part(0), part(1));
}

// ── Along it ──────────────────────────────────────────────────────────────────────────────────────────────────────

void corner_along_screen(Context& context) {
  corner_scroll(context, "corner.along", [&](const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
    Ui& ui = context.ui;
    corner_form(context, "corner.along_picture", context.say(Msg::kCornerAlongPicture), 240,
                corner_along_drawing(shown.input, corner), shown);
    const Msg between = shown.input.kind == CornerKind::kHip ? Msg::kCornerPeakCommons : Msg::kCornerPeakRidges;
    given_choice(context, "corner.peak", context.say(Msg::kPeakTitle),
                 {context.say(Msg::kCornerPeakRidge), context.say(between)});
    if (shown.input.peak == CornerPeak::kRidge || shown.input.kind == CornerKind::kValley)
      corner_field(context, "ridge");
    const auto length = [&](const char* key, std::string_view name, Length value) {
      fact(ui, std::string("corner.") + key, field_name(name, ui.language), say_length(value, voice), true);
    };
    length("shortening", "shortening", corner.shortening);
    length("longest", "longest", corner.longest);
    length("per_foot", "per_foot", corner.per_foot);
    space(ui, 16);
    corner_form(context, "corner.foot_picture", context.say(Msg::kFootPicture), 260,
                corner_foot_drawing(shown.input, corner), shown);
    given_choice(context, "corner.heel_by", context.say(Msg::kFootGivenBy),
                 {context.say(Msg::kFootBySeat), context.say(Msg::kFootByHeel)});
    corner_field(context, shown.input.heel_by == HeelBy::kSeat ? "seat" : "heel");
    side_by_side(
        ui, 16, 120,
        [&](Ui& half) {
          answer(half, "corner.hip_heel", field_name("hip_heel", ui.language), say_length(corner.heel, voice));
        },
        [&](Ui& half) {
          answer(half, "corner.hip_seat", field_name("hip_seat", ui.language), say_length(corner.seat, voice));
        });
    length("notch", "birdsmouth_depth", corner.notch);
    length("plumb_depth", "plumb_depth", corner.plumb_depth);
    corner_field(context, "overhang");
    length("tail", "hip_tail", corner.tail);
    corner_cautions(context, corner, voice);
  });
}

// ── Across it ─────────────────────────────────────────────────────────────────────────────────────────────────────

void corner_across_screen(Context& context) {
  corner_scroll(context, "corner.across", [&](const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
    Ui& ui = context.ui;
    const bool hip = shown.input.kind == CornerKind::kHip;
    corner_form(context, "corner.across_picture", context.say(Msg::kCornerAcrossPicture), 280,
                corner_across_drawing(shown.input, corner), shown);
    if (hip)
      (void)given_flag(context, "corner.backed", context.say(Msg::kCornerBacked), context.say(Msg::kCornerBackedNote));
    if (corner.drop > Length{} && corner.shift == Length{})
      answer(ui, "corner.drop", field_name("drop", ui.language), say_length(corner.drop, voice));
    if (const std::string how = drop_text(shown.input, corner, voice); !how.empty()) body(ui, "corner.how", how);
    of_both(context, "corner.backing", field_name(hip ? "backing" : "trough", ui.language), corner,
            [&](const CornerRoof& roof) { return say_angle(roof.backing, voice); });
  });
}

// ── Jacks ─────────────────────────────────────────────────────────────────────────────────────────────────────────

void jacks_of(Context& context, const ShownCorner& shown, const RoofCorner& corner, int roof, const Voice& voice) {
  constexpr int kMostShown = 12;
  Ui& ui = context.ui;
  const CornerRoof& r = corner.roof(roof);
  const std::string key = roof == 0 ? "corner.jacks_first" : "corner.jacks_other";
  heading(ui, key, corner_roof_text(roof, ui.language));
  if (!r.meets) return body(ui, key + ".none", context.say(Msg::kCornerJacksNone));
  side_by_side(
      ui, 16, 140,
      [&](Ui& half) {
        answer(half, key + ".side", field_name("jack_side", ui.language), say_angle(r.jack_side, voice),
               on_square_text(Angle::degrees(90) - r.jack_side, voice));
      },
      [&](Ui& half) {
        answer(half, key + ".tilt", field_name("jack_tilt", ui.language), say_angle(r.jack_tilt, voice));
      });
  answer(ui, key + ".difference", field_name("jack_difference", ui.language), say_length(r.jack_difference, voice));
  fact(ui, key + ".shortening", field_name("jack_shortening", ui.language), say_length(r.jack_shortening, voice), true);
  fact(ui, key + ".long_point", field_name("jack_long_point", ui.language), say_length(r.jack_long_point, voice), true);
  if (r.jacks == 0) return body(ui, key + ".none", context.say(Msg::kCornerJacksNone));
  note(ui, key + ".how",
       context.say(shown.input.kind == CornerKind::kHip ? Msg::kCornerJacksHip : Msg::kCornerJacksValley));
  for (int i = 1; i <= std::min(r.jacks, kMostShown); ++i) {
    const Jack jack = jack_of(shown.input, corner, roof, i);
    fact(ui, key + "." + std::to_string(i), say(Msg::kCornerJack, ui.language, std::to_string(i)),
         say_length(jack.length, voice), true);
  }
  if (r.jacks > kMostShown)
    note(ui, key + ".more", say_count(Msg::kCornerJacksMore, ui.language, r.jacks - kMostShown, {}));
}

void corner_jacks_screen(Context& context) {
  corner_scroll(context, "corner.jacks", [&](const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
    for (const std::string_view field : {"spacing", "jack_breadth", "jack_depth"}) corner_field(context, field);
    for (const int roof : {0, 1}) {
      space(context.ui, 16);
      jacks_of(context, shown, corner, roof, voice);
    }
  });
}

// ── The corner ────────────────────────────────────────────────────────────────────────────────────────────────────

void corner_answers(Context& context, const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
  Ui& ui = context.ui;
  const Angle seat = Angle::degrees(90) - corner.slope;
  side_by_side(
      ui, 16, 120,
      [&](Ui& half) {
        answer(half, "corner.answer.plumb_cut", context.say(Msg::kPlumbCut), say_angle(corner.slope, voice),
               say_angle(corner.slope, voice, 3));
      },
      [&](Ui& half) {
        answer(half, "corner.answer.seat_cut", context.say(Msg::kSeatCut), say_angle(seat, voice),
               say_angle(seat, voice, 3));
      });
  answer(ui, "corner.answer.to_cut", field_name("to_cut", ui.language), say_length(corner.to_cut, voice),
         say(Msg::kCornerLineLength, ui.language, say_length(corner.length, voice)));
  note(ui, "corner.square", hold_square_text(shown.input, corner, voice));
}

void corner_rows(Context& context, const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
  Ui& ui = context.ui;
  const auto row = [&](const char* key, Msg title, const std::string& second, const Page& page) {
    if (list_row(ui, key, context.say(title), second)) context.pages.push(page);
  };
  const bool hip = shown.input.kind == CornerKind::kHip;
  row("corner.row.along", Msg::kCornerAlongTitle,
      field_name("hip_heel", ui.language) + " " + say_length(corner.heel, voice),
      {"corner.along", Msg::kCornerAlongTitle, corner_along_screen});
  row("corner.row.across", Msg::kCornerAcrossTitle,
      std::string(context.say(hip ? Msg::kCornerAcrossHip : Msg::kCornerAcrossValley)),
      {"corner.across", Msg::kCornerAcrossTitle, corner_across_screen});
  row("corner.row.jacks", Msg::kCornerJacksTitle,
      say(Msg::kCornerJacksNote, ui.language,
          {{"first", std::to_string(corner.roof(0).jacks)}, {"other", std::to_string(corner.roof(1).jacks)}}),
      {"corner.jacks", Msg::kCornerJacksTitle, corner_jacks_screen});
  row("corner.row.cuts", Msg::kCornerCutsTitle, std::string(context.say(Msg::kCornerCutsNote)), corner_cuts_page());
}

void corner_screen(Context& context) {
  corner_scroll(context, "corner.page", [&](const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
    Ui& ui = context.ui;
    side_by_side(
        ui, 16, 300,
        [&](Ui&) {
          given_choice(context, "corner.kind", context.say(Msg::kCornerKind),
                       {context.say(Msg::kCornerHip), context.say(Msg::kCornerValley)});
          corner_form(context, "corner", context.say(Msg::kCornerPicture), 320,
                      corner_plan_drawing(shown.input, corner), shown);
        },
        [&](Ui&) {
          corner_answers(context, shown, corner, voice);
          aloud_row(context, "corner.aloud", {"corner.answer"});
        });
    space(ui, 8);
    corner_cautions(context, corner, voice);
    corner_rows(context, shown, corner, voice);
  });
}

}  // namespace

Page corner_page() { return {"corner", Msg::kCornerTitle, corner_screen}; }

}  // namespace bentbook::screens
