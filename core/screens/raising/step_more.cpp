#include "screens/raising/step_more.h"

#include <algorithm>
#include <string>

#include "frame/keys.h"
#include "raising/fasteners.h"
#include "raising/order.h"
#include "raising/plan_edits.h"
#include "screens/raising/given/temporaries.h"
#include "screens/raising/step.h"
#include "screens/raising/step_pick.h"
#include "screens/raising/step_shown.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook::screens {
namespace {

void way_part(ShownStep& s) {
  if (s.check == nullptr || !s.check->entry.free) return;
  Ui& ui = s.context.ui;
  heading(ui, "step.way", s.context.say(Msg::kStepWay));
  body(ui, "step.path",
       way_text(s.check->entry, s.step, step_pick(s.context, s.frame, s.index).pick.by, *s.frame.frame(), s.voice));
  if (s.check->day_goes_back) note(ui, "step.day_back", s.context.say(Msg::kStepDayBack));
}

void temporaries_part(ShownStep& s) {
  Context& context = s.context;
  Ui& ui = context.ui;
  heading(ui, "step.temporaries", context.say(Msg::kRaisingTemporaries));
  const auto index = static_cast<std::size_t>(s.index);
  const std::vector<std::string> up = temporaries_up(s.plan, index);
  if (s.plan.temporaries.empty()) note(ui, "step.no_temporaries", context.say(Msg::kStepNoTemporaries));
  for (const Temporary& t : s.plan.temporaries) {
    const bool here = std::find(s.step.put_up.begin(), s.step.put_up.end(), t.name) != s.step.put_up.end();
    const bool is_up = std::find(up.begin(), up.end(), t.name) != up.end();
    const bool out = std::find(s.step.take_out.begin(), s.step.take_out.end(), t.name) != s.step.take_out.end();
    if ((here || !is_up) && toggle(ui, "step.up." + t.name, say(Msg::kStepPutUp, ui.language, t.name), here,
                                   temporary_text(t, *s.frame.frame(), s.voice)))
      edit_raising(context, [&](RaisingPlan& plan) { toggle_name(plan.steps[index].put_up, t.name); });
    if (is_up && toggle(ui, "step.out." + t.name, say(Msg::kStepTakeOut, ui.language, t.name), out))
      edit_raising(context, [&](RaisingPlan& plan) { toggle_name(plan.steps[index].take_out, t.name); });
  }
  if (list_row(ui, "step.new_temporary", context.say(Msg::kRaisingTemporaries), context.say(Msg::kStepTemporariesNote)))
    context.pages.push(raising_temporaries_page());
}

std::vector<JointName> names_of(const Frame& frame, const std::vector<int>& joints) {
  std::vector<JointName> names;
  names.reserve(joints.size());
  for (const int j : joints) names.push_back(joint_name_of(frame, j));
  return names;
}

/// Joints that the step closes, and which of them the lead leaves for after the raising.
void fasten_part(ShownStep& s) {
  if (s.plan.fasten != FastenWhen::kWithStep) return;
  Context& context = s.context;
  Ui& ui = context.ui;
  const Frame& frame = *s.frame.frame();
  const std::vector<int> closed = joints_closed(frame, s.plan, static_cast<std::size_t>(s.index));
  if (closed.empty()) return;
  heading(ui, "step.fasten", context.say(Msg::kFastenTitle));
  body(ui, "step.fasten_note", context.say(Msg::kStepFastenNote));
  std::vector<JointName> shown;
  bool any_now = false;
  for (const int j : closed) {
    const JointName joint = joint_name_of(frame, j);
    if (std::find(shown.begin(), shown.end(), joint) != shown.end()) continue;  // two joints of two timbers go together
    shown.push_back(joint);
    std::vector<int> together = closed;
    std::erase_if(together, [&](int other) { return joint_name_of(frame, other) != joint; });
    const bool now = !fastened_later(frame, s.plan, j);
    any_now = any_now || now;
    if (toggle(ui, "step.fasten." + joint.one + "." + joint.other, joints_text({&joint, 1}, ui.language), now,
               driven_text(fasteners_of(frame, together), s.voice)))
      edit_raising(context, [&](RaisingPlan& plan) { toggle_later(plan, joint); });
  }
  const auto leave = [&](const std::vector<JointName>& joints) {
    edit_raising(context, [&](RaisingPlan& plan) { leave_for_later(plan, joints); });
  };
  if (shown.size() > 1 && any_now && button(ui, "step.fasten_none", context.say(Msg::kStepFastenNone))) leave(shown);
  if (has_days(s.plan) &&
      button(ui, "step.fasten_none_today", say(Msg::kStepFastenNoneToday, ui.language, std::to_string(s.step.day))))
    leave(names_of(frame, joints_closed_on(frame, s.plan, s.step.day)));
}

void checks_part(ShownStep& s) {
  Ui& ui = s.context.ui;
  heading(ui, "step.checks", s.context.say(Msg::kStepChecks));
  body(ui, "step.checks.pins", s.context.say(Msg::kStepCheckPins));
  body(ui, "step.checks.plumb", s.context.say(Msg::kStepCheckPlumb));
  caution(ui, "step.caution",
          say(Msg::kStepCaution, ui.language, say_kept(s.plan.loads.wind_mph, KeptIn::kMph, s.voice)));
}

/// By what it goes up, where the lead wants it otherwise than the yard has it.
void by_part(ShownStep& s) {
  if (s.step.marks.empty()) return;
  const auto name = [&](LiftBy by) { return lift_by_text(by, s.context.ui.language); };
  given_choice(s.context, "raising.steps." + std::to_string(s.index) + ".by", s.context.say(Msg::kStepBy),
               {name(LiftBy::kAsTheYard), name(LiftBy::kHands), name(LiftBy::kTipUp), name(LiftBy::kTelehandler),
                name(LiftBy::kCrane), name(LiftBy::kCraneTwo), name(LiftBy::kGinPole), name(LiftBy::kPoles)});
}

/// By what each piece that is set first is held until it is caught.
void holders_part(ShownStep& s) {
  const auto name = [&](HeldBy by) { return key_text("held_by_", keys::word(kHeldWords, by), s.context.ui.language); };
  const std::string path = "raising.steps." + std::to_string(s.index) + ".set_first.";
  for (std::size_t i = 0; i < s.step.set_first.size(); ++i)
    given_choice(s.context, path + std::to_string(i) + ".held_by",
                 say(Msg::kStepHeldBy, s.context.ui.language, s.step.set_first[i].mark),
                 {name(HeldBy::kHands), name(HeldBy::kCleat), name(HeldBy::kRope), name(HeldBy::kPeg)});
}

/// Moving it elsewhere shows at once what breaks: the check follows.
void place_part(ShownStep& s) {
  Context& context = s.context;
  Ui& ui = context.ui;
  const int last = static_cast<int>(s.plan.steps.size());
  heading(ui, "step.place", context.say(Msg::kStepPlace));
  const std::string key = "step.to";
  if (given(ui, key, context.say(Msg::kStepNumber), std::to_string(s.index + 1), context.keypad.is_open(key)))
    context.keypad.open_count(key, say(Msg::kStepMoveTo, ui.language, std::to_string(s.index + 1)), s.index + 1, 1,
                              last);
  const auto move_to = [&](int to) {
    edit_raising(context, [&](RaisingPlan& plan) { move_step(plan.steps, s.index, to); });
    context.pages.pop();
    context.pages.turn_to(raising_step_page(to));
  };
  if (const auto to = context.keypad.take_count(key); to && *to - 1 != s.index)
    return move_to(static_cast<int>(*to) - 1);
  side_by_side(
      ui, kGap, 120,
      [&](Ui& half) {
        if (button(half, "step.earlier", context.say(Msg::kRulesUp), Weight::kQuiet, s.index > 0)) move_to(s.index - 1);
      },
      [&](Ui& half) {
        if (button(half, "step.later", context.say(Msg::kRulesDown), Weight::kQuiet, s.index + 1 < last))
          move_to(s.index + 1);
      });
  raising_field(context, "steps." + std::to_string(s.index) + ".day", Msg::kStepDay);
  if (goes_back(s.plan, s.index) &&
      button(ui, "step.day_on", say(Msg::kStepDayOn, ui.language, std::to_string(s.step.day)), Weight::kPrimary))
    edit_raising(context, [&](RaisingPlan& plan) { day_from(plan, s.index); });
  if (button(ui, "step.delete", context.say(Msg::kStepDelete), Weight::kDestructive)) {
    edit_raising(context, [&](RaisingPlan& plan) { plan.steps.erase(plan.steps.begin() + s.index); });
    context.pages.pop();
    context.pages.pop();
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  }
}

void more_screen(Context& context) {
  step_page(context, "raising.step_more.page", [&](ShownStep& s) {
    heading(context.ui, "step.name", step_name(s.step, *s.frame.frame(), context.ui.language));
    way_part(s);
    const RaisingMemory::Picked& picked = step_pick(context, s.frame, s.index);
    by_part(s);
    holders_part(s);
    step_lifting(context, s.frame, picked);
    step_timbers(context, s.frame, picked);
    standing_part(s);
    temporaries_part(s);
    fasten_part(s);
    checks_part(s);
    place_part(s);
  });
}

}  // namespace

Page raising_step_more_page(int step) {
  return {"raising.step_more", Msg::kStepMore, more_screen, std::to_string(step)};
}

}  // namespace bentbook::screens
