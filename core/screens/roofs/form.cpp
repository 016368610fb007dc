#include "screens/roofs/form.h"

#include <charconv>

#include "numeric/index.h"
#include "roof/plan/roof_drawing.h"
#include "roof/plan/roof_edits.h"
#include "words/figures.h"
#include "words/roofs/roof_words.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kWall = "roofs.length.";

/// The number at the end of a key: "side.2".
int number_of(std::string_view key) {
  const std::string_view digits = key.substr(key.rfind('.') + 1);
  int n = -1;
  std::from_chars(digits.data(), digits.data() + digits.size(), n);
  return n;
}

/// The plan with what stands in the keypad.
std::optional<RoofPlan> typed_roof(const Context& context) {
  const std::string& key = context.keypad.key();
  if (key.starts_with("roof_plan.")) {
    if (auto book = typed_book(context)) return std::move(book->roof);
    return std::nullopt;
  }
  if (!context.keypad.is_open() || !key.starts_with(kWall)) return std::nullopt;
  const auto length = context.keypad.preview_length(key);
  const RoofPlan& plan = context.desk.book().roof;
  if (!length || at(number_of(key)) >= plan.sides.size()) return std::nullopt;
  return with_side_length(plan, number_of(key), *length);
}

const Result<RoofSolution>& solved(FrameMemory::Roof& kept, const RoofPlan& plan) {
  if (!kept.solved || !(kept.of == plan)) {
    kept.of = plan;
    kept.solved = solve_roof(plan);
  }
  return *kept.solved;
}

}  // namespace

int sides_measured(bool usual_type) { return usual_type ? limits::kMostSidesMeasured : limits::kMostMeasuredLarge; }

ShownRoof roof_now(Context& context) {
  FrameMemory::Roof& typing = context.frame_memory.roof_typed;
  if (const auto typed = typed_roof(context))
    if (const Result<RoofSolution>& roof = solved(typing, *typed)) return {typing.of, roof};
  FrameMemory::Roof& kept = context.frame_memory.roof;
  const Result<RoofSolution>& roof = solved(kept, context.desk.book().roof);
  return {kept.of, roof};
}

bentbook::FigureText roof_figure(std::string_view key, const RoofPlan& plan, RoofNames names, const Voice& voice) {
  const int side = number_of(key);
  const std::string letters = side_letters(side);
  if (!key.starts_with("side."))
    return {say_length(length_of_side(plan, side), voice), say(Msg::kRoofWallOf, voice.language, letters)};
  const PlanSide& told = plan.sides[at(side)];
  const std::string pitch = told.kind == SideKind::kGable ? std::string(text(Msg::kRoofGableSide, voice.language))
                                                          : print_slope(told.pitch, voice.marks);
  return {letters + " " + pitch, say(Msg::kRoofSide, voice.language, letters),
          names == RoofNames::kLetters ? letters : std::string{}};
}

std::optional<int> roof_plan_form(Context& context, const ShownRoof& shown, float height, int chosen) {
  const bool room = has_usual_type(context) && context.page.w >= 340;
  const auto words = [&](std::string_view key) {
    return roof_figure(key, shown.plan, room ? RoofNames::kPitches : RoofNames::kLetters, voice_of(context));
  };
  const auto tapped = drawing_form(
      context, "roofs", context.say(Msg::kRoofPlanPicture), height,
      roof_plan_drawing(shown.plan, shown.solved(), chosen, chosen < 0 ? sides_measured(has_usual_type(context)) : 0),
      words);
  if (!tapped) return std::nullopt;
  if (tapped->starts_with("side.")) return number_of(*tapped);
  open_wall_length(context, context.desk.book().roof, number_of(*tapped));
  return std::nullopt;
}

void open_wall_length(Context& context, const RoofPlan& plan, int side) {
  context.keypad.open_length(std::string(kWall) + std::to_string(side),
                             say(Msg::kRoofWallOf, context.ui.language, side_letters(side)), length_of_side(plan, side),
                             {Length::inches(6), Length::feet(1000), BareUnit::kFoot});
}

void take_wall_length(Context& context) {
  const std::string key = context.keypad.waiting(kWall);
  if (key.empty()) return;
  const auto length = context.keypad.take_length(key);
  const RoofPlan& plan = context.desk.book().roof;
  const int side = number_of(key);
  if (!length || side < 0 || at(side) >= plan.sides.size()) return;
  const RoofPlan next = with_side_length(plan, side, *length);
  if (const auto roof = solve_roof(next); !roof)
    context.toast(roof_error_text(roof.error(), voice_of(context)), false);
  else
    edit_roof(context, [&](RoofPlan& told) { told = next; });
}

void roof_refused(Context& context, const ShownRoof& shown) {
  const Error& error = shown.roof.error();
  refusal(context.ui, "roofs.refused", roof_error_text(error, voice_of(context)));
  if (const auto field = field_now(context, "roof_plan." + error.where))
    given_field(context, "roof_plan." + error.where,
                field_name(error.where.substr(error.where.rfind('.') + 1), context.ui.language));
}

void roof_field(Context& context, std::string_view path, Msg name) {
  given_field(context, "roof_plan." + std::string(path), context.say(name));
}

}  // namespace bentbook::screens
