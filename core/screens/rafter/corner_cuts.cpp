#include "screens/rafter/corner_cuts.h"

#include <string>

#include "cut/setting.h"
#include "roof/corner/corner_drawing.h"
#include "screens/angles/saw_sheet.h"
#include "screens/rafter/corner_form.h"
#include "words/roofs/corner_words.h"

namespace bentbook::screens {
namespace {

/// Cut alike on both roofs (one may be the other's mirror): said once.
bool alike(const CornerCut& a, const CornerCut& b) {
  for (const Face face : {Face::kTop, Face::kNear}) {
    const CutLine one = cut_line(a, face), other = cut_line(b, face);
    if (!(one.off_square == other.off_square && one.tilt == other.tilt)) return false;
  }
  return true;
}

/// The saw's own readings for a compound cut that rides on one face, and whether it gets through.
void corner_ride(Context& context, const std::string& key, const Saw& saw, const CornerCut& cut, Face face) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const CutLine line = cut_line(cut, face);
  const bool top = face == Face::kTop;
  const Section& section = cut.section;
  const auto swing = graduations(saw, top ? section.breadth : section.depth, line.off_square);
  const auto tilt = graduations(saw, top ? section.depth : section.breadth, line.tilt);
  const std::string label(context.say(top ? Msg::kCornerRideTop : Msg::kCornerRideSide));
  const Pass pass = pass_on(saw, section, cut.plane, face);
  const std::string way = pass_text(pass, saw, voice);
  if (!swing || !tilt || pass.faces == Faces::kCannot) return fact(ui, key, label, way);
  answer(ui, key, label,
         say(saw.kind == SawKind::kChainsawBar ? Msg::kCornerRide : Msg::kCornerRideGuide, ui.language,
             {{"swing", say_reading(swing->best().reads, voice)}, {"tilt", say_reading(tilt->best().reads, voice)}}));
  const auto exact = [&](Angle off_square) {
    return say_angle(in_scale(saw.square_reads, off_square - saw.scale_error), voice);
  };
  note(ui, key + ".way",
       say(Msg::kCornerRideExact, ui.language,
           {{"swing", exact(line.off_square)}, {"tilt", exact(line.tilt)}, {"way", way}}));
}

void corner_cut_part(Context& context, const CornerCut& cut, const std::string& key) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const bool broad = first_face(cut.name) == Face::kNear, timber = cut.section.depth > Length{};
  const CutLine line = cut_line(cut, first_face(cut.name));
  (void)drawing_form(context, key + ".picture", context.say(Msg::kCornerCutPicture),
                     drawing_height(context, timber ? 340 : 200), corner_cut_drawing(cut),
                     [&](std::string_view figure) { return corner_cut_figure(figure, cut, voice); });
  side_by_side(
      ui, 16, 140,
      [&](Ui& half) {
        answer(half, key + ".first", context.say(broad ? Msg::kCornerOnBroad : Msg::kCornerOnTop),
               say_angle(line.from_length, voice), on_square_text(line.off_square, voice));
      },
      [&](Ui& half) {
        if (!timber) return answer(half, key + ".tilt", context.say(Msg::kCornerEdgeTilt), say_angle(line.tilt, voice));
        const CutLine side = cut_line(cut, Face::kNear);
        answer(half, key + ".side", context.say(Msg::kCornerOnSide), say_angle(side.off_square, voice),
               on_square_text(side.off_square, voice));
      });
  if (!timber) return;
  const Saw& saw = saw_in_use(context);
  corner_ride(context, key + ".ride_top", saw, cut, Face::kTop);
  corner_ride(context, key + ".ride_side", saw, cut, Face::kNear);
}

void corner_cut_screen(Context& context) {
  corner_scroll(context, "corner.cut", [&](const ShownCorner& shown, const RoofCorner& corner, const Voice&) {
    Ui& ui = context.ui;
    const CornerCutName name = context.rafter_memory.corner_cut;
    heading(ui, "corner.cut_name", corner_cut_text(name, ui.language));
    const CornerCut* first = nullptr;
    const auto cuts = corner_cuts(shown.input, corner);
    bool several = false;
    for (const CornerCut& cut : cuts) {
      if (cut.name != name) continue;
      if (first != nullptr && !alike(*first, cut)) several = true;
      if (first == nullptr) first = &cut;
    }
    if (first == nullptr) return body(ui, "corner.cut_none", context.say(Msg::kCornerJacksNone));
    if (first->section.depth > Length{}) saw_row(context, "corner");
    for (const CornerCut& cut : cuts) {
      if (cut.name != name || (!several && &cut != first)) continue;
      const std::string key = cut.roof == 0 ? "corner.cut_first" : "corner.cut_other";
      if (several) heading(ui, key, corner_roof_text(cut.roof, ui.language), 3);
      corner_cut_part(context, cut, key);
      space(ui, 16);
    }
    caution(ui, "corner.first_piece",
            std::string(context.say(Msg::kHelpCautionFirst)) + " " + std::string(context.say(Msg::kSawGuard)));
  });
}

void corner_cuts_screen(Context& context) {
  corner_scroll(context, "corner.cuts", [&](const ShownCorner& shown, const RoofCorner& corner, const Voice& voice) {
    Ui& ui = context.ui;
    const auto cuts = corner_cuts(shown.input, corner);
    int last = -1;
    for (const CornerCut& cut : cuts) {
      if (static_cast<int>(cut.name) <= last) continue;
      last = static_cast<int>(cut.name);
      std::string second;
      for (const CornerCut& other : cuts) {
        if (other.name != cut.name || (&other != &cut && alike(cut, other))) continue;
        const Angle off = cut_line(other, first_face(other.name)).from_length;
        second += (second.empty() ? "" : " · ") + say(Msg::kMitreFromLength, ui.language, say_angle(off, voice));
      }
      if (!list_row(ui, "corner.cut." + std::to_string(last), corner_cut_text(cut.name, ui.language), second)) continue;
      context.rafter_memory.corner_cut = cut.name;
      context.pages.push({"corner.cut", Msg::kCornerCutWhich, corner_cut_screen});
    }
  });
}

}  // namespace

Page corner_cuts_page() { return {"corner.cuts", Msg::kCornerCutsTitle, corner_cuts_screen}; }

}  // namespace bentbook::screens
