#include "screens/raising/form.h"

#include <algorithm>
#include <utility>

#include "frame/joints/joint_table.h"
#include "numeric/sorting.h"
#include "raising/order.h"
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

void raising_length(Context& context, const std::string& key, std::string_view name, Length now,
                    const std::function<void(RaisingPlan&, Length)>& set) {
  if (given(context.ui, key, name, say_length(now, voice_of(context)), context.keypad.is_open(key)))
    context.keypad.open_length(key, name, now);
  if (const auto told = context.keypad.take_length(key))
    edit_raising(context, [&](RaisingPlan& plan) { set(plan, *told); });
}

void raising_weight(Context& context, const std::string& key, std::string_view name, bentbook::Weight now,
                    const std::function<void(RaisingPlan&, bentbook::Weight)>& set) {
  const WeightUnit unit = weight_unit(context.style().form);
  const std::int64_t whole = whole_units(now, unit);
  if (given(context.ui, key, name, print_weight(now, context.style().form), context.keypad.is_open(key)))
    context.keypad.open_count(key, name, whole, 0, 1'000'000);
  const auto told = context.keypad.take_count(key);
  if (told && *told != whole)
    edit_raising(context, [&](RaisingPlan& plan) { set(plan, bentbook::Weight{*told * per_unit(unit)}); });
}

void raising_count(Context& context, const std::string& key, std::string_view name, std::string_view unit, int now,
                   int least, int most, const std::function<void(RaisingPlan&, int)>& set) {
  std::string value = std::to_string(now);
  if (!unit.empty()) value += ' ' + std::string(unit);
  if (given(context.ui, key, name, value, context.keypad.is_open(key)))
    context.keypad.open_count(key, name, now, least, most);
  if (const auto told = context.keypad.take_count(key))
    edit_raising(context, [&](RaisingPlan& plan) { set(plan, static_cast<int>(*told)); });
}

void raising_toggle(Context& context, const std::string& key, std::string_view name, bool now,
                    const std::function<void(RaisingPlan&, bool)>& set) {
  if (toggle(context.ui, key, name, now)) edit_raising(context, [&](RaisingPlan& plan) { set(plan, !now); });
}

namespace {

/// Whose fasteners count only because the lead says so.
std::vector<JointKind> loosely_fastened() {
  std::vector<JointKind> kinds;
  for (int k = 0; k < kJointKinds; ++k)
    if (row_of(static_cast<JointKind>(k)).fasteners == Fasteners::kLoose) kinds.push_back(static_cast<JointKind>(k));
  return kinds;
}

}  // namespace

void fasteners_toggle(Context& context) {
  const std::vector<JointKind> kinds = loosely_fastened();
  const std::vector<HoldChange>& holds = context.desk.book().raising.holds;
  const bool on = std::all_of(kinds.begin(), kinds.end(), [&](JointKind kind) {
    return std::any_of(holds.begin(), holds.end(),
                       [&](const HoldChange& h) { return h.joint == kind && h.sideways && h.uplift && h.pulls; });
  });
  if (!toggle(context.ui, "raising.fasteners", context.say(Msg::kRaisingFasteners), on,
              context.say(Msg::kRaisingFastenersNote)))
    return;
  const std::string reason(context.say(Msg::kRaisingFastenersReason));
  edit_raising(context, [&](RaisingPlan& plan) {
    for (const JointKind kind : kinds) {
      std::erase_if(plan.holds, [&](const HoldChange& h) { return h.joint == kind; });
      if (!on) plan.holds.push_back({kind, true, true, true, reason});
    }
  });
}

std::vector<std::string> marks_left(const Frame& frame, const RaisingPlan& plan) {
  std::vector<std::string> brought;
  for (const RaisingStep& step : plan.steps) brought.insert(brought.end(), step.marks.begin(), step.marks.end());
  sort_up(brought);
  std::vector<std::string> left;
  for (const Timber& timber : frame.timbers)
    if (timber.placed && !std::binary_search(brought.begin(), brought.end(), timber.mark)) left.push_back(timber.mark);
  return left;
}

std::string free_temporary_name(const RaisingPlan& plan) {
  for (int n = 1;; ++n) {
    std::string name = "T" + std::to_string(n);
    const bool taken = std::any_of(plan.temporaries.begin(), plan.temporaries.end(),
                                   [&](const Temporary& t) { return t.name == name; });
    if (!taken) return name;
  }
}

void take_braces(RaisingPlan& plan, int step, const std::vector<Temporary>& braces) {
  for (Temporary brace : braces) {
    brace.name = free_temporary_name(plan);
    plan.steps[static_cast<std::size_t>(step)].put_up.push_back(brace.name);
    plan.temporaries.push_back(std::move(brace));
  }
}

}  // namespace bentbook::screens
