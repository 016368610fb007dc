#include "screens/raising/form.h"

#include <utility>

#include "raising/order.h"
#include "raising/plan_edits.h"
#include "ui/widgets_inside.h"

namespace bentbook::screens {
namespace {

RaisingMemory::Of of_step(const Context& context, const ShownFrame& shown, int step) {
  return {shown.solved, context.desk.book().raising, step};
}

/// Takes the task's answers, asks where what is there is of something else; nullptr: there is none.
template <class What>
const What* answered(Context& context, const ShownFrame& shown, RaisingMemory::Answered<What>& memory, int step,
                     std::string_view task, std::string (*request)(const Book&, int),
                     Result<What> (*read)(std::string_view), bool says = true) {
  PlatformEvent event;
  while (context.take_event(task, event)) {
    if (event.kind != EventKind::kTaskDone && event.kind != EventKind::kTaskFailed) continue;
    memory.running = false;
    memory.of = std::exchange(memory.asked, {});
    memory.what.reset();
    memory.failure.clear();
    if (event.kind == EventKind::kTaskFailed)
      memory.failure = event.text;
    else if (auto what = read(event.text))
      memory.what = std::move(*what);
    else
      memory.failure = context.say(Msg::kRaisingUnread);
    context.ui.memory.want_frame = true;
  }
  RaisingMemory::Of wanted = of_step(context, shown, step);
  const bool known = memory.of == wanted;
  if (!known && !memory.running && !shown.typing) {
    memory.asked = std::move(wanted);
    memory.running = true;
    context.platform.start_task(task, request(context.desk.book(), step));
  }
  if (says && known && !memory.failure.empty()) caution(context.ui, std::string(task) + ".failed", memory.failure);
  if (says && !known) note(context.ui, std::string(task) + ".running", context.say(Msg::kRaisingChecking));
  return known && memory.what ? &*memory.what : nullptr;
}

const OrderCheck* asked_check(Context& context, const ShownFrame& shown, bool says) {
  return answered<OrderCheck>(
      context, shown, context.raising_memory.check, -1, "raise_check",
      [](const Book& book, int) { return raise_check_request(book); }, read_order_check, says);
}

}  // namespace

const OrderCheck* order_check(Context& context, const ShownFrame& shown) { return asked_check(context, shown, true); }

const OrderCheck* quiet_order_check(Context& context, const ShownFrame& shown) {
  return asked_check(context, shown, false);
}

const StepExplained* explained_step(Context& context, const ShownFrame& shown, int step) {
  return answered<StepExplained>(context, shown, context.raising_memory.explained, step, "raise_explain",
                                 raise_explain_request, read_step_explained);
}

const RaisingMemory::Picked& step_pick(Context& context, const ShownFrame& shown, int step) {
  RaisingMemory::Picked& kept = context.raising_memory.picked_step;
  RaisingMemory::Of wanted = of_step(context, shown, step);
  if (kept.of == wanted) return kept;
  kept = {std::move(wanted), {}, {}, {}, {}, {}};
  const Frame& frame = *shown.frame();
  const RaisingPlan& plan = kept.of.plan;
  kept.coming = timbers_of(frame, plan.steps[static_cast<std::size_t>(step)].marks);
  for (const int t : kept.coming)
    kept.weights_lb.push_back(facts_of(frame.timbers[static_cast<std::size_t>(t)]).weight_lb);
  const std::vector<PickBody> bodies = pick_bodies(frame, plan);
  kept.pick = solve_pick(frame, plan, bodies, kept.coming);
  if (kept.coming.size() > 1) kept.ground = lay_on_ground(frame, kept.coming);
  if (kept.ground && !plan.crane.present) kept.hand = raise_by_hand(frame, plan, bodies, kept.coming);
  return kept;
}

const RaisingMemory::Lists& raising_lists(Context& context, const ShownFrame& shown) {
  RaisingMemory::Lists& kept = context.raising_memory.lists;
  RaisingMemory::Of wanted = of_step(context, shown, -1);
  if (!(kept.of == wanted)) {
    const RaisingPlan& plan = wanted.plan;
    kept = {wanted, truck_loads(*shown.frame(), plan), lay_down(*shown.frame(), plan)};
  }
  return kept;
}

void raising_field(Context& context, std::string_view path, Msg name, std::string_view unit) {
  given_field(context, "raising." + std::string(path), context.say(name), unit);
}

void fasteners_toggle(Context& context) {
  const bool on = fasteners_count(context.desk.book().raising);
  if (!toggle(context.ui, "raising.fasteners", context.say(Msg::kRaisingFasteners), on,
              context.say(Msg::kRaisingFastenersNote)))
    return;
  edit_raising(context, [&](RaisingPlan& plan) {
    if (on)
      leave_fasteners_out(plan);
    else
      count_fasteners(plan, context.say(Msg::kRaisingFastenersReason));
  });
}

}  // namespace bentbook::screens
