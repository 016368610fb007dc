#include "screens/raising/step.h"

#include <algorithm>
#include <string>

#include "frame/facts.h"
#include "numeric/sorting.h"
#include "raising/order.h"
#include "screens/raising/braces.h"
#include "screens/raising/picture.h"
#include "screens/raising/step_pick.h"
#include "screens/shop/form.h"

namespace bentbook::screens {
namespace {

struct Shown {
  Context& context;
  const ShownFrame& frame;
  const RaisingPlan& plan;
  int index;
  const RaisingStep& step;
  const StepCheck* check;
  const StepExplained* what;
  Voice voice;
};

std::vector<Temporary> up_now(const Shown& s) {
  const std::vector<std::string> names = temporaries_up(s.plan, static_cast<std::size_t>(s.index));
  std::vector<Temporary> out;
  for (const Temporary& t : s.plan.temporaries)
    if (std::find(names.begin(), names.end(), t.name) != names.end()) out.push_back(t);
  return out;
}

/// What is read at arm's length: which timbers, what they weigh, who or what carries them.
void what_now(Shown& s) {
  Ui& ui = s.context.ui;
  note(ui, "step.title",
       say(Msg::kStepTitle, ui.language,
           {{"n", std::to_string(s.index + 1)},
            {"all", std::to_string(s.plan.steps.size())},
            {"day", std::to_string(s.step.day)}}));
  if (s.step.marks.empty()) return heading(ui, "step.marks", s.context.say(Msg::kRaisingTemporaries));
  const RaisingMemory::Picked& picked = step_pick(s.context, s.frame, s.index);
  const Pick& pick = picked.pick;
  if (!s.step.set_first.empty())
    answer(ui, "step.set_first", s.context.say(Msg::kRaiseSetFirst),
           held_text(s.step, *s.frame.frame(), s.plan, s.voice));
  answer(ui, "step.marks", s.context.say(s.step.set_first.empty() ? Msg::kStepComes : Msg::kRaiseCloses),
         marks_text(s.step.marks));
  const int people = picked.hand ? picked.hand->people : pick.people;
  side_by_side(
      ui, 16, 120,
      [&](Ui& half) {
        answer(half, "step.weight", s.context.say(Msg::kStepPickWeight), say_sum(picked.weights_lb, s.voice));
      },
      [&](Ui& half) {
        if (pick.by_crane)
          answer(half, "step.net", s.context.say(Msg::kStepNet), say_weight(pick.crane.margin_lb, s.voice));
        else
          answer(half, "step.people", s.context.say(Msg::kStepPeople), std::to_string(people));
      });
}

void picture_part(Shown& s) {
  RaisingMemory& memory = s.context.raising_memory;
  RaisingPicture picture;
  picture.standing = standing_before(*s.frame.frame(), s.plan, static_cast<std::size_t>(s.index));
  for (const SetPiece& piece : s.step.set_first)
    if (const int t = timber_by_mark(*s.frame.frame(), piece.mark); t >= 0) picture.standing.push_back(t);
  sort_up(picture.standing);
  picture.coming = step_pick(s.context, s.frame, s.index).coming;
  picture.temporaries = up_now(s);
  if (s.check != nullptr) picture.entry = &s.check->entry;
  const auto modes = s.what == nullptr ? std::size_t{0} : s.what->standing.modes.size();
  if (memory.mode >= 0 && static_cast<std::size_t>(memory.mode) < modes)
    picture.mode = &s.what->standing.modes[static_cast<std::size_t>(memory.mode)];
  raising_picture(s.context, s.frame, "step", picture);
  if (s.check == nullptr || !s.check->entry.free || s.step.marks.empty()) return;
  if (button(s.context.ui, "step.play", s.context.say(Msg::kStepPlay))) {
    memory.mode = -1;
    memory.moving_since_ms = s.context.ui.now_ms;
  }
}

void faults_part(Shown& s, const OrderCheck& check) {
  Ui& ui = s.context.ui;
  int n = 0;
  for (const OrderFault& fault : check.faults)
    if (fault.step == s.index) caution(ui, "step.fault." + std::to_string(n++), order_fault_text(fault, s.voice));
  if (s.check == nullptr) return;
  int r = 0;
  for (const Remedy& remedy : s.check->entry.remedies)
    body(ui, "step.remedy." + std::to_string(r++), remedy_text(remedy, *s.frame.frame(), ui.language));
}

/// How it stands when the sling comes off.
void standing_part(Shown& s) {
  Ui& ui = s.context.ui;
  const Frame& frame = *s.frame.frame();
  heading(ui, "step.standing", s.context.say(Msg::kStepStanding));
  if (s.what == nullptr) return;  // said above: it is being looked at, or why it was not
  const StandingCheck& standing = s.what->standing;
  if (standing.stands()) {
    fact(ui, "step.verdict", s.context.say(Msg::kRaisingVerdict), s.context.say(Msg::kRaisingNoFault), true);
    fact(ui, "step.margin", s.context.say(Msg::kStepMargin), print_fixed(standing.factor, 2), true);
    note(ui, "step.worst", load_text(standing.worst, frame, ui.language));
  } else if (standing.mechanisms == 0) {
    caution(ui, "step.falls", say(Msg::kStepFalls, ui.language, load_text(standing.worst, frame, ui.language)));
  }
  RaisingMemory& memory = s.context.raising_memory;
  for (std::size_t i = 0; i < standing.modes.size() && i < 12; ++i) {
    const std::string key = "step.mode." + std::to_string(i);
    caution(ui, key, mode_text(standing.modes[i], frame, ui.language));
    if (button(ui, key + ".show", s.context.say(Msg::kStepShowMode))) {
      memory.mode = static_cast<int>(i);
      memory.moving_since_ms = ui.now_ms;
    }
  }
  int n = 0;
  for (const std::string& warning : standing_warning_texts(standing.warnings, frame, s.plan.temporaries, ui.language))
    body(ui, "step.warning." + std::to_string(n++), warning);
  if (s.what->braces.empty()) return;
  heading(ui, "step.braces", s.context.say(Msg::kStepBraces), 3);
  n = 0;
  for (const Temporary& brace : s.what->braces)
    body(ui, "step.brace." + std::to_string(n++), temporary_text(brace, s.voice));
  if (button(ui, "step.take_braces", s.context.say(Msg::kStepTakeBraces), Weight::kPrimary)) {
    edit_raising(s.context, [&](RaisingPlan& plan) { take_braces(plan, s.index, s.what->braces); });
    s.context.toast(std::string(s.context.say(Msg::kStepBracesTaken)), true);
  }
}

void way_part(Shown& s) {
  if (s.check == nullptr || !s.check->entry.free) return;
  Ui& ui = s.context.ui;
  heading(ui, "step.way", s.context.say(Msg::kStepWay));
  body(ui, "step.path", path_text(s.check->entry, *s.frame.frame(), s.voice));
  int n = 0;
  for (const StepWarning& warning : s.check->warnings)
    note(ui, "step.way." + std::to_string(n++), step_warning_text(warning, s.voice));
}

void temporaries_part(Shown& s) {
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
    if ((here || !is_up) &&
        toggle(ui, "step.up." + t.name, say(Msg::kStepPutUp, ui.language, t.name), here, temporary_text(t, s.voice)))
      edit_raising(context, [&](RaisingPlan& plan) { toggle_name(plan.steps[index].put_up, t.name); });
    if (is_up && toggle(ui, "step.out." + t.name, say(Msg::kStepTakeOut, ui.language, t.name), out))
      edit_raising(context, [&](RaisingPlan& plan) { toggle_name(plan.steps[index].take_out, t.name); });
  }
  if (list_row(ui, "step.new_temporary", context.say(Msg::kRaisingTemporaries), context.say(Msg::kStepTemporariesNote)))
    context.pages.push(raising_temporaries_page());
}

void checks_part(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "step.checks", s.context.say(Msg::kStepChecks));
  body(ui, "step.checks.pins", s.context.say(Msg::kStepCheckPins));
  body(ui, "step.checks.plumb", s.context.say(Msg::kStepCheckPlumb));
  caution(ui, "step.caution",
          say(Msg::kStepCaution, ui.language, say_kept(s.plan.loads.wind_mph, KeptIn::kMph, s.voice)));
}

void done_part(Shown& s) {
  Context& context = s.context;
  Ui& ui = context.ui;
  const auto index = static_cast<std::size_t>(s.index);
  if (s.step.done) {
    body(ui, "step.is_done", context.say(Msg::kRaisingDone));
    if (hold_row(context, "step.undo", context.say(Msg::kStepHoldUndo)))
      edit_raising(context, [&](RaisingPlan& plan) { plan.steps[index].done = false; });
  } else if (hold_row(context, "step.done", context.say(Msg::kStepHoldDone))) {
    edit_raising(context, [&](RaisingPlan& plan) { plan.steps[index].done = true; });
    context.toast(say(Msg::kStepTicked, ui.language, std::to_string(s.index + 1)), true);
  }
  if (index + 1 < s.plan.steps.size() && button(ui, "step.next",
                                                say(Msg::kRaisingNext, ui.language,
                                                    {{"n", std::to_string(index + 2)},
                                                     {"all", std::to_string(s.plan.steps.size())},
                                                     {"marks", marks_text(s.plan.steps[index + 1].marks)}}))) {
    context.pages.pop();
    context.pages.push(raising_step_page(s.index + 1));
  }
}

/// Moving it elsewhere shows at once what breaks: the check follows.
void place_part(Shown& s) {
  Context& context = s.context;
  Ui& ui = context.ui;
  const int last = static_cast<int>(s.plan.steps.size());
  heading(ui, "step.place", context.say(Msg::kStepPlace));
  const std::string key = "step.to";
  if (given(ui, key, context.say(Msg::kStepNumber), std::to_string(s.index + 1), context.keypad.is_open(key)))
    context.keypad.open_count(key, context.say(Msg::kStepNumber), s.index + 1, 1, last);
  const auto move_to = [&](int to) {
    edit_raising(context, [&](RaisingPlan& plan) { move_step(plan.steps, s.index, to); });
    context.pages.pop();
    context.pages.push(raising_step_page(to));
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
  if (button(ui, "step.delete", context.say(Msg::kStepDelete), Weight::kDestructive)) {
    edit_raising(context, [&](RaisingPlan& plan) { plan.steps.erase(plan.steps.begin() + s.index); });
    context.pages.pop();
    context.toast(std::string(context.say(Msg::kStepDeleted)), true);
  }
}

void step_screen(Context& context) {
  raising_page(context, "raising.step.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const RaisingPlan& plan = context.desk.book().raising;
    const int index = std::stoi(context.subject);
    if (index < 0 || static_cast<std::size_t>(index) >= plan.steps.size())
      return body(ui, "step.gone", context.say(Msg::kStepGone));
    const OrderCheck* order = order_check(context);
    const StepCheck* check = order != nullptr && static_cast<std::size_t>(index) < order->steps.size()
                                 ? &order->steps[static_cast<std::size_t>(index)]
                                 : nullptr;
    Shown s{context,
            shown,
            plan,
            index,
            plan.steps[static_cast<std::size_t>(index)],
            check,
            order == nullptr ? nullptr : explained_step(context, index),
            voice_of(context)};
    what_now(s);
    if (order != nullptr) faults_part(s, *order);
    picture_part(s);
    way_part(s);
    const RaisingMemory::Picked& picked = step_pick(context, shown, index);
    step_lifting(context, shown, picked);
    step_timbers(context, shown, picked);
    standing_part(s);
    temporaries_part(s);
    checks_part(s);
    done_part(s);
    place_part(s);
  });
}

}  // namespace

Page raising_step_page(int step) { return {"raising.step", Msg::kShopStep, step_screen, std::to_string(step)}; }

}  // namespace bentbook::screens
