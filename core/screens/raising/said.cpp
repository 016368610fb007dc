#include "screens/raising/said.h"

#include <algorithm>
#include <string>

#include "frame/joints/joint_table.h"
#include "raising/limits.h"
#include "screens/raising/form.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

// ── Loads, and what joints hold ───────────────────────────────────────────────────────────────────────────────────

/// What is assumed of a kind of joint may be made stricter or, with a reason, looser.
void hold_part(Context& context, const RaisingPlan& plan, JointKind kind) {
  Ui& ui = context.ui;
  const std::string key = "loads.hold." + std::to_string(static_cast<std::size_t>(kind));
  const auto it =
      std::find_if(plan.holds.begin(), plan.holds.end(), [&](const HoldChange& h) { return h.joint == kind; });
  const bool changed = it != plan.holds.end();
  const auto held = find_msg("holds_" + std::string(row_of(kind).word));
  const std::string assumed(held ? context.say(*held) : context.say(Msg::kHoldAssumed));
  if (toggle(ui, key, joint_name(kind, ui.language), changed, changed ? context.say(Msg::kHoldChanged) : assumed))
    edit_raising(context, [&](RaisingPlan& next) {
      if (changed)
        drop_hold_change(next, kind);
      else
        hold_change(next, kind);
    });
  if (!changed) return;
  const std::string path = "raising.holds." + std::to_string(it - plan.holds.begin());
  given_flag(context, path + ".sideways", context.say(Msg::kHoldSideways));
  given_flag(context, path + ".uplift", context.say(Msg::kHoldUplift));
  given_flag(context, path + ".pulls", context.say(Msg::kHoldPulls));
  if (const auto reason = text_field(ui, key + ".reason", context.say(Msg::kHoldReason), it->reason))
    edit_raising(context, [&](RaisingPlan& next) { hold_change(next, kind).reason = reason->substr(0, 400); });
  if (it->reason.empty()) caution(ui, key + ".no_reason", context.say(Msg::kHoldNoReason));
}

void loads_screen(Context& context) {
  raising_page(context, "loads.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    caution(ui, "loads.caution", context.say(Msg::kLoadsCaution));
    raising_field(context, "loads.wind_mph", Msg::kLoadsWind);
    raising_field(context, "loads.push_per_cent", Msg::kLoadsPush, "%");
    raising_field(context, "loads.person", Msg::kLoadsPerson);
    raising_field(context, "loads.out_of_plumb_per_mille", Msg::kLoadsPlumb, "‰");
    raising_field(context, "loads.wet_per_cent", Msg::kLoadsWet, "%");
    given_flag(context, "raising.posts_anchored", context.say(Msg::kLoadsAnchored));
    heading(ui, "loads.fasten_title", context.say(Msg::kFastenTitle));
    given_choice(context, "raising.fasten", context.say(Msg::kFastenWhen),
                 {context.say(Msg::kFastenLater), context.say(Msg::kFastenWithStep)});
    const auto low = [&](double lb) { return say_weight(lb, voice_of(context)); };
    body(ui, "loads.ratings_note",
         say(Msg::kRatingsNote, ui.language,
             {{"peg", low(limits::kUnratedPegLb)},
              {"pin", low(limits::kUnratedPinLb)},
              {"screw", low(limits::kUnratedScrewLb)},
              {"brace", low(limits::kUnratedBraceLb)}}));
    raising_field(context, "ratings.peg", Msg::kRatingPeg);
    raising_field(context, "ratings.pin", Msg::kRatingPin);
    raising_field(context, "ratings.screw", Msg::kRatingScrew);
    raising_field(context, "ratings.nailed_brace", Msg::kRatingBrace);
    if (const auto source =
            text_field(ui, "loads.ratings_source", context.say(Msg::kRatingSource), plan.ratings.source))
      edit_raising(context, [&](RaisingPlan& next) { next.ratings.source = source->substr(0, 400); });
    given_flag(context, "raising.spare", context.say(Msg::kSpareWanted));
    given_choice(context, "raising.kings", context.say(Msg::kKingsWhen),
                 {context.say(Msg::kKingsRidge), context.say(Msg::kKingsBents)});
    heading(ui, "loads.holds", context.say(Msg::kHoldTitle));
    body(ui, "loads.holds_note", context.say(Msg::kHoldNote));
    for (int k = 0; k < kJointKinds; ++k) hold_part(context, plan, static_cast<JointKind>(k));
  });
}

// ── Crane, gear, crew, truck ──────────────────────────────────────────────────────────────────────────────────────

/// A crane or telehandler and its own chart, by its name in the raising.
void crane_part(Context& context, const std::string& name, Crane RaisingPlan::*which, Msg present) {
  Ui& ui = context.ui;
  const Crane& crane = context.desk.book().raising.*which;
  given_flag(context, "raising." + name + ".present", context.say(present));
  if (!crane.present) return;
  body(ui, "gear." + name + ".note", context.say(Msg::kGearChartNote));
  for (std::size_t i = 0; i < crane.chart.size(); ++i) {
    const std::string row = name + ".chart." + std::to_string(i);
    raising_field(context, row + ".radius", Msg::kGearRadius);
    raising_field(context, row + ".capacity", Msg::kGearCapacity);
    if (button(ui, "gear." + row + ".drop",
               say(Msg::kGearDropRow, ui.language, say_length(crane.chart[i].radius, voice_of(context)))))
      edit_raising(context, [&](RaisingPlan& p) {
        (p.*which).chart.erase((p.*which).chart.begin() + static_cast<std::ptrdiff_t>(i));
      });
  }
  if (button(ui, "gear." + name + ".chart.add", context.say(Msg::kGearAddRow)))
    edit_raising(context, [&](RaisingPlan& p) {
      std::vector<ChartRow>& chart = (p.*which).chart;
      const Length last = chart.empty() ? Length::feet(10) : chart.back().radius;
      chart.push_back({last + Length::feet(10), bentbook::Weight::pounds(1000)});
    });
  raising_field(context, name + ".hook_block", Msg::kGearBlock);
  raising_field(context, name + ".rigging", Msg::kGearRigging);
  raising_field(context, name + ".x", Msg::kGearCraneX);
  raising_field(context, name + ".y", Msg::kGearCraneY);
}

/// What stands in the yard and lifts, and how bents go up by it.
void yard_part(Context& context, const RaisingPlan& plan) {
  Ui& ui = context.ui;
  heading(ui, "gear.yard", context.say(Msg::kGearYard));
  crane_part(context, "crane", &RaisingPlan::crane, Msg::kGearCranePresent);
  crane_part(context, "crane_two", &RaisingPlan::crane_two, Msg::kGearCraneTwoPresent);
  crane_part(context, "telehandler", &RaisingPlan::telehandler, Msg::kGearTelehandlerPresent);
  if (given_flag(context, "raising.gin_pole.present", context.say(Msg::kGearGinPolePresent))) {
    raising_field(context, "gin_pole.rated", Msg::kGearGinPoleRated);
    if (const auto who = text_field(ui, "gear.gin_pole.by", context.say(Msg::kGearGinPoleBy), plan.gin_pole.rated_by))
      edit_raising(context, [&](RaisingPlan& p) { p.gin_pole.rated_by = who->substr(0, 200); });
  }
  given_flag(context, "raising.poles", context.say(Msg::kGearPoles));
  given_choice(context, "raising.bents", context.say(Msg::kGearBents),
               {context.say(Msg::kGearBentsYard), context.say(Msg::kGearBentsTip), context.say(Msg::kGearBentsPick)});
}

void gear_part(Context& context, const RaisingPlan& plan) {
  Ui& ui = context.ui;
  heading(ui, "gear.own", context.say(Msg::kGearOwn));
  body(ui, "gear.own_note", context.say(Msg::kGearOwnNote));
  for (std::size_t i = 0; i < plan.gear.size(); ++i) {
    const LiftingGear& gear = plan.gear[i];
    const std::string key = "gear.piece." + std::to_string(i);
    if (const auto name = text_field(ui, key + ".name", context.say(Msg::kGearName), gear.name))
      edit_raising(context, [&](RaisingPlan& p) { p.gear[i].name = name->substr(0, 200); });
    const std::string row = "gear." + std::to_string(i);
    given_choice(context, "raising." + row + ".kind", context.say(Msg::kGearKind),
                 {context.say(Msg::kGearSling), context.say(Msg::kGearShackle), context.say(Msg::kGearSpreader)});
    raising_field(context, row + ".length", Msg::kFieldLength);
    raising_field(context, row + ".rated", Msg::kGearRated);
    if (gear.kind == GearKind::kSling) raising_field(context, row + ".choked", Msg::kGearChoked);
    raising_field(context, row + ".count", Msg::kGearCount);
    if (button(ui, key + ".drop", say(Msg::kGearDropPiece, ui.language, gear.name), Weight::kDestructive))
      edit_raising(context, [&](RaisingPlan& p) { p.gear.erase(p.gear.begin() + static_cast<std::ptrdiff_t>(i)); });
    space(ui, 16);
  }
  if (button(ui, "gear.add", context.say(Msg::kGearAdd)))
    edit_raising(context, [&](RaisingPlan& p) {
      LiftingGear piece;
      piece.name = std::string(context.say(Msg::kGearSling)) + " " + std::to_string(p.gear.size() + 1);
      p.gear.push_back(piece);
    });
}

void gear_screen(Context& context) {
  raising_page(context, "gear.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    caution(ui, "gear.caution", context.say(Msg::kGearCaution));
    yard_part(context, plan);
    gear_part(context, plan);
    heading(ui, "gear.crew", context.say(Msg::kShopCrew));
    raising_field(context, "crew.people", Msg::kGearPeople);
    raising_field(context, "crew.each", Msg::kGearEach);
    note(ui, "gear.crew.note", context.say(Msg::kGearCrewNote));
    heading(ui, "gear.truck", context.say(Msg::kGearTruck));
    raising_field(context, "truck.length", Msg::kGearTruckLength);
    raising_field(context, "truck.carries", Msg::kGearTruckCarries);
    raising_field(context, "stack_x", Msg::kGearStackX);
    raising_field(context, "stack_y", Msg::kGearStackY);
  });
}

}  // namespace

Page raising_loads_page() { return {"raising.loads", Msg::kRaisingLoads, loads_screen}; }
Page raising_gear_page() { return {"raising.gear", Msg::kRaisingGear, gear_screen}; }

}  // namespace bentbook::screens
