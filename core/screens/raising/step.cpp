#include "screens/raising/step.h"

#include <algorithm>
#include <string>

#include "frame/facts.h"
#include "numeric/sorting.h"
#include "raising/fasteners.h"
#include "raising/order.h"
#include "screens/form/foot.h"
#include "screens/raising/picture.h"
#include "screens/raising/step_more.h"
#include "screens/raising/step_pick.h"
#include "screens/raising/step_shown.h"
#include "screens/shop/form.h"
#include "ui/widgets_inside.h"
#include "words/raising_words.h"
#include "words/step_words.h"

namespace bentbook::screens {
namespace {

constexpr float kBesideShare = 0.46F;  ///< of a page that lies on its side, for the picture

bool falls(const ShownStep& s) { return s.check != nullptr && !(s.check->stands && s.check->stands_after); }

std::vector<Temporary> up_now(const ShownStep& s) {
  const std::vector<std::string> names = temporaries_up(s.plan, static_cast<std::size_t>(s.index));
  std::vector<Temporary> out;
  for (const Temporary& t : s.plan.temporaries)
    if (std::find(names.begin(), names.end(), t.name) != names.end()) out.push_back(t);
  return out;
}

/// Who stands where, by name.
void names_part(ShownStep& s, const Pick& pick) {
  const Crew& crew = s.plan.crew;
  if (pick.lines > 0 && !crew.on_lines.empty())
    fact(s.context.ui, "step.on_lines", s.context.say(Msg::kStepOnLines), crew.on_lines);
  const bool poles = pick.by == LiftBy::kTipUp || pick.by == LiftBy::kPoles;
  if (poles && !crew.on_poles.empty())
    fact(s.context.ui, "step.on_poles", s.context.say(Msg::kStepOnPoles), crew.on_poles);
}

/// What is read at arm's length: which timbers, what they weigh, who or what carries them.
void what_now(ShownStep& s) {
  Ui& ui = s.context.ui;
  note(ui, "step.title",
       say(has_days(s.plan) ? Msg::kStepTitle : Msg::kStepNumberOf, ui.language,
           {{"n", std::to_string(s.index + 1)},
            {"all", std::to_string(s.plan.steps.size())},
            {"day", std::to_string(s.step.day)}}));
  heading(ui, "step.name", step_name(s.step, *s.frame.frame(), ui.language));
  if (s.step.marks.empty()) return;
  const RaisingMemory::Picked& picked = step_pick(s.context, s.frame, s.index);
  const Pick& pick = picked.pick;
  side_by_side(
      ui, 16, 120,
      [&](Ui& half) {
        answer(half, "step.weight", s.context.say(Msg::kStepPickWeight), say_sum(picked.weights_lb, s.voice));
      },
      [&](Ui& half) {
        if (hangs(pick.by))
          answer(half, "step.net", s.context.say(Msg::kStepNet),
                 pick.rated ? say_weight(pick.margin_lb(), s.voice) : s.context.say(Msg::kStepNotRated));
        else if (!pick.beyond_hands())
          answer(half, "step.people", s.context.say(Msg::kStepPeople), std::to_string(pick.needed()));
      });
  fact(ui, "step.by", s.context.say(Msg::kStepBy),
       pick.beyond_hands() ? s.context.say(Msg::kBriefOpenHigh)
       : pick.open         ? s.context.say(Msg::kStepByOpen)
                           : lift_by_text(pick.by, ui.language));
  names_part(s, pick);
  for (const PickNote& said : pick.notes)
    if (said.id == PickNoteId::kUpHigh) note(ui, "step.up_high", pick_note_text(said, s.voice));
}

/// Which marks, in the order in which they are handled.
void marks_part(ShownStep& s) {
  if (s.step.marks.empty()) return;
  Ui& ui = s.context.ui;
  const bool set = !s.step.set_first.empty();
  if (set)
    fact(ui, "step.set_first", s.context.say(Msg::kRaiseSetFirst),
         held_text(s.step, *s.frame.frame(), s.plan, s.voice));
  fact(ui, "step.marks", s.context.say(set ? Msg::kRaiseCloses : Msg::kStepComes), marks_text(s.step.marks));
}

/// This step's temporaries alone, and what is driven.
void fast_part(ShownStep& s) {
  Ui& ui = s.context.ui;
  const auto said = [&](const std::string& name) {
    const auto it = std::find_if(s.plan.temporaries.begin(), s.plan.temporaries.end(),
                                 [&](const Temporary& t) { return t.name == name; });
    return it == s.plan.temporaries.end() ? std::string{} : temporary_text(*it, *s.frame.frame(), s.voice);
  };
  for (const std::string& name : s.step.put_up)
    fact(ui, "step.puts_up." + name, s.context.say(Msg::kRaisePutUp), said(name));
  const std::string driven =
      driven_text(driven_in(*s.frame.frame(), s.plan, static_cast<std::size_t>(s.index)), s.voice);
  if (!driven.empty())
    fact(ui, "step.drive",
         s.context.say(hangs(step_pick(s.context, s.frame, s.index).pick.by) ? Msg::kStepDrive : Msg::kStepDriveByHand),
         driven);
  for (const std::string& name : s.step.take_out)
    fact(ui, "step.takes_out." + name, s.context.say(Msg::kRaiseTakeOut), said(name));
}

/// The picture with its keys below, `height` px high in all.
void picture_part(ShownStep& s, float height) {
  RaisingMemory& memory = s.context.raising_memory;
  RaisingPicture picture;
  picture.standing = standing_before(*s.frame.frame(), s.plan, static_cast<std::size_t>(s.index));
  for (const SetPiece& piece : s.step.set_first)
    if (const int t = timber_by_mark(*s.frame.frame(), piece.mark); t >= 0) picture.standing.push_back(t);
  sort_up(picture.standing);
  picture.coming = step_pick(s.context, s.frame, s.index).coming;
  picture.temporaries = up_now(s);
  if (s.check != nullptr) picture.entry = &s.check->entry;
  const StepExplained* what = falls(s) ? s.context.raising.explain(s.index).answer() : nullptr;
  const auto modes = what == nullptr ? std::size_t{0} : what->standing.modes.size();
  if (memory.mode >= 0 && static_cast<std::size_t>(memory.mode) < modes)
    picture.mode = &what->standing.modes[static_cast<std::size_t>(memory.mode)];
  Ui& ui = s.context.ui;
  const std::string_view play = s.context.say(Msg::kStepPlay);
  const float between = ui.column.width - 2 * (ui.theme.target + kGap);
  const float keys = std::max(ui.theme.target, wrapped_height(*ui.fonts.strong, play, between - 16) + 8);
  raising_picture(s.context, s.frame, "step", height - keys - 2 * kGap, picture);
  const Rect middle = turn_keys(s.context, "step", keys);
  if (s.check == nullptr || !s.check->entry.free || s.step.marks.empty()) return;
  if (button_in(ui, "step.play", middle, play)) {
    memory.mode = -1;
    memory.moving_since_ms = ui.now_ms;
  }
}

void faults_part(ShownStep& s, const OrderCheck& check) {
  Ui& ui = s.context.ui;
  int n = 0;
  for (const OrderFault& fault : check.faults)
    if (fault.step == s.index) caution(ui, "step.fault." + std::to_string(n++), order_fault_text(fault, s.voice));
  if (s.check == nullptr) return;
  int r = 0;
  for (const Remedy& remedy : s.check->entry.remedies)
    body(ui, "step.remedy." + std::to_string(r++), remedy_text(remedy, *s.frame.frame(), ui.language));
}

/// To the steps beside this one: the one before by its number alone.
void beside_part(ShownStep& s) {
  Ui& ui = s.context.ui;
  const auto index = static_cast<std::size_t>(s.index);
  const bool before = index > 0, after = index + 1 < s.plan.steps.size();
  const auto name = [&](std::size_t i) {
    return say(Msg::kRaisingNext, ui.language,
               {{"n", std::to_string(i + 1)},
                {"all", std::to_string(s.plan.steps.size())},
                {"marks", step_name(s.plan.steps[i], *s.frame.frame(), ui.language)}});
  };
  const std::string next = after ? name(index + 1) : std::string{}, number = std::to_string(index);
  const float sign = 24, pad = 12;
  const float aside = before ? text_size(*ui.fonts.strong, number).x + sign + 3 * pad + kGap : 0;
  const float width = std::min(ui.column.width, 480.0F) - aside;
  const float height =
      std::max(ui.theme.target, wrapped_height(*ui.fonts.strong, next, width - sign - 2 * pad - 16) + 16);
  const Rect row = take_box(ui, height);
  space(ui, kGap);
  const float mid = row.y + row.h / 2;
  if (before) {
    const Rect box{row.x, row.y, aside - kGap, row.h};
    if (button_in(ui, "step.before", box, {}, Weight::kQuiet, true, name(index - 1)))
      return s.context.pages.turn_to(raising_step_page(s.index - 1));
    draw_icon(pen(ui), Icon::kBefore, {box.x + pad, mid - sign / 2, sign, sign}, ui.theme.ink);
    draw_text(pen(ui), *ui.fonts.strong, {box.x + 2 * pad + sign, mid - ui.fonts.strong->FontSize / 2}, ui.theme.ink,
              number);
  }
  if (!after) return;
  const Rect box{row.x + aside, row.y, width, row.h};
  if (button_in(ui, "step.next", box, {}, Weight::kQuiet, true, next))
    return s.context.pages.turn_to(raising_step_page(s.index + 1));
  draw_centred(pen(ui), *ui.fonts.strong, {box.x + pad, box.y, box.w - sign - 3 * pad, box.h}, ui.theme.ink, next);
  draw_icon(pen(ui), Icon::kAfter, {box.x + box.w - sign - pad, mid - sign / 2, sign, sign}, ui.theme.ink);
}

Msg tick_label(const RaisingStep& step) { return step.done ? Msg::kStepHoldUndo : Msg::kStepHoldDone; }

/// As high as its words want; their ring stands beside them.
float tick_height(const Context& context, const RaisingStep& step, float width) {
  const Ui& ui = context.ui;
  constexpr float kRing = 72;
  const float words = wrapped_height(*ui.fonts.strong, context.say(tick_label(step)), width - 2 * kMargin - kRing);
  return std::max(ui.theme.target, words + kGap) + 2 * kGap + kGap;
}

/// The tick, always in reach; ticked, the next step is shown from its top.
void tick_foot(Context& context, int index, const Rect& box) {
  Ui& ui = context.ui;
  const auto i = static_cast<std::size_t>(index);
  const RaisingStep& step = context.desk.book().raising.steps[i];
  const bool done = step.done;
  foot_ground(ui, box);
  const Rect inner{box.x + kMargin, box.y + kGap, box.w - 2 * kMargin, box.h - 2 * kGap};
  if (!hold_button(ui, done ? "step.undo" : "step.done", inner, context.say(tick_label(step)), kHoldMs) || ui.read_only)
    return;
  edit_raising(context, [&](RaisingPlan& plan) { plan.steps[i].done = !done; });
  if (done || i + 1 >= context.desk.book().raising.steps.size()) return;
  context.pages.turn_to(raising_step_page(index + 1));
}

/// In one line where it stands; else why it does not, and what would hold it.
void verdict_part(ShownStep& s) {
  if (s.check == nullptr) return;
  if (falls(s)) return standing_part(s);
  fact(s.context.ui, "step.verdict", s.context.say(Msg::kRaisingVerdict), s.context.say(Msg::kRaisingNoFault), true);
  int n = 0;
  for (const std::string& warning :
       standing_warning_texts(s.check->standing.warnings, *s.frame.frame(), s.plan.temporaries, s.context.ui.language))
    note(s.context.ui, "step.rests_on." + std::to_string(n++), warning);
}

/// `height`: of the picture among the words; 0: it stands beside them.
void step_content(ShownStep& s, float height) {
  Context& context = s.context;
  Ui& ui = context.ui;
  what_now(s);
  if (s.order != nullptr) faults_part(s, *s.order);
  if (height > 0) picture_part(s, height);
  marks_part(s);
  const RaisingMemory::Picked& picked = step_pick(context, s.frame, s.index);
  if (s.check != nullptr && s.check->entry.free)
    body(ui, "step.path", way_text(s.check->entry, s.step, picked.pick.by, *s.frame.frame(), s.voice));
  if (picked.hand) note(ui, "step.tipped", context.say(Msg::kStepTipped));
  fast_part(s);
  verdict_part(s);
  if (list_row(ui, "step.more", context.say(Msg::kStepMore), context.say(Msg::kStepMoreNote)))
    context.pages.push(raising_step_more_page(s.index));
  beside_part(s);
  caution(ui, "step.caution",
          say(Msg::kStepCaution, ui.language, say_kept(s.plan.loads.wind_mph, KeptIn::kMph, s.voice)));
}

/// The picture over the page's height, where it lies on its side.
void picture_beside(Context& context, int index, const Rect& box) {
  const ShownFrame shown = frame_now(context);
  if (!shown.frame()) return;
  begin_scroll(context.ui, "raising.step.picture", box);
  ShownStep s = shown_step(context, shown, index, context.raising.check().answer());
  picture_part(s, box.h - kGap - kMargin);
  end_scroll(context.ui);
}

void step_screen(Context& context) {
  const int index = std::stoi(context.subject);
  const auto i = static_cast<std::size_t>(index);
  const bool there = context.desk.state() == BooksDesk::State::kOpen && !context.keypad.is_open() && index >= 0 &&
                     i < context.desk.book().raising.steps.size();
  const Rect page = context.page;
  const bool beside = there && context.landscape;
  if (beside) {
    context.page.w = page.w * (1 - kBesideShare);
    context.page.x += page.w - context.page.w;
  }
  const float height = beside ? 0 : drawing_height(context, 300) + context.ui.theme.target + kGap;
  const float tick = there ? tick_height(context, context.desk.book().raising.steps[i], context.page.w) : 0;
  const Rect strip = above_foot(
      context, tick, [&] { step_page(context, "raising.step.page", [&](ShownStep& s) { step_content(s, height); }); });
  context.page = page;
  if (beside) picture_beside(context, index, {page.x, page.y, page.w - strip.w, page.h});
  if (there) tick_foot(context, index, strip);
}

}  // namespace

Page raising_step_page(int step) { return {"raising.step", Msg::kShopStep, step_screen, std::to_string(step)}; }

}  // namespace bentbook::screens
