#include "screens/roofs/screen.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "frame/drawings/plan_drawing.h"
#include "frame/roofs/roof_shapes.h"
#include "numeric/index.h"
#include "roof/plan/roof_drawing.h"
#include "screens/form/drawn_card.h"
#include "screens/roofs/form.h"
#include "screens/roofs/side.h"
#include "screens/roofs/timbers.h"
#include "words/frame_words.h"
#include "words/roofs/roof_words.h"

namespace bentbook::screens {
namespace {

constexpr std::size_t kMostSaid = 12;

void begin_part(Context& context) {
  Ui& ui = context.ui;
  body(ui, "roofs.begin", context.say(Msg::kRoofBegin));
  const FramePlan& plan = context.desk.book().frame;
  std::array<RoofPlan, 5> shapes = roof_shapes(plan, outside_length(plan));
  constexpr std::array<Msg, 5> kNames = {Msg::kRoofShapeRectangle, Msg::kRoofShapeL, Msg::kRoofShapeT, Msg::kRoofShapeU,
                                         Msg::kRoofShapeBay};
  std::vector<DrawnOption> options;
  options.reserve(shapes.size());
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    const auto roof = solve_roof(shapes[i]);
    options.push_back({"roofs.shape." + std::to_string(i), context.say(kNames[i]),
                       roof_plan_drawing(shapes[i], roof ? &*roof : nullptr, -1)});
  }
  if (const auto picked = drawn_choice(context, context.say(Msg::kRoofPlanTitle), std::move(options), -1))
    edit_roof(context, [&](RoofPlan& roof) { roof = std::move(shapes[at(*picked)]); });
}

/// The usual cures where tails do not line up, as keys.
void cures_part(Context& context, const std::string& key, const RoofFinding& finding) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const std::string letters = side_letters(finding.b);
  const auto cure = [&](const char* which, Msg msg, const char* slot, double value) {
    return button(ui, key + which, say(msg, ui.language, {{slot, say_inches(value, voice)}, {"b", letters}}));
  };
  const auto side_of = [&](RoofPlan& plan) -> PlanSide& { return plan.sides[at(finding.b)]; };
  if (finding.overhang >= 0 && cure(".overhang", Msg::kRoofCureOverhang, "overhang", finding.overhang))
    edit_roof(context, [&](RoofPlan& plan) { side_of(plan).overhang = Length::from_inches(finding.overhang); });
  if (cure(".plate", Msg::kRoofCurePlate, "plate", finding.plate))
    edit_roof(context, [&](RoofPlan& plan) { side_of(plan).plate_height = Length::from_inches(finding.plate); });
}

/// What is to be minded.
void findings_part(Context& context, const RoofSolution& roof) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  int n = 0;
  for (const SaidRoofFinding& said : gathered_findings(roof, voice)) {
    if (at(n) == kMostSaid) break;
    const std::string key = "roofs.finding." + std::to_string(n++);
    caution(ui, key, said.text);
    if (said.worst.id == RoofFindingId::kFasciaApart) cures_part(context, key, said.worst);
  }
}

void totals_part(Context& context, const RoofSolution& roof) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  Abreast abreast(ui, 32, kRowAbreast);
  abreast.next();
  fact(ui, "roofs.area", context.say(Msg::kRoofArea), roof_area_text(roof_area(roof.shape), voice), true);
  abreast.next();
  fact(ui, "roofs.top", context.say(Msg::kRoofTopHeight), say_inches(highest_point(roof.shape), voice), true);
}

void solved_part(Context& context, const RoofSolution& roof) {
  Ui& ui = context.ui;
  totals_part(context, roof);
  if (list_row(ui, "roofs.timbers", context.say(Msg::kRoofTimbers),
               say_count(Msg::kRoofTimbersNote, ui.language, static_cast<std::int64_t>(roof.timbers.size()))))
    context.pages.push(roof_timbers_page());
  if (toggle(ui, "roofs.as_frame", context.say(Msg::kRoofAsFrame), !context.desk.book().framed,
             context.say(Msg::kRoofAsFrameNote)))
    edit_book(context, [](Book& book) { book.framed = !book.framed; });
}

void roof_screen(Context& context) {
  roof_page(context, "roofs.page", [&](const ShownRoof& shown) {
    Ui& ui = context.ui;
    if (shown.plan.sides.empty()) return begin_part(context);
    if (const auto side = roof_plan_form(context, shown, drawing_height(context, 420), -1))
      context.pages.push(roof_side_page(*side));
    note(ui, "roofs.how", context.say(Msg::kRoofHow));
    const RoofSolution* roof = shown.solved();
    if (roof != nullptr)
      solved_part(context, *roof);
    else
      roof_refused(context, shown);
    if (list_row(ui, "roofs.all", context.say(Msg::kRoofForAll), context.say(Msg::kRoofForAllNote)))
      context.pages.push(roof_for_all_page());
    if (roof != nullptr) findings_part(context, *roof);
    if (!button(ui, "roofs.over", context.say(Msg::kRoofStartOver), Weight::kDestructive)) return;
    edit_roof(context, [](RoofPlan& plan) { plan = {}; });
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  });
}

}  // namespace

Page roof_plan_page() { return {"roofs", Msg::kRoofPlanTitle, roof_screen}; }

}  // namespace bentbook::screens
