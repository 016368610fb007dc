#include "screens/raising/form.h"

#include <algorithm>
#include <utility>

#include "raising/holding.h"
#include "raising/order.h"
#include "raising/plan_edits.h"
#include "ui/widgets_inside.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

template <class Answer>
const Answer* said(Context& context, const std::string& key, const Asked<Answer>& asked) {
  if (const Error* failure = asked.failure())
    caution(context.ui, key + ".failed", task_error_text(context, *failure));
  else if (!asked.ended())
    note(context.ui, key + ".running", context.say(Msg::kRaisingChecking));
  return asked.answer();
}

}  // namespace

const OrderCheck* order_check(Context& context) { return said(context, "raise_check", context.raising.check()); }

const StepExplained* explained_step(Context& context, int step) {
  return said(context, "raise_explain", context.raising.explain(step));
}

const RaisingMemory::Picked& step_pick(Context& context, const ShownFrame& shown, int step) {
  RaisingMemory::Picked& kept = context.raising_memory.picked_step;
  const Fingerprint of = fingerprint_of_step(context.raising.of(), step);
  if (kept.of == of) return kept;
  kept = {of, {}, {}, {}, {}, {}};
  const Frame& frame = *shown.frame();
  const RaisingPlan& plan = context.desk.book().raising;
  kept.coming = timbers_of(frame, plan.steps[static_cast<std::size_t>(step)].marks);
  const std::vector<PickBody> bodies = pick_bodies(frame, plan);
  for (const int t : kept.coming) kept.weights_lb.push_back(bodies[static_cast<std::size_t>(t)].weight_lb);
  kept.pick = pick_of_step(frame, plan, bodies, plan.steps[static_cast<std::size_t>(step)]);
  if (kept.coming.size() > 1) kept.ground = lay_on_ground(frame, kept.coming);
  if (kept.ground && kept.pick.by == LiftBy::kTipUp) kept.hand = raise_by_hand(frame, plan, bodies, kept.coming);
  return kept;
}

const RaisingMemory::Lists& raising_lists(Context& context, const ShownFrame& shown) {
  RaisingMemory::Lists& kept = context.raising_memory.lists;
  const Fingerprint of = context.raising.of();
  if (kept.of != of) {
    const RaisingPlan& plan = context.desk.book().raising;
    kept = {of, truck_loads(*shown.frame(), plan), lay_down(*shown.frame(), plan)};
  }
  return kept;
}

void raising_field(Context& context, std::string_view path, Msg name, std::string_view unit) {
  given_field(context, "raising." + std::string(path), context.say(name), unit);
}

bool has_days(const RaisingPlan& plan) {
  return std::any_of(plan.steps.begin(), plan.steps.end(),
                     [&](const RaisingStep& step) { return step.day != plan.steps.front().day; });
}

void fasteners_toggle(Context& context) {
  const bool on = context.desk.book().raising.fasten == FastenWhen::kWithStep;
  if (toggle(context.ui, "raising.fasteners", context.say(Msg::kRaisingFasteners), on,
             context.say(Msg::kRaisingFastenersNote)))
    edit_raising(context, [&](RaisingPlan& plan) { plan.fasten = on ? FastenWhen::kLater : FastenWhen::kWithStep; });
}

}  // namespace bentbook::screens
