#include "screens/shop/card.h"

#include <algorithm>

#include "screens/app/aloud.h"
#include "screens/form/foot.h"
#include "screens/shop/step_set.h"
#include "screens/shop/work_shown.h"
#include "screens/timber/face_parts.h"
#include "screens/timber/sheet.h"
#include "screens/timber/tape_picture.h"
#include "shop/step_marks.h"
#include "words/face_words.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

void head(ShownWork& s, const WorkStep& step) {
  Ui& ui = s.context.ui;
  const float side = 48, icon = 30;
  const auto up = step.face_up();
  const Column whole = ui.column;
  if (up) {
    face_box(ui, {whole.x, whole.y, side, side}, *up, is_reference(s.timber.wood, *up));
    const float around = section_margin(ui);
    paint_section(ui, s.timber, *up, {whole.x + whole.width - icon - around - 2, whole.y + around - 4, icon, icon});
    ui.column.x += side + 12;
    ui.column.width -= side + 12 + icon + 2 * around + 8;
  }
  body(ui, "shop.step.title", step_text(step, ui.language));
  int number = 1;
  for (const WorkStep& other : s.work.steps) {
    if (&other == &step) break;
    ++number;
  }
  std::string where =
      s.timber.mark + " · " +
      say(Msg::kFacePart, ui.language, {{"n", std::to_string(number)}, {"all", std::to_string(s.work.steps.size())}}) +
      " · " + std::string(workplace_text(step.place, ui.language));
  note(ui, "shop.step.place", where);
  const float foot = ui.column.y;
  ui.column = whole;
  ui.column.y = std::max(foot, up ? whole.y + std::max(side, icon + 2 * section_margin(ui)) + kGap : foot);
}

void picture_part(ShownWork& s, const WorkStep& step, const Sheet& sheet) {
  TapeMemory& kept = s.context.shop_memory.picture;
  std::string key = tape_key(s.context, s.timber.mark + '|' + step.id + '|' + saw_of(s.frame.book).name);
  if (kept.of != s.frame.solved || kept.key != key) {
    kept = {s.frame.solved, std::move(key), step_marks(s.timber, sheet, step), {}, {}};
    if (kept.marks) {
      constexpr double kOnePage = 1e6;
      kept.strip = step_strip(*s.frame.frame(), s.timber, *kept.marks, s.voice);
      lay_out(s.context, kept, static_cast<double>(s.context.ui.column.width) * 0.4, kOnePage);
    }
  }
  if (kept.marks) show_tape(s.context, "shop.step", kept, 0);
}

constexpr int kMostClaims = 20;  // of a made-up log there may be thousands

/// Finished steps with who and when, and how to take one back.
void claims_part(ShownWork& s, const WorkStep& step) {
  Ui& ui = s.context.ui;
  const std::string title = step_text(step, ui.language);
  int n = 0;
  const std::vector<StepClaim> finishes = finishes_of(step, s.state);
  for (const StepClaim& finish : finishes) {
    if (n == kMostClaims) {
      note(ui, "shop.step.claims_more",
           say(Msg::kFrameMoreFindings, ui.language, std::to_string(finishes.size() - kMostClaims)));
      break;
    }
    const std::string key = "shop.step.claim." + std::to_string(n++);
    fact(ui, key, worked_text(finish.claim->value, s.voice), claim_text(s.context, *finish.claim));
    if (!hold_row(s.context, key + ".back", say(Msg::kShopHoldAgain, ui.language, title))) continue;
    if (tell(s.context, event_of(s, EventAction::kTakenBack, finish.step, id_text(finish.claim->id))))
      s.context.toast(say(Msg::kShopTakenBack, s.voice.language, title), false);
  }
  const bool flagged = std::any_of(s.work.progress.flags.begin(), s.work.progress.flags.end(),
                                   [&](const StepFlag& f) { return f.step == step.id; });
  if (n > 0 && flagged && hold_row(s.context, "shop.step.anew", say(Msg::kShopHoldAnew, ui.language, title)))
    tick_step(s, step);
}

/// What the keys at the foot do.
struct Foot {
  bool there = false, done = false, held = false, stopped = false;
  std::string mark, before, after;  ///< ids of the steps beside it
  std::string open;                 ///< the next one that is not done, "" for none
  Event tick;
};

Foot foot_of(const ShownWork& s, std::size_t index) {
  const auto& steps = s.work.steps;
  Foot foot;
  foot.there = true;
  foot.done = s.work.progress.done[index];
  foot.held = hold_of(s).claim != nullptr;
  foot.stopped = plate_trouble(s.context.shop.shop(), s.timber.mark, steps, steps[index]).has_value();
  foot.mark = s.timber.mark;
  if (index > 0) foot.before = steps[index - 1].id;
  if (index + 1 < steps.size()) foot.after = steps[index + 1].id;
  for (std::size_t i = steps.size() - 1; i > 0; --i)
    if (const std::size_t at = (index + i) % steps.size(); !s.work.progress.done[at]) foot.open = steps[at].id;
  foot.tick = event_of(s, EventAction::kDone, steps[index].id, numbers_text(steps[index].numbers));
  return foot;
}

void turn_to(Context& context, const std::string& mark, const std::string& step) {
  if (step.empty()) return context.pages.pop();
  context.pages.turn_to(shop_card_page(mark, step));
}

/// The tick, always in reach, between the card before and the one after; ticked, the next card that is not done comes
/// up, and after the last one the timber.
void card_foot(Context& context, const Foot& foot, const Rect& box) {
  Ui& ui = context.ui;
  foot_ground(ui, box);
  const float side = ui.theme.target;
  const Rect back{box.x + kMargin, box.y + kGap, side, side};
  const Rect on{box.x + box.w - kMargin - side, back.y, side, side};
  const Rect middle{back.x + side + kGap, back.y, on.x - back.x - side - 2 * kGap, side};
  if (icon_button(ui, "shop.step.before", back, Icon::kBefore, context.say(Msg::kCardBefore), !foot.before.empty()))
    return turn_to(context, foot.mark, foot.before);
  if (icon_button(ui, "shop.step.after", on, Icon::kAfter, context.say(Msg::kCardAfter), !foot.after.empty()))
    return turn_to(context, foot.mark, foot.after);
  if (foot.done) {
    if (button_in(ui, "shop.step.on", middle, context.say(Msg::kCardOn), Weight::kPrimary))
      turn_to(context, foot.mark, foot.open);
    return;
  }
  if (foot.held || foot.stopped) {
    const Msg why = foot.held ? Msg::kShopIsHeld : Msg::kPlateStopped;
    (void)button_in(ui, "shop.step.stopped", middle, context.say(why), Weight::kQuiet, false);
    return;
  }
  if (!hold_button(ui, "shop.step.tick", middle, context.say(Msg::kCardDone), kHoldMs) || ui.read_only) return;
  if (tell(context, foot.tick)) turn_to(context, foot.mark, foot.open);
}

void card_content(ShownWork& s, const WorkStep& step) {
  const Sheet& sheet = *sheet_shown(s.context, s.frame, s.work.timber).sheet;
  head(s, step);
  aloud_row(s.context, "shop.step.aloud",
            {"shop.step.title", "shop.step.place", "shop.hold", "shop.plate_stops", "shop.flag", "shop.step.word",
             "shop.step.number", "shop.step.square", "shop.step.pass", "shop.step.bore", "shop.step.caution"});
  first_card_cautions(s, step);
  hold_part(s);
  (void)plate_stops(s, step);
  flags_part(s, step.id);
  // The picture stands beside the numbers where there is room for both.
  side_by_side(
      s.context.ui, 24, 300, [&](Ui&) { step_set(s, step, sheet); }, [&](Ui&) { picture_part(s, step, sheet); });
  measure_part(s, step);
  claims_part(s, step);
  cautions_part(s, step, "shop.step");
  pairing_part(s, step);
  stop_part(s, step.id);
}

/// The first step that is not done and cuts something; the first one where all are.
std::vector<WorkStep>::const_iterator first_open(const ShownWork& s) {
  const auto& steps = s.work.steps;
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (!s.work.progress.done[i] && steps[i].index >= 0) return steps.begin() + static_cast<std::ptrdiff_t>(i);
  return steps.begin();
}

void card_screen(Context& context) {
  const std::size_t bar = context.subject.find('|');
  const std::string mark = context.subject.substr(0, bar), id = context.subject.substr(bar + 1);
  Foot foot;
  const Rect strip = above_foot(context, keys_height(context.ui), [&] {
    timber_page(context, "shop.step.page", mark, [&](ShownWork s) {
      const auto found = id.empty() ? first_open(s)
                                    : std::find_if(s.work.steps.begin(), s.work.steps.end(),
                                                   [&](const WorkStep& w) { return w.id == id; });
      if (found == s.work.steps.end())
        return body(context.ui, "shop.step.gone", say(Msg::kShopStepGone, context.ui.language, id));
      card_content(s, *found);
      if (!context.keypad.is_open()) foot = foot_of(s, static_cast<std::size_t>(found - s.work.steps.begin()));
    });
  });
  if (foot.there) card_foot(context, foot, strip);
}

}  // namespace

Page shop_card_page(const std::string& mark, const std::string& step) {
  return {"shop.step", Msg::kShopStep, card_screen, mark + '|' + step};
}

}  // namespace bentbook::screens
