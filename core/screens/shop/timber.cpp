#include "screens/shop/timber.h"

#include <algorithm>
#include <string>

#include "screens/app/aloud.h"
#include "screens/shop/card.h"
#include "screens/shop/codes.h"
#include "screens/shop/step_set.h"
#include "screens/shop/stock/sticks.h"
#include "screens/shop/work_shown.h"
#include "screens/timber/sheet.h"
#include "shop/log/conflicts.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

std::string step_state(const ShownWork& s, const WorkStep& step) {
  const std::vector<StepClaim> finishes = finishes_of(step, s.state);
  if (!finishes.empty()) return claim_text(s.context, *finishes.front().claim);
  return std::string(s.context.say(Msg::kShopStepOpen));
}

void next_part(ShownWork& s) {
  Ui& ui = s.context.ui;
  if (s.work.progress.next < 0) return body(ui, "shop.all_done", s.context.say(Msg::kShopDoneAll));
  const WorkStep& step = s.work.steps[static_cast<std::size_t>(s.work.progress.next)];
  const std::string title = step_text(step, ui.language);
  heading(ui, "shop.next", std::string(s.context.say(Msg::kShopNext)) + ": " + title);
  step_set(s, step, *sheet_shown(s.context, s.frame, s.work.timber).sheet);
  aloud_row(s.context, "shop.aloud",
            {"shop.mark", "shop.hold", "shop.plate_stops", "shop.flag", "shop.next", "shop.step.word",
             "shop.step.number", "shop.step.square", "shop.step.pass", "shop.step.bore"});
  measure_part(s, step);
  cautions_part(s, step, "shop.next");
  const bool held = plate_stops(s, step) || hold_of(s).claim != nullptr;
  if (!held && hold_row(s.context, "shop.next.tick", say(Msg::kShopHoldToTick, ui.language, title))) tick_step(s, step);
  if (button(ui, "shop.next.open", s.context.say(Msg::kShopStepPicture)))
    s.context.pages.push(shop_card_page(s.timber.mark, step.id));
}

/// A plate stops a step of this tick that is still to be done.
bool tick_stopped(const ShownWork& s, Tick tick) {
  for (std::size_t i = 0; i < s.work.steps.size(); ++i) {
    const WorkStep& step = s.work.steps[i];
    if (step.tick == tick && !s.work.progress.done[i] &&
        plate_trouble(s.context.shop.shop(), s.timber.mark, s.work.steps, step))
      return true;
  }
  return false;
}

void four_ticks(ShownWork& s) {
  Ui& ui = s.context.ui;
  heading(ui, "shop.ticks", s.context.say(Msg::kShopFourTicks));
  for (std::size_t i = 0; i < kTickWords.size(); ++i) {
    const auto tick = static_cast<Tick>(i);
    const TickCount& count = s.work.progress.ticks[i];
    const std::string key = "shop.tick." + std::string(kTickWords[i]);
    const std::string name(tick_text(tick, ui.language));
    if (count.steps == 0) continue;
    fact(ui, key + ".state", name,
         count.full() ? std::string(s.context.say(Msg::kShopTickMade))
                      : std::to_string(count.done) + " / " + std::to_string(count.steps),
         true);
    if (count.full() || hold_of(s).claim != nullptr || tick_stopped(s, tick)) continue;
    if (hold_row(s.context, key, say(Msg::kShopHoldToTick, ui.language, name))) {
      for (Event& event : tick_events(s.timber.mark, s.work.steps, s.work.progress, tick))
        if (!tell(s.context, std::move(event))) return;
      s.context.toast(say(Msg::kShopTicked, ui.language, name), false);
    }
  }
}

void steps_part(ShownWork& s) {
  Ui& ui = s.context.ui;
  heading(ui, "shop.steps", s.context.say(Msg::kShopSteps));
  int n = 0;
  for (const WorkStep& step : s.work.steps) {
    ++n;
    const std::string title = std::to_string(n) + ". " + step_text(step, ui.language);
    if (list_row(ui, "shop.step." + step.id, title, step_state(s, step)))
      s.context.pages.push(shop_card_page(s.timber.mark, step.id));
  }
}

void recorded(ShownWork& s, EventAction action, std::string_view step, const std::string& key, std::string_view label) {
  const StepState* told = s.told(step);
  const Claim* claim = told == nullptr ? nullptr : told->find(action);
  const auto text = text_field(s.context.ui, key, label, claim == nullptr ? std::string_view{} : claim->value);
  if (text && !text->empty() && (claim == nullptr || claim->value != *text))
    tell(s.context, event_of(s, action, step, text->substr(0, kLongestValue)));
}

/// What belongs to this timber and to no other: plates by their numbers, witness marks, the stock's lot.
void identity_part(ShownWork& s) {
  Ui& ui = s.context.ui;
  heading(ui, "shop.identity", s.context.say(Msg::kShopIdentity));
  recorded(s, EventAction::kStock, "", "shop.stock", s.context.say(Msg::kShopStock));
  if (const PlannedStick* stick = stick_of(stock_order(s.context, s.frame), s.timber.mark);
      stick != nullptr && list_row(ui, "shop.stick", say(Msg::kStockStick, ui.language, std::to_string(stick->number)),
                                   say_length(stick->length, s.voice)))
    s.context.pages.push(shop_stick_page(stick->number));
  for (const WorkStep& step : s.work.steps) {
    const std::string at = step_text(step, ui.language);
    if (step.work == StepWork::kSeatPlate)
      recorded(s, EventAction::kPlate, step.id, "shop.plate." + step.id,
               std::string(s.context.say(Msg::kShopPlate)) + " · " + at);
    if (step.work == StepWork::kWitness)
      recorded(s, EventAction::kWitness, step.id, "shop.witness." + step.id,
               std::string(s.context.say(Msg::kShopWitness)) + " · " + at);
  }
}

void timber_screen(Context& context) {
  timber_page(context, "shop.timber.page", context.subject, [](ShownWork s) {
    Ui& ui = s.context.ui;
    heading(ui, "shop.mark", s.timber.mark + " · " + std::string(kind_name(s.timber.kind, ui.language)));
    note(ui, "shop.section",
         section_text(s.timber.wood.nominal, s.voice) + " · " + say_inches(s.timber.length, s.voice));
    timber_cautions(s);
    hold_part(s);
    flags_part(s, {});
    next_part(s);
    four_ticks(s);
    steps_part(s);
    identity_part(s);
    stop_part(s, {});
    if (list_row(ui, "shop.label", s.context.say(Msg::kShopLabel)))
      s.context.pages.push(shop_label_page(s.timber.mark));
    if (list_row(ui, "shop.sheet", s.context.say(Msg::kShopSheet))) {
      s.context.pages.go(Place::kFrame);
      s.context.pages.push(frame_sheet_page(s.timber.mark));
    }
  });
}

}  // namespace

Page shop_timber_page(std::string mark) { return {"shop.timber", Msg::kShopTimber, timber_screen, std::move(mark)}; }

}  // namespace bentbook::screens
