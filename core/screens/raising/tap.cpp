#include "screens/raising/tap.h"

#include <algorithm>
#include <map>
#include <string>

#include "screens/form/task_button.h"
#include "screens/frame/solid_view.h"
#include "screens/raising/form.h"
#include "screens/raising/given/loads.h"
#include "screens/raising/order.h"
#include "ui/widgets_inside.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook::screens {
namespace {

using render::PartLook;

/// What is in the order already is pale; what was tapped is lit.
SolidLooks looks_of(const Frame& frame, const SolidMemory& solids, const std::vector<std::string>& left,
                    const std::vector<std::string>& picked) {
  SolidLooks out;
  for (const int t : solids.timbers) {
    const std::string& mark = frame.timbers[static_cast<std::size_t>(t)].mark;
    PartLook look = PartLook::kGhost;
    if (std::find(left.begin(), left.end(), mark) != left.end()) look = PartLook::kPlain;
    if (std::find(picked.begin(), picked.end(), mark) != picked.end()) look = PartLook::kLit;
    out.looks.push_back(static_cast<std::uint8_t>(look));
  }
  return out;
}

void take_tap(RaisingMemory& memory) {
  if (memory.tapping.lit.empty()) return;
  const std::string mark = std::exchange(memory.tapping.lit, {});
  const auto it = std::find(memory.picked.begin(), memory.picked.end(), mark);
  if (it == memory.picked.end())
    memory.picked.push_back(mark);
  else
    memory.picked.erase(it);
}

std::vector<std::string> marks_set(const RaisingMemory& memory) {
  std::vector<std::string> marks;
  marks.reserve(memory.set_first.size());
  for (const SetPiece& piece : memory.set_first) marks.push_back(piece.mark);
  return marks;
}

/// In a line, while more is tapped.
void verdict_part(Context& context) {
  if (context.desk.book().raising.steps.empty()) return;
  const OrderCheck* check = order_check(context);
  if (check == nullptr) return;
  Ui& ui = context.ui;
  const std::string_view name = context.say(Msg::kRaisingVerdict);
  if (check->good()) return fact(ui, "tap.verdict", name, context.say(Msg::kRaisingNoFault), true);
  if (check->first_bad < 0) return caution(ui, "tap.verdict", order_fault_text(check->faults[0], voice_of(context)));
  const auto bad = [&](const OrderFault& fault) { return fault.step == check->first_bad; };
  const auto it = std::find_if(check->faults.begin(), check->faults.end(), bad);
  if (it == check->faults.end()) return;
  caution(ui, "tap.verdict", std::to_string(check->first_bad + 1) + ": " + order_fault_text(*it, voice_of(context)));
}

void picked_part(Context& context, const std::vector<std::string>& left) {
  Ui& ui = context.ui;
  RaisingMemory& memory = context.raising_memory;
  fact(ui, "tap.left", context.say(Msg::kTapLeft), std::to_string(left.size()), true);
  if (left.empty()) return;
  if (!memory.set_first.empty())
    fact(ui, "tap.set_picked", context.say(Msg::kTapSetPicked), marks_text(marks_set(memory)), true);
  if (memory.picked.empty()) {
    if (memory.set_first.empty()) return note(ui, "tap.how", context.say(Msg::kTapHow));
    if (button(ui, "tap.none", context.say(Msg::kTapNone))) memory.set_first.clear();
    return;
  }
  fact(ui, "tap.picked", context.say(Msg::kTapPicked), marks_text(memory.picked), true);
  const auto bring = [&](const std::vector<std::vector<std::string>>& steps) {
    edit_raising(context, [&](RaisingPlan& plan) {
      for (const std::vector<std::string>& marks : steps) {
        add_step(plan, marks, std::move(memory.set_first));
        memory.set_first.clear();
      }
    });
    memory.picked.clear();
  };
  if (button(ui, "tap.together", context.say(memory.picked.size() > 1 ? Msg::kTapTogether : Msg::kTapOne),
             Weight::kPrimary))
    return bring({memory.picked});
  if (memory.picked.size() > 1 && button(ui, "tap.each", context.say(Msg::kTapEach))) {
    std::vector<std::vector<std::string>> steps;
    steps.reserve(memory.picked.size());
    for (const std::string& mark : memory.picked) steps.push_back({mark});
    return bring(steps);
  }
  if (button(ui, "tap.set_first", context.say(Msg::kTapSetFirst))) {
    for (std::string& mark : memory.picked) memory.set_first.push_back({std::move(mark), HeldBy::kHands});
    memory.picked.clear();
  } else if (button(ui, "tap.none", context.say(Msg::kTapNone))) {
    memory.picked.clear();
    memory.set_first.clear();
  }
}

/// What stands in one bent's plane, to be put together lying down and raised as one.
void by_bent(Context& context, const Frame& frame, const std::vector<std::string>& left) {
  Ui& ui = context.ui;
  std::map<int, std::vector<std::string>> bents;
  for (const std::string& mark : left) {
    const Timber& timber = frame.timbers[static_cast<std::size_t>(timber_by_mark(frame, mark))];
    if (raised_with_bent(timber, timber.place.bent)) bents[timber.place.bent].push_back(mark);
  }
  if (bents.empty()) return;
  heading(ui, "tap.bents", context.say(Msg::kTapBents));
  for (const auto& [bent, marks] : bents)
    if (list_row(ui, "tap.bent." + std::to_string(bent), say(Msg::kViewBent, ui.language, std::to_string(bent)),
                 marks_text(marks)))
      context.raising_memory.picked = marks;
}

/// Every timber that is not in the order yet by name too: for those whom the picture tells nothing.
void by_name(Context& context, const std::vector<std::string>& left) {
  Ui& ui = context.ui;
  RaisingMemory& memory = context.raising_memory;
  if (left.empty()) return;
  heading(ui, "tap.names", context.say(Msg::kTapNames));
  for (const std::string& mark : left) {
    const bool on = std::find(memory.picked.begin(), memory.picked.end(), mark) != memory.picked.end();
    if (!toggle(ui, "tap.mark." + mark, mark, on)) continue;
    memory.tapping.lit = mark;
    take_tap(memory);
  }
}

void tap_screen(Context& context) {
  Ui& ui = context.ui;
  if (!book_is_open(context)) return;
  const ShownFrame shown = frame_now(context);
  if (!shown.frame()) return raising_page(context, "tap.page", [](const ShownFrame&) {});
  RaisingMemory& memory = context.raising_memory;
  const Frame& frame = *shown.frame();
  std::vector<std::string> left = marks_left(frame, context.desk.book().raising);
  const auto gone = [&](const std::string& m) { return std::find(left.begin(), left.end(), m) == left.end(); };
  std::erase_if(memory.set_first, [&](const SetPiece& piece) { return gone(piece.mark); });
  for (const SetPiece& piece : memory.set_first) std::erase(left, piece.mark);
  std::erase_if(memory.picked, gone);
  make_scene(memory.tapping, shown);
  const auto [picture, below] = beside_picture(context);
  std::string of = std::to_string(left.size());
  for (const std::string& mark : memory.picked) of += "/" + mark;
  (void)draw_solids(context, shown, memory.tapping, picture, {"tap", std::string(context.say(Msg::kTapPicture)), of},
                    [&] { return looks_of(frame, memory.tapping, left, memory.picked); });
  take_tap(memory);
  begin_scroll(ui, "tap.page", below);
  view_choice(context, "tap.kind", memory.tapping);
  picked_part(context, left);
  verdict_part(context);
  by_bent(context, frame, left);
  by_name(context, left);
  space(ui, 24);
  end_scroll(ui);
}

// ── An order that is looked for ───────────────────────────────────────────────────────────────────────────────────

/// What was found, to be looked at before it is taken: its steps by name, its temporaries with where they go.
void steps_part(Context& context, const Frame& frame, const RaisingPlan& plan) {
  Ui& ui = context.ui;
  heading(ui, "search.steps", context.say(Msg::kRaisingSteps));
  int n = 0;
  for (const RaisingStep& step : plan.steps) {
    const std::string number = std::to_string(++n);
    fact(ui, "search.step." + number, number + "  " + step_name(step, frame, ui.language), temporaries_text(step));
  }
  if (plan.temporaries.empty()) return;
  heading(ui, "search.braces", context.say(Msg::kRaisingTemporaries));
  for (const Temporary& temporary : plan.temporaries)
    body(ui, "search.brace." + temporary.name, temporary_text(temporary, frame, voice_of(context)));
}

void found_part(Context& context, const Frame& frame, const FoundOrder& found) {
  Ui& ui = context.ui;
  const std::string steps = std::to_string(found.plan.steps.size());
  if (found.found) {
    fact(ui, "search.found", context.say(Msg::kSearchFound),
         say_count(Msg::kRaisingStepsNote, ui.language, static_cast<std::int64_t>(found.plan.steps.size())), true);
    fact(ui, "search.temporaries", context.say(Msg::kRaisingTemporaries), std::to_string(found.cost.temporaries));
    fact(ui, "search.moves", context.say(Msg::kSearchMoves), std::to_string(found.cost.moves));
    note(ui, "search.proven", context.say(found.proven_optimal ? Msg::kSearchProven : Msg::kSearchBest));
  } else if (!found.stuck.empty() && found.stuck[0].reason == StuckReason::kWholeFalls) {
    caution(ui, "search.whole_falls", stuck_text(found.stuck[0], found.plan, ui.language));
    if (list_row(ui, "search.loads", context.say(Msg::kRaisingLoads), context.say(Msg::kFastenTitle)))
      context.pages.push(raising_loads_page());
    return;
  } else {
    caution(ui, "search.not_found", say(Msg::kSearchNotFound, ui.language, steps));
    int n = 0;
    if (!found.cycle.empty())
      caution(ui, "search.cycle", say(Msg::kFaultWishCycle, ui.language, {{"marks", marks_text(found.cycle)}}));
    for (const Stuck& stuck : found.stuck) {
      if (n == 8) break;
      body(ui, "search.stuck." + std::to_string(n++), stuck_text(stuck, found.plan, ui.language));
    }
    if (const std::string_view advice = stuck_advice(found.stuck, ui.language); !advice.empty())
      body(ui, "search.advice", advice);
  }
  note(ui, "search.as_assumed", context.say(Msg::kRaisingCaution));
  if (found.plan.steps.empty()) return;
  const std::size_t own = context.desk.book().raising.steps.size();
  bool& asked = context.raising_memory.asked_to_take;
  asked = asked && own > 0;
  if (asked) refusal(ui, "search.replaces", say(Msg::kSearchReplaces, ui.language, std::to_string(own)));
  const bool pressed =
      button(ui, "search.take", context.say(found.found ? Msg::kSearchTake : Msg::kSearchTakePart), Weight::kPrimary);
  if (asked && button(ui, "search.keep", context.say(Msg::kSearchKeep))) asked = false;
  const bool takes = pressed && (asked || own == 0);
  if (pressed) asked = !takes;
  if (!takes) return steps_part(context, frame, found.plan);
  edit_raising(context, [&](RaisingPlan& plan) {
    plan.steps = found.plan.steps;
    plan.temporaries = found.plan.temporaries;
    plan.assemblies = found.plan.assemblies;
  });
  context.pages.turn_to(raising_order_page());
  context.toast(std::string(context.say(Msg::kSearchTaken)), true);
}

void search_screen(Context& context) {
  raising_page(context, "search.page", [&](const ShownFrame& shown) {
    body(context.ui, "search.how", context.say(Msg::kSearchHow));
    fasteners_toggle(context);
    const Asked<FoundOrder>& search = context.raising.search();
    // First any good order; a cheaper one only where it is asked for, since that takes as long as it is let.
    const bool further = search.answer() != nullptr && search.answer()->found;
    const TaskPressed pressed = task_button(
        context, "search.go", context.say(further ? Msg::kSearchFurther : Msg::kSearchGo), search.per_mille());
    if (pressed == TaskPressed::kStart) context.raising.start_search();
    if (pressed == TaskPressed::kStop) context.raising.stop_search();
    if (const Error* failure = search.failure())
      caution(context.ui, "search.failed", task_error_text(context, *failure));
    if (search.answer() != nullptr) found_part(context, *shown.frame(), *search.answer());
  });
}

}  // namespace

Page raising_tap_page() { return {"raising.tap", Msg::kRaisingTap, tap_screen}; }
Page raising_search_page() { return {"raising.search", Msg::kRaisingSearch, search_screen}; }

}  // namespace bentbook::screens
