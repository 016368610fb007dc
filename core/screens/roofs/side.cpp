#include "screens/roofs/side.h"

#include <string>

#include "numeric/index.h"
#include "roof/plan/roof_edits.h"
#include "screens/roofs/form.h"
#include "words/roofs/roof_words.h"

namespace bentbook::screens {
namespace {

/// A change of the outline that still gives a roof is taken, another one told.
bool reshape(Context& context, const RoofPlan& next) {
  const auto roof = solve_roof(next);
  if (!roof) context.toast(roof_error_text(roof.error(), voice_of(context)), false);
  if (roof) edit_roof(context, [&](RoofPlan& plan) { plan = next; });
  return roof.has_value();
}

void outline_part(Context& context, const RoofPlan& plan, int side) {
  Ui& ui = context.ui;
  const Length step = is_metric(context.style().form) ? Length::mm(100) : Length::inches(6);
  if (button(ui, "side.out", context.say(Msg::kRoofPartOut))) (void)reshape(context, with_part_out(plan, side, step));
  if (plan.sides.size() > 3 && button(ui, "side.drop", context.say(Msg::kRoofTakeSideOut), Weight::kDestructive) &&
      reshape(context, without_side(plan, side))) {
    context.pages.pop();
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  }
}

void side_screen(Context& context) {
  roof_page(context, "side.page", [&](const ShownRoof& shown) {
    Ui& ui = context.ui;
    const int side = std::stoi(context.subject);
    if (at(side) >= shown.plan.sides.size()) return body(ui, "side.gone", context.say(Msg::kStepGone));
    const std::string path = "sides." + context.subject;
    if (const auto other = roof_plan_form(context, shown, drawing_height(context, 260), side); other && *other != side)
      context.pages.turn_to(roof_side_page(*other));
    heading(ui, "side.name", say(Msg::kRoofSide, ui.language, side_letters(side)));
    given_choice(context, "roof_plan." + path + ".kind", context.say(Msg::kRoofSideKind),
                 {context.say(Msg::kRoofSideEave), context.say(Msg::kRoofSideGable)});
    if (given(ui, "side.length", say(Msg::kRoofWallOf, ui.language, side_letters(side)),
              say_length(length_of_side(shown.plan, side), voice_of(context)),
              context.keypad.is_open("roofs.length." + context.subject)))
      open_wall_length(context, context.desk.book().roof, side);
    if (shown.plan.sides[at(side)].kind == SideKind::kEave) {
      roof_field(context, path + ".pitch", Msg::kFieldPitch);
      roof_field(context, path + ".plate_height", Msg::kFieldPlateHeight);
    }
    roof_field(context, path + ".overhang", Msg::kFieldOverhang);
    if (!shown.solved()) roof_refused(context, shown);
    heading(ui, "side.outline", context.say(Msg::kRoofOutline));
    outline_part(context, context.desk.book().roof, side);
  });
}

void for_all_screen(Context& context) {
  roof_page(context, "roofs.all.page", [&](const ShownRoof& shown) {
    Ui& ui = context.ui;
    if (!shown.solved()) roof_refused(context, shown);
    given_choice(context, "roof_plan.heel_by", context.say(Msg::kFootGivenBy),
                 {context.say(Msg::kFootBySeat), context.say(Msg::kFootByHeel)});
    if (shown.plan.heel_by == HeelBy::kSeat)
      roof_field(context, "seat", Msg::kFieldSeat);
    else
      roof_field(context, "heel", Msg::kFieldHeel);
    roof_field(context, "spacing", Msg::kFieldSpacing);
    given_choice(context, "roof_plan.hip_top", context.say(Msg::kRoofHipTop),
                 {context.say(Msg::kRoofHipDropped), context.say(Msg::kRoofHipBacked)});
    given_choice(context, "roof_plan.tail", context.say(Msg::kTailTitle),
                 {context.say(Msg::kTailPlumb), context.say(Msg::kTailSquare)});
    given_choice(context, "roof_plan.feet", context.say(Msg::kFeetTitle),
                 {context.say(Msg::kFeetTied), context.say(Msg::kFeetLoose)});
    constexpr std::pair<std::string_view, Msg> kSections[] = {{"common_rafter", Msg::kRoofTimberCommon},
                                                              {"hip_rafter", Msg::kRoofTimberHip},
                                                              {"valley_rafter", Msg::kRoofTimberValley},
                                                              {"ridge", Msg::kRoofTimberRidge}};
    for (const auto& [path, name] : kSections) {
      const std::string root = "roof_plan." + std::string(path);
      heading(ui, root, context.say(name), 3);
      given_field(context, root + ".breadth", context.say(Msg::kFieldBreadth));
      given_field(context, root + ".depth", context.say(Msg::kFieldDepth));
    }
  });
}

}  // namespace

Page roof_side_page(int side) { return {"roofs.side", Msg::kRoofPlanTitle, side_screen, std::to_string(side)}; }
Page roof_for_all_page() { return {"roofs.all", Msg::kRoofForAll, for_all_screen}; }

}  // namespace bentbook::screens
