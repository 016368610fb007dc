#include "screens/raising_form.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "screens/widgets_inside.h"

namespace bentbook::screens {
namespace {

constexpr std::string_view kCheckTask = "raise_check", kExplainTask = "raise_explain";

bool metric(const Context& context) {
  const LengthForm form = context.style().form;
  return form == LengthForm::kMm || form == LengthForm::kMetre;
}

void take_check(Context& context) {
  RaisingMemory& memory = context.raising_memory;
  PlatformEvent event;
  while (context.take_event(kCheckTask, event)) {
    if (event.kind != EventKind::kTaskDone && event.kind != EventKind::kTaskFailed) continue;
    memory.checking = false;
    memory.checked = std::move(memory.asked);
    memory.asked = {};
    memory.checked.check.reset();
    if (event.kind == EventKind::kTaskFailed) {
      memory.checked.failure = event.text;
    } else if (auto check = read_order_check(event.text)) {
      memory.checked.check = std::move(*check);
    }
    context.ui.memory.want_frame = true;
  }
}

void take_explained(Context& context) {
  RaisingMemory& memory = context.raising_memory;
  PlatformEvent event;
  while (context.take_event(kExplainTask, event)) {
    if (event.kind != EventKind::kTaskDone && event.kind != EventKind::kTaskFailed) continue;
    memory.explaining = false;
    memory.explained = std::move(memory.wanted);
    memory.wanted = {};
    memory.explained.what.reset();
    if (event.kind == EventKind::kTaskFailed) {
      memory.explained.failure = event.text;
    } else if (auto what = read_step_explained(event.text)) {
      memory.explained.what = std::move(*what);
    }
    context.ui.memory.want_frame = true;
  }
}

}  // namespace

const OrderCheck* order_check(Context& context, const ShownFrame& shown) {
  take_check(context);
  RaisingMemory& memory = context.raising_memory;
  const Book& book = context.desk.book();
  const bool known = memory.checked.of == shown.solved && memory.checked.plan == book.raising;
  if (!known && !memory.checking && !shown.typing) {
    memory.asked = {shown.solved, book.raising, {}, {}};
    memory.checking = true;
    context.platform.start_task(kCheckTask, raise_check_request(book));
  }
  if (known && !memory.checked.failure.empty()) caution(context.ui, "raising.failed", memory.checked.failure);
  if (!known) note(context.ui, "raising.checking", context.say(Msg::kRaisingChecking));
  return known && memory.checked.check ? &*memory.checked.check : nullptr;
}

const StepExplained* explained_step(Context& context, const ShownFrame& shown, int step) {
  take_explained(context);
  RaisingMemory& memory = context.raising_memory;
  const Book& book = context.desk.book();
  const bool known =
      memory.explained.of == shown.solved && memory.explained.step == step && memory.explained.plan == book.raising;
  if (!known && !memory.explaining && !shown.typing) {
    memory.wanted = {shown.solved, book.raising, step, {}, {}};
    memory.explaining = true;
    memory.mode = -1;
    context.platform.start_task(kExplainTask, raise_explain_request(book, step));
  }
  return known && memory.explained.what ? &*memory.explained.what : nullptr;
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
  const bool kg = metric(context);
  const std::int64_t per = kg ? bentbook::Weight::kPerKg : bentbook::Weight::kPerPound;
  const std::int64_t whole = (now.count + per / 2) / per;
  if (given(context.ui, key, name, std::to_string(whole) + (kg ? " kg" : " lb"), context.keypad.is_open(key)))
    context.keypad.open_count(key, name, whole, 0, 1'000'000);
  if (const auto told = context.keypad.take_count(key))
    edit_raising(context, [&](RaisingPlan& plan) {
      set(plan, kg ? bentbook::Weight::kilograms(*told) : bentbook::Weight::pounds(*told));
    });
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

void fasteners_toggle(Context& context) {
  constexpr JointKind kKinds[] = {JointKind::kHousedButt, JointKind::kMortiseTenon, JointKind::kBirdsMouth,
                                  JointKind::kRafterPeak, JointKind::kHalfLap,      JointKind::kScarf};
  const std::vector<HoldChange>& holds = context.desk.book().raising.holds;
  const bool on = std::all_of(std::begin(kKinds), std::end(kKinds), [&](JointKind kind) {
    return std::any_of(holds.begin(), holds.end(),
                       [&](const HoldChange& h) { return h.joint == kind && h.sideways && h.uplift && h.pulls; });
  });
  if (!toggle(context.ui, "raising.fasteners", context.say(Msg::kRaisingFasteners), on,
              context.say(Msg::kRaisingFastenersNote)))
    return;
  const std::string reason(context.say(Msg::kRaisingFastenersReason));
  edit_raising(context, [&](RaisingPlan& plan) {
    for (const JointKind kind : kKinds) {
      std::erase_if(plan.holds, [&](const HoldChange& h) { return h.joint == kind; });
      if (!on) plan.holds.push_back({kind, true, true, true, reason});
    }
  });
}

std::vector<std::string> marks_left(const Frame& frame, const RaisingPlan& plan) {
  std::vector<std::string> brought;
  for (const RaisingStep& step : plan.steps) brought.insert(brought.end(), step.marks.begin(), step.marks.end());
  std::sort(brought.begin(), brought.end());
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
