#include "screens/roofs/screen.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "frame/drawings/plan_drawing.h"
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

Length share_of(Length whole, int parts, int of) {
  const Length foot = Length::feet(1);
  return Length{whole.count / foot.count * parts / of * foot.count};
}

/// Shapes to begin with, as large as the book's frame; their wings half as wide as the building is long at most.
std::array<RoofPlan, 5> shapes_for(const Book& book) {
  const FramePlan& frame = book.frame;
  const Length along = std::max(outside_length(frame), Length::feet(12)),
               across = std::max(frame.span, Length::feet(8));
  const Slope pitch = frame.pitch_left;
  const Length wing = std::min(across, share_of(along, 1, 3)), out = std::max(share_of(across, 1, 2), Length::feet(4));
  std::array<RoofPlan, 5> shapes = {rectangle_roof(along, across, pitch), l_roof(along, across, wing, out, pitch),
                                    t_roof(along, across, wing, out, pitch), u_roof(along, across, wing, out, pitch),
                                    bay_roof(along, across, share_of(along, 1, 2), share_of(along, 1, 8), pitch)};
  for (RoofPlan& shape : shapes)
    for (PlanSide& side : shape.sides) {
      side.overhang = frame.eave_overhang;
      side.plate_height = frame.plate_left;
    }
  return shapes;
}

void begin_part(Context& context) {
  Ui& ui = context.ui;
  body(ui, "roofs.begin", context.say(Msg::kRoofBegin));
  std::array<RoofPlan, 5> shapes = shapes_for(context.desk.book());
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
    edit_roof(context, [&](RoofPlan& plan) { plan = std::move(shapes[at(*picked)]); });
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
  double area = 0, top = 0;
  for (const RoofFace& face : roof.shape.faces) area += face.slope_area;
  for (const Vec3& node : roof.shape.nodes) top = std::max(top, node.z);
  Abreast abreast(ui, 32, kRowAbreast);
  abreast.next();
  fact(ui, "roofs.area", context.say(Msg::kRoofArea), roof_area_text(area, voice), true);
  abreast.next();
  fact(ui, "roofs.top", context.say(Msg::kRoofTopHeight), say_inches(top, voice), true);
}

void roof_screen(Context& context) {
  Ui& ui = context.ui;
  begin_scroll(ui, "roofs.page", context.page);
  if (book_is_open(context)) {
    take_wall_length(context);
    const ShownRoof shown = roof_now(context);
    if (shown.plan.sides.empty()) {
      begin_part(context);
    } else {
      if (const auto side = roof_plan_form(context, shown, drawing_height(context, 420), -1))
        context.pages.push(roof_side_page(*side));
      note(ui, "roofs.how", context.say(Msg::kRoofHow));
      if (const RoofSolution* roof = shown.solved()) {
        totals_part(context, *roof);
        if (list_row(ui, "roofs.timbers", context.say(Msg::kRoofTimbers),
                     say_count(Msg::kRoofTimbersNote, ui.language, static_cast<std::int64_t>(roof->timbers.size()))))
          context.pages.push(roof_timbers_page());
      } else {
        roof_refused(context, shown);
      }
      if (toggle(ui, "roofs.as_frame", context.say(Msg::kRoofAsFrame), !context.desk.book().framed,
                 context.say(Msg::kRoofAsFrameNote)))
        edit_book(context, [](Book& book) { book.framed = !book.framed; });
      if (list_row(ui, "roofs.all", context.say(Msg::kRoofForAll), context.say(Msg::kRoofForAllNote)))
        context.pages.push(roof_for_all_page());
      if (const RoofSolution* roof = shown.solved()) findings_part(context, *roof);
      if (button(ui, "roofs.over", context.say(Msg::kRoofStartOver), Weight::kDestructive)) {
        edit_roof(context, [](RoofPlan& plan) { plan = {}; });
        context.toast(std::string(context.say(Msg::kStepDeleted)), true);
      }
    }
  }
  space(ui, 24);
  end_scroll(ui);
}

}  // namespace

Page roof_plan_page() { return {"roofs", Msg::kRoofPlanTitle, roof_screen}; }

}  // namespace bentbook::screens
