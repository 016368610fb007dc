// What the lead says of the raising: loads and what joints hold, crane and gear and crew, temporary braces, wishes.

#include <algorithm>
#include <string>

#include "frame/joints/joint_table.h"
#include "screens/raising/form.h"
#include "screens/raising/pages.h"
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
  const auto change = [kind](RaisingPlan& next) -> HoldChange& {
    for (HoldChange& h : next.holds)
      if (h.joint == kind) return h;
    return next.holds.emplace_back(HoldChange{kind, false, false, false, {}});
  };
  const auto held = find_msg("holds_" + std::string(row_of(kind).word));
  const std::string assumed(held ? context.say(*held) : context.say(Msg::kHoldAssumed));
  if (toggle(ui, key, joint_name(kind, ui.language), changed, changed ? context.say(Msg::kHoldChanged) : assumed))
    edit_raising(context, [&](RaisingPlan& next) {
      if (changed)
        std::erase_if(next.holds, [&](const HoldChange& h) { return h.joint == kind; });
      else
        (void)change(next);
    });
  if (!changed) return;
  const auto one = [&](const char* what, Msg name, bool HoldChange::*at) {
    raising_toggle(context, key + "." + what, context.say(name), (*it).*at,
                   [change, at](RaisingPlan& next, bool on) { change(next).*at = on; });
  };
  one("sideways", Msg::kHoldSideways, &HoldChange::sideways);
  one("uplift", Msg::kHoldUplift, &HoldChange::uplift);
  one("pulls", Msg::kHoldPulls, &HoldChange::pulls);
  if (const auto reason = text_field(ui, key + ".reason", context.say(Msg::kHoldReason), it->reason))
    edit_raising(context, [&](RaisingPlan& next) { change(next).reason = reason->substr(0, 400); });
  if (it->reason.empty()) caution(ui, key + ".no_reason", context.say(Msg::kHoldNoReason));
}

void loads_screen(Context& context) {
  raising_page(context, "loads.page", [&](const ShownFrame&) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    const RaisingLoads& loads = plan.loads;
    caution(ui, "loads.caution", context.say(Msg::kLoadsCaution));
    raising_count(context, "loads.wind", context.say(Msg::kLoadsWind), "mph", loads.wind_mph, 0, 200,
                  [](RaisingPlan& p, int n) { p.loads.wind_mph = n; });
    raising_count(context, "loads.push", context.say(Msg::kLoadsPush), "%", loads.push_per_cent, 0, 100,
                  [](RaisingPlan& p, int n) { p.loads.push_per_cent = n; });
    raising_weight(context, "loads.person", context.say(Msg::kLoadsPerson), loads.person,
                   [](RaisingPlan& p, bentbook::Weight w) { p.loads.person = w; });
    raising_count(context, "loads.plumb", context.say(Msg::kLoadsPlumb), "‰", loads.out_of_plumb_per_mille, 0, 100,
                  [](RaisingPlan& p, int n) { p.loads.out_of_plumb_per_mille = n; });
    raising_count(context, "loads.wet", context.say(Msg::kLoadsWet), "%", loads.wet_per_cent, 0, 100,
                  [](RaisingPlan& p, int n) { p.loads.wet_per_cent = n; });
    raising_toggle(context, "loads.anchored", context.say(Msg::kLoadsAnchored), plan.posts_anchored,
                   [](RaisingPlan& p, bool on) { p.posts_anchored = on; });
    heading(ui, "loads.holds", context.say(Msg::kHoldTitle));
    body(ui, "loads.holds_note", context.say(Msg::kHoldNote));
    fasteners_toggle(context);
    for (int k = 0; k < kJointKinds; ++k) hold_part(context, plan, static_cast<JointKind>(k));
  });
}

// ── Crane, gear, crew, truck ──────────────────────────────────────────────────────────────────────────────────────

void crane_part(Context& context, const Crane& crane) {
  Ui& ui = context.ui;
  heading(ui, "gear.crane", context.say(Msg::kGearCrane));
  raising_toggle(context, "gear.crane.present", context.say(Msg::kGearCranePresent), crane.present,
                 [](RaisingPlan& p, bool on) { p.crane.present = on; });
  if (!crane.present) return;
  body(ui, "gear.chart_note", context.say(Msg::kGearChartNote));
  for (std::size_t i = 0; i < crane.chart.size(); ++i) {
    const std::string key = "gear.chart." + std::to_string(i);
    raising_length(context, key + ".radius", context.say(Msg::kGearRadius), crane.chart[i].radius,
                   [i](RaisingPlan& p, Length l) { p.crane.chart[i].radius = l; });
    raising_weight(context, key + ".capacity", context.say(Msg::kGearCapacity), crane.chart[i].capacity,
                   [i](RaisingPlan& p, bentbook::Weight w) { p.crane.chart[i].capacity = w; });
    if (button(ui, key + ".drop",
               say(Msg::kGearDropRow, ui.language, say_length(crane.chart[i].radius, voice_of(context)))))
      edit_raising(context, [&](RaisingPlan& p) {
        p.crane.chart.erase(p.crane.chart.begin() + static_cast<std::ptrdiff_t>(i));
      });
  }
  if (button(ui, "gear.chart.add", context.say(Msg::kGearAddRow)))
    edit_raising(context, [](RaisingPlan& p) {
      const Length last = p.crane.chart.empty() ? Length::feet(10) : p.crane.chart.back().radius;
      p.crane.chart.push_back({last + Length::feet(10), bentbook::Weight::pounds(1000)});
    });
  raising_weight(context, "gear.block", context.say(Msg::kGearBlock), crane.hook_block,
                 [](RaisingPlan& p, bentbook::Weight w) { p.crane.hook_block = w; });
  raising_weight(context, "gear.rigging", context.say(Msg::kGearRigging), crane.rigging,
                 [](RaisingPlan& p, bentbook::Weight w) { p.crane.rigging = w; });
  raising_length(context, "gear.crane.x", context.say(Msg::kGearCraneX), crane.x,
                 [](RaisingPlan& p, Length l) { p.crane.x = l; });
  raising_length(context, "gear.crane.y", context.say(Msg::kGearCraneY), crane.y,
                 [](RaisingPlan& p, Length l) { p.crane.y = l; });
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
    const auto kind =
        choice(ui, key + ".kind", context.say(Msg::kGearKind),
               {context.say(Msg::kGearSling), context.say(Msg::kGearShackle), context.say(Msg::kGearSpreader)},
               static_cast<int>(gear.kind));
    if (kind) edit_raising(context, [&](RaisingPlan& p) { p.gear[i].kind = static_cast<GearKind>(*kind); });
    raising_length(context, key + ".length", context.say(Msg::kFieldLength), gear.length,
                   [i](RaisingPlan& p, Length l) { p.gear[i].length = l; });
    raising_weight(context, key + ".rated", context.say(Msg::kGearRated), gear.rated,
                   [i](RaisingPlan& p, bentbook::Weight w) { p.gear[i].rated = w; });
    if (gear.kind == GearKind::kSling)
      raising_weight(context, key + ".choked", context.say(Msg::kGearChoked), gear.choked,
                     [i](RaisingPlan& p, bentbook::Weight w) { p.gear[i].choked = w; });
    raising_count(context, key + ".count", context.say(Msg::kGearCount), {}, gear.count, 0, 1000,
                  [i](RaisingPlan& p, int n) { p.gear[i].count = n; });
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
    crane_part(context, plan.crane);
    gear_part(context, plan);
    heading(ui, "gear.crew", context.say(Msg::kShopCrew));
    raising_count(context, "gear.people", context.say(Msg::kGearPeople), {}, plan.crew.people, 1, 1000,
                  [](RaisingPlan& p, int n) { p.crew.people = n; });
    raising_weight(context, "gear.each", context.say(Msg::kGearEach), plan.crew.each,
                   [](RaisingPlan& p, bentbook::Weight w) { p.crew.each = w; });
    heading(ui, "gear.truck", context.say(Msg::kGearTruck));
    raising_length(context, "gear.truck.length", context.say(Msg::kGearTruckLength), plan.truck.length,
                   [](RaisingPlan& p, Length l) { p.truck.length = l; });
    raising_weight(context, "gear.truck.carries", context.say(Msg::kGearTruckCarries), plan.truck.carries,
                   [](RaisingPlan& p, bentbook::Weight w) { p.truck.carries = w; });
    raising_length(context, "gear.stack.x", context.say(Msg::kGearStackX), plan.stack_x,
                   [](RaisingPlan& p, Length l) { p.stack_x = l; });
    raising_length(context, "gear.stack.y", context.say(Msg::kGearStackY), plan.stack_y,
                   [](RaisingPlan& p, Length l) { p.stack_y = l; });
  });
}

}  // namespace

Page raising_loads_page() { return {"raising.loads", Msg::kRaisingLoads, loads_screen}; }
Page raising_gear_page() { return {"raising.gear", Msg::kRaisingGear, gear_screen}; }

}  // namespace bentbook::screens
