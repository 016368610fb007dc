#include "screens/raising/order.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <string>

#include "screens/form/foot.h"
#include "screens/raising/form.h"
#include "screens/raising/step.h"
#include "screens/raising/tap.h"
#include "ui/widgets_inside.h"
#include "words/step_words.h"

namespace bentbook::screens {
namespace {

using Drag = RaisingMemory::Drag;
using Row = RaisingMemory::Row;

constexpr double kMakeRoomMs = 50;  ///< after so long a row has gone about two thirds of its way

constexpr float kBeyond = 56;  ///< px that the list scrolls on, so that its first and last place lie free

std::string grip_key(std::size_t step) { return "order.grip." + std::to_string(step); }

/// "3. Bent 2 up, 4 girts caught".
std::string step_title(const RaisingStep& step, const Frame& frame, std::size_t place, Language language) {
  return std::to_string(place + 1) + ". " + step_name(step, frame, language);
}

/// The first fault of a step; "" if none.
std::string step_fault(const Context& context, const OrderCheck* check, std::size_t index) {
  if (check == nullptr || index >= check->steps.size()) return {};
  for (const OrderFault& fault : check->faults)
    if (fault.step == static_cast<int>(index)) return order_fault_text(fault, voice_of(context));
  return {};
}

/// A row speaks up on faults alone; else it says what goes up and comes out again.
std::string step_note(const Context& context, const RaisingStep& step, const std::string& fault) {
  std::string out;
  const auto add = [&](std::string_view words) { out += (out.empty() ? "" : " · ") + std::string(words); };
  if (step.done) add(context.say(Msg::kRaisingDone));
  if (!fault.empty()) {
    add(fault);
    return out;
  }
  if (!step.put_up.empty()) add(std::string(context.say(Msg::kRaisePutUp)) + " " + marks_text(step.put_up));
  if (!step.take_out.empty()) add(std::string(context.say(Msg::kRaiseTakeOut)) + " " + marks_text(step.take_out));
  return out;
}

// ── A step under the finger ───────────────────────────────────────────────────────────────────────────────────────

/// The first place that the lifted step may take: what stands stays before, so not above one that is done.
int first_place(const Drag& drag) {
  int first = drag.step;
  while (first > 0 && !drag.steps[static_cast<std::size_t>(first) - 1].done) --first;
  return first;
}

/// How far its row goes up and down, from the list's top.
struct Way {
  float least = 0, most = 0;
};

Way way_of(const Drag& drag) {
  const Row& last = drag.rows.back();
  const float least = drag.rows[static_cast<std::size_t>(first_place(drag))].top;
  const float most = last.top + last.height - drag.rows[static_cast<std::size_t>(drag.step)].height;
  return {least, std::max(least, most)};
}

/// Top of the lifted row: under the finger where it may go.
float lifted_top(const Drag& drag, float finger) {
  const Way way = way_of(drag);
  return std::clamp(finger - drag.grab, way.least, way.most);
}

/// A row gives way once the lifted one covers half of it. How they lay when it was lifted decides, so that the rows
/// that make room do not move the place again.
int place_of(const Drag& drag, float top) {
  const auto half = [&](int i) {
    const Row& row = drag.rows[static_cast<std::size_t>(i)];
    return row.top + row.height / 2;
  };
  const float foot = top + drag.rows[static_cast<std::size_t>(drag.step)].height;
  int to = drag.step;
  while (to + 1 < static_cast<int>(drag.rows.size()) && foot > half(to + 1)) ++to;
  if (to > drag.step) return to;
  for (const int first = first_place(drag); to > first && top < half(to - 1);) --to;
  return to;
}

void lift(Context& context, int step, const Hold& hold, float list_top) {
  RaisingMemory& memory = context.raising_memory;
  Drag& drag = memory.drag;
  drag = {};
  drag.step = drag.to = step;
  drag.steps = context.desk.book().raising.steps;
  drag.rows = memory.order_rows;
  for (const Row& row : drag.rows) drag.shown.push_back(row.top);
  drag.from_y = hold.y;
  drag.grab = hold.y - list_top - drag.rows[static_cast<std::size_t>(step)].top;
  drag.last_ms = context.ui.now_ms;
  context.ui.memory.want_frame = true;
}

/// Takes the lifted row after the finger. True: it was let go of.
bool follow(Context& context, const Hold& hold, float list_top) {
  Drag& drag = context.raising_memory.drag;
  drag.moved = drag.moved || std::abs(hold.y - drag.from_y) > Gesture::kSlop;
  const float finger = hold.y - list_top;
  const Way way = way_of(drag);
  drag.to = place_of(drag, lifted_top(drag, finger));
  if (hold.is == Hold::Is::kLetGo) return true;
  // Where it was taken up near an edge, the list rests until the finger goes on that way.
  scroll_near_edge(context.ui, hold.y, context.ui.now_ms - drag.last_ms,
                   hold.y < drag.from_y - 4 && finger - drag.grab > way.least - kBeyond,
                   hold.y > drag.from_y + 4 && finger - drag.grab < way.most + kBeyond);
  return false;
}

/// Where a row that makes room is drawn on its way to `top`.
float make_room(Context& context, std::size_t step, float top) {
  Drag& drag = context.raising_memory.drag;
  float& shown = drag.shown[step];
  const double elapsed = std::clamp(context.ui.now_ms - drag.last_ms, 0.0, 33.0);
  shown += (top - shown) * static_cast<float>(std::min(1.0, elapsed / kMakeRoomMs));
  if (context.viewport.reduced_motion || std::abs(top - shown) < 0.5F) shown = top;
  if (shown != top) context.ui.memory.want_frame = true;
  return shown;
}

/// The rows stand as nobody has checked them: faults already shown stay, "no fault" never does.
bool elsewhere(const Drag& drag) { return drag.to != drag.step; }

// ── The list ──────────────────────────────────────────────────────────────────────────────────────────────────────

struct List {
  Context& context;
  const RaisingPlan& plan;
  const Frame& frame;
  const OrderCheck* check;
  float top = 0;  ///< of the first row, on the screen
  Hold hold;
  int gripped = -1;  ///< the step whose grip was tapped
};

void step_row(List& list, std::size_t step, std::size_t place) {
  Context& context = list.context;
  RaisingMemory& memory = context.raising_memory;
  Ui& ui = context.ui;
  const RaisingStep& of = list.plan.steps[step];
  const bool dragging = memory.drag.step >= 0, lifted = memory.drag.step == static_cast<int>(step);
  const std::string title = step_title(of, list.frame, place, ui.language),
                    fault = step_fault(context, list.check, step);
  const std::string note = step_note(context, of, fault);
  const std::string grip = of.done ? std::string{}
                                   : say(Msg::kRaisingGrip, ui.language,
                                         {{"n", std::to_string(place + 1)}, {"marks", marks_text(of.marks)}});
  MovableRow row{title, note, grip, 0, !fault.empty(), lifted};
  // Until it is checked again a row keeps its height: the list does not jump under the finger.
  const bool known = memory.order_rows.size() == list.plan.steps.size();
  if ((list.check == nullptr || dragging) && known) row.at_least = memory.order_rows[step].height;
  const float flow = ui.column.y;
  if (lifted)
    ui.column.y = list.top + lifted_top(memory.drag, list.hold.y - list.top);
  else if (dragging)
    ui.column.y = list.top + memory.drag.shown[step];
  if (lifted) pen(ui).ChannelsSetCurrent(1);
  const MovableSaid said = movable_row(ui, "order.step." + std::to_string(step), grip_key(step), row);
  if (lifted) {
    pen(ui).ChannelsSetCurrent(0);
    dashed_box(ui, shrunk({said.box.x, flow, said.box.w, said.box.h}, 3));
  }
  ui.column.y = flow + said.box.h;
  if (!dragging) memory.order_rows[step] = {flow - list.top, said.box.h};
  if (said.pressed) context.pages.push(raising_step_page(static_cast<int>(step)));
  if (said.gripped) list.gripped = static_cast<int>(step);
}

/// Draws the rows as they would stand if the lifted one were let go of now.
void rows_of(List& list) {
  Context& context = list.context;
  RaisingMemory& memory = context.raising_memory;
  Ui& ui = context.ui;
  const bool dragging = memory.drag.step >= 0;
  std::vector<std::size_t> steps(list.plan.steps.size());
  std::iota(steps.begin(), steps.end(), std::size_t{0});
  if (dragging) move_step(steps, memory.drag.step, memory.drag.to);
  if (!dragging) memory.order_rows.resize(steps.size());
  if (dragging) pen(ui).ChannelsSplit(2);
  int day = has_days(list.plan) ? 0 : list.plan.steps.front().day;
  for (std::size_t place = 0; place < steps.size(); ++place) {
    const std::size_t step = steps[place];
    const int its_day = list.plan.steps[step].day;
    if (its_day != day)
      heading(ui, "order.day." + std::to_string(step),
              say(Msg::kRaisingDay, ui.language, std::to_string(static_cast<std::size_t>(its_day))));
    day = its_day;
    if (dragging && memory.drag.step != static_cast<int>(step)) (void)make_room(context, step, ui.column.y - list.top);
    step_row(list, step, place);
  }
  if (dragging) pen(ui).ChannelsMerge();
}

void move_by_hand(Context& context, int from, int to) {
  if (from == to) return;
  edit_raising(context, [&](RaisingPlan& plan) { move_step(plan.steps, from, to); });
  move_step(context.raising_memory.order_rows, from, to);
}

void order_list(Context& context, const RaisingPlan& plan, const Frame& frame, const OrderCheck* check) {
  Ui& ui = context.ui;
  Drag& drag = context.raising_memory.drag;
  List list{context, plan, frame, check, ui.column.y, {}, -1};
  bool dropped = false;
  if (drag.step >= 0) {
    list.hold = hold_of(ui, grip_key(static_cast<std::size_t>(drag.step)));
    if (list.hold.is == Hold::Is::kNone || drag.steps != plan.steps)
      drag = {};
    else
      dropped = follow(context, list.hold, list.top);
  }
  rows_of(list);
  drag.last_ms = ui.now_ms;
  if (dropped) {
    const Drag done = std::exchange(drag, {});
    ui.memory.want_frame = true;
    if (done.moved) return move_by_hand(context, done.step, done.to);
  } else if (drag.step < 0) {
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
      const Hold hold = hold_of(ui, grip_key(i));
      if (hold.is == Hold::Is::kHeld) lift(context, static_cast<int>(i), hold, list.top);
    }
  }
  // The other way to move it, for whom dragging is hard: by its number.
  const int last = static_cast<int>(plan.steps.size());
  if (list.gripped >= 0)
    context.keypad.open_count(grip_key(static_cast<std::size_t>(list.gripped)),
                              say(Msg::kStepMoveTo, ui.language, std::to_string(list.gripped + 1)), list.gripped + 1, 1,
                              last);
  for (int i = 0; i < last; ++i)
    if (const auto to = context.keypad.take_count(grip_key(static_cast<std::size_t>(i))))
      move_by_hand(context, i, static_cast<int>(*to) - 1);
}

// ── What the order comes to, always in sight ──────────────────────────────────────────────────────────────────────

void order_foot(Context& context, const OrderCheck* check, const Rect& box) {
  Ui& ui = context.ui;
  const RaisingMemory& memory = context.raising_memory;
  const auto say_it = [&](std::string_view title, std::string_view second, bool bad, bool leads_on) {
    return foot_row(ui, "order.verdict", box, title, second, bad, leads_on);
  };
  if (elsewhere(memory.drag)) {
    (void)say_it(context.say(Msg::kRaisingLetGo), {}, false, false);
    return;
  }
  if (check == nullptr) {
    const Error* failure = context.raising.check().failure();
    (void)say_it(context.say(failure != nullptr ? Msg::kCaution : Msg::kRaisingChecking),
                 failure != nullptr ? task_error_text(context, *failure) : std::string{}, failure != nullptr, false);
    return;
  }
  const int step = check->faults.empty() ? check->first_bad : check->faults.front().step;
  const std::string why = check->faults.empty() ? say(Msg::kRaisingBad, ui.language, std::to_string(step + 1))
                                                : order_fault_text(check->faults.front(), voice_of(context));
  if (check->good()) {
    const auto left = static_cast<std::int64_t>(check->left_out.size());
    (void)say_it(context.say(Msg::kRaisingNoFault),
                 left == 0 ? std::string{} : say_count(Msg::kRaisingLeftOut, ui.language, left), false, false);
  } else if (step < 0) {
    (void)say_it(context.say(Msg::kCaution), why, true, false);
  } else if (say_it(say(Msg::kRaisingStepBad, ui.language, std::to_string(step + 1)), why, true, true)) {
    context.pages.push(raising_step_page(step));
  }
}

void order_screen(Context& context) {
  Ui& ui = context.ui;
  const bool foot = context.desk.state() == BooksDesk::State::kOpen && !context.desk.book().raising.steps.empty() &&
                    !context.keypad.is_open();
  const std::string bad = say(Msg::kRaisingStepBad, ui.language, "100");
  const std::array<std::string_view, 3> said{context.say(Msg::kRaisingNoFault), context.say(Msg::kRaisingChecking),
                                             bad};
  const float height = foot ? foot_height(ui, context.page, said) : 0;
  const OrderCheck* check = nullptr;
  const Rect strip = above_foot(context, height, [&] {
    raising_page(context, "raising.order.page", [&](const ShownFrame& shown) {
      const RaisingPlan& plan = context.desk.book().raising;
      check = context.raising.check().answer();
      if (plan.steps.empty())
        body(ui, "order.empty", context.say(Msg::kRaisingEmpty));
      else
        order_list(context, plan, *shown.frame(), check);
      if (list_row(ui, "order.tap", context.say(Msg::kRaisingTap), context.say(Msg::kRaisingTapNote)))
        context.pages.push(raising_tap_page());
      if (!plan.steps.empty() && button(ui, "order.clear", context.say(Msg::kRaisingClear), Weight::kDestructive)) {
        edit_raising(context, [](RaisingPlan& next) {
          std::erase_if(next.steps, [](const RaisingStep& s) { return !s.done; });
        });
        context.toast(std::string(context.say(Msg::kRaisingCleared)), true);
      }
    });
  });
  if (foot) order_foot(context, check, strip);
}

}  // namespace

Page raising_order_page() { return {"raising.order", Msg::kRaisingSteps, order_screen}; }

}  // namespace bentbook::screens
