#include "screens/raising/yard/gear.h"

#include <algorithm>
#include <string>

#include "raising/drawings/gear_drawing.h"
#include "raising/drawings/site_drawing.h"
#include "screens/raising/yard/figures.h"
#include "screens/raising/yard/lifters.h"
#include "screens/raising/yard/site.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

double longest_timber(const Frame& frame) {
  double longest = 0;
  for (const Timber& timber : frame.timbers) longest = std::max(longest, timber.length);
  return longest;
}

std::string piece_text(const Context& context, const LiftingGear& gear) {
  const Voice voice = voice_of(context);
  std::string said = say(Msg::kAsideCount, voice.language, std::to_string(gear.count));
  if (gear.kind != GearKind::kShackle) said += " · " + say_length(gear.length, voice);
  return said + " · " + print_weight(gear.rated, voice.lengths.form);
}

void piece_screen(Context& context) {
  raising_page(context, "piece.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const auto i = static_cast<std::size_t>(std::stoi(context.subject));
    if (i >= context.desk.book().raising.gear.size()) return body(ui, "piece.gone", context.say(Msg::kStepGone));
    const RaisingShown shown(context);
    const LiftingGear& gear = shown.book().raising.gear[i];
    const std::string root = "raising.gear." + context.subject + ".";
    given_choice(context, root + "kind", context.say(Msg::kGearKind),
                 {context.say(Msg::kGearSling), context.say(Msg::kGearShackle), context.say(Msg::kGearSpreader)});
    raising_drawn(context, "gear.piece", Msg::kGearPiecePicture, drawing_height(context, 270), gear_drawing(gear), root,
                  [&](std::string_view key) { return gear_figure(key, shown.book(), i, voice_of(context)); });
    if (const auto name = text_field(ui, "gear.piece.name", context.say(Msg::kGearName), gear.name))
      edit_raising(context, [&](RaisingPlan& p) { p.gear[i].name = name->substr(0, 200); });
    if (!button(ui, "gear.piece.drop", say(Msg::kGearDropPiece, ui.language, gear.name), Weight::kDestructive)) return;
    edit_raising(context, [&](RaisingPlan& p) { p.gear.erase(p.gear.begin() + static_cast<std::ptrdiff_t>(i)); });
    context.pages.pop();
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  });
}

void truck_screen(Context& context) {
  raising_page(context, "truck.page", [&](const ShownFrame& frame) {
    Ui& ui = context.ui;
    const RaisingShown shown(context);
    const Voice voice = voice_of(context);
    const double longest = longest_timber(*frame.frame());
    raising_drawn(context, "gear.truck", Msg::kGearTruckPicture, drawing_height(context, 230),
                  truck_drawing(shown.book().raising.truck, longest), "raising.truck.",
                  [&](std::string_view key) { return truck_figure(key, shown.book(), longest, voice); });
    heading(ui, "gear.stack", context.say(Msg::kGearStack));
    site_part(context, *frame.frame(), shown, InYard::kStack);
  });
}

void pieces_part(Context& context, const RaisingPlan& plan) {
  Ui& ui = context.ui;
  heading(ui, "gear.own", context.say(Msg::kGearOwn));
  body(ui, "gear.own_note", context.say(Msg::kGearOwnNote));
  for (std::size_t i = 0; i < plan.gear.size(); ++i)
    if (list_row(ui, "gear.piece." + std::to_string(i), plan.gear[i].name, piece_text(context, plan.gear[i])))
      context.pages.push(raising_piece_page(i));
  if (!button(ui, "gear.add", context.say(Msg::kGearAdd))) return;
  edit_raising(context, [&](RaisingPlan& p) {
    LiftingGear piece;
    piece.name = std::string(context.say(Msg::kGearSling)) + " " + std::to_string(p.gear.size() + 1);
    p.gear.push_back(piece);
  });
  context.pages.push(raising_piece_page(plan.gear.size()));
}

/// Who does what, as the lead writes it.
void names_field(Context& context, ItemKey key, Msg label, std::string Crew::*names) {
  if (const auto typed = text_field(context.ui, key, context.say(label), context.desk.book().raising.crew.*names))
    edit_raising(context, [&](RaisingPlan& plan) { plan.crew.*names = *typed; });
}

void gear_screen(Context& context) {
  raising_page(context, "gear.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    caution(ui, "gear.caution", context.say(Msg::kGearCaution));
    heading(ui, "gear.yard", context.say(Msg::kGearYard));
    lifter_rows(context);
    given_flag(context, "raising.poles", context.say(Msg::kGearPoles));
    given_choice(context, "raising.bents", context.say(Msg::kGearBents),
                 {context.say(Msg::kGearBentsYard), context.say(Msg::kGearBentsTip), context.say(Msg::kGearBentsPick)});
    pieces_part(context, plan);
    heading(ui, "gear.crew", context.say(Msg::kShopCrew));
    raising_field(context, "crew.people", Msg::kGearPeople);
    raising_field(context, "crew.each", Msg::kGearEach);
    note(ui, "gear.crew.note", context.say(Msg::kGearCrewNote));
    names_field(context, "gear.on_lines", Msg::kGearOnLines, &Crew::on_lines);
    names_field(context, "gear.on_poles", Msg::kGearOnPoles, &Crew::on_poles);
    const Voice voice = voice_of(context);
    if (list_row(ui, "gear.to_truck", context.say(Msg::kGearTruck),
                 say_length(plan.truck.length, voice) + " · " + print_weight(plan.truck.carries, voice.lengths.form)))
      context.pages.push(raising_truck_page());
  });
}

}  // namespace

Page raising_gear_page() { return {"raising.gear", Msg::kRaisingGear, gear_screen}; }
Page raising_piece_page(std::size_t piece) {
  return {"raising.piece", Msg::kGearPiece, piece_screen, std::to_string(piece)};
}
Page raising_truck_page() { return {"raising.truck", Msg::kGearTruck, truck_screen}; }

}  // namespace bentbook::screens
