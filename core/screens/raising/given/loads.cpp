#include "screens/raising/given/loads.h"

#include <algorithm>
#include <string>

#include "frame/joints/joint_table.h"
#include "raising/limits.h"
#include "screens/raising/form.h"
#include "words/frame_words.h"
#include "words/step_words.h"

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
    if (plan.fasten == FastenWhen::kWithStep && !plan.later.empty()) {
      note(ui, "loads.later", say(Msg::kRaiseLater, ui.language, joints_text(plan.later, ui.language)));
      if (button(ui, "loads.later_none", context.say(Msg::kLoadsLaterNone)))
        edit_raising(context, [&](RaisingPlan& next) { next.later.clear(); });
    }
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

}  // namespace

Page raising_loads_page() { return {"raising.loads", Msg::kRaisingLoads, loads_screen}; }

}  // namespace bentbook::screens
