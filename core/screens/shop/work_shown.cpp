#include "screens/shop/work_shown.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "screens/shop/card.h"
#include "shop/log/conflicts.h"

namespace bentbook::screens {
namespace {

std::string pairing_text(const ShownWork& s, const PairingAnswer& pair) {
  const Language language = s.voice.language;
  if (pair.pairing == Pairing::kMatches) return say(Msg::kPairMatches, language, pair.recorded);
  if (pair.pairing == Pairing::kNotRecorded) return std::string(text(Msg::kPairNotRecorded, language));
  if (!pair.other_timber.empty()) return say(Msg::kPairElsewhere, language, pair.other_timber);
  return say(Msg::kPairOther, language, pair.recorded);
}

/// What the number on the plate in hand comes to.
void pairing_answer(ShownWork& s, const std::string& seat, const Claim& found) {
  const PairingAnswer pair = check_pairing(s.context.shop.shop(), s.timber.mark, seat, found.value);
  if (pair.pairing == Pairing::kMatches)
    fact(s.context.ui, "shop.pair.answer", pairing_text(s, pair), claim_text(s.context, found), true);
  else
    caution(s.context.ui, "shop.pair.answer", pairing_text(s, pair));
}

/// Sentences of WorkCaution's bits.
std::string cautions_text(int cautions, Language language) {
  std::string text;
  for (int bit = kKickback; bit <= kWorkHeld; bit *= 2) {
    if ((cautions & bit) == 0) continue;
    if (!text.empty()) text += ' ';
    text += work_caution_text(static_cast<WorkCaution>(bit), language);
  }
  return text;
}

/// Where whole sentences would take the half of a page: what they are about, until they are unfolded.
bool is_narrow(const Ui& ui) {
  constexpr float kNarrow = 320;  // of the column: a phone 320 px wide has less
  return ui.column.width < kNarrow;
}

std::string shown_cautions(const Ui& ui, int cautions, bool open) {
  if (open || !is_narrow(ui)) return cautions_text(cautions, ui.language);
  std::string heads;
  for (int bit = kKickback; bit <= kWorkHeld; bit *= 2) {
    if ((cautions & bit) == 0) continue;
    if (!heads.empty()) heads += " · ";
    heads += work_caution_head(static_cast<WorkCaution>(bit), ui.language);
  }
  return heads;
}

}  // namespace

Event event_of(const ShownWork& s, EventAction action, std::string_view step, std::string value) {
  Event event;
  event.action = action;
  event.timber = s.timber.mark;
  event.step = step;
  event.value = std::move(value);
  return event;
}

HoldAt hold_of(const ShownWork& s) {
  if (s.state == nullptr) return {};
  for (const StepState& step : s.state->steps)
    if (const Claim* hold = step.find(EventAction::kHeld)) return {&step, hold};
  return {};
}

void hold_part(ShownWork& s) {
  Context& context = s.context;
  Ui& ui = context.ui;
  const auto [step, hold] = hold_of(s);
  if (hold == nullptr) return;
  const std::string who = hold->who.empty() ? std::string(context.say(Msg::kShopNobody)) : hold->who;
  std::string why = hold->note.empty() ? hold->value : hold->note;
  if (const auto reading = read_reading(hold->value))
    why = say(Msg::kShopMeasured, ui.language,
              {{"measured", say_length(reading->measured, s.voice)},
               {"wanted", say_length(reading->wanted, s.voice)},
               {"tolerance", say_length(reading->tolerance, s.voice)}});
  const auto held = std::find_if(s.work.steps.begin(), s.work.steps.end(),
                                 [&, at = step](const WorkStep& w) { return w.id == at->step; });
  if (held != s.work.steps.end()) why = step_text(*held, ui.language) + " · " + why;
  caution(ui, "shop.hold",
          say(Msg::kShopStepHeld, ui.language, why + " · " + who + ", " + clock_text(context, hold->wall)));
  if (const auto reason =
          text_field(ui, "shop.release_why", context.say(Msg::kShopReleaseWhy), context.shop_memory.reason))
    context.shop_memory.reason = reason->substr(0, kLongestEventNote);
  if (context.kit.settings.who.empty() || context.shop_memory.reason.empty())
    return note(ui, "shop.release_needs", context.say(Msg::kShopReleaseNeeds));
  if (!hold_row(context, "shop.release", context.say(Msg::kShopRelease))) return;
  Event event = event_of(s, EventAction::kReleased, step->step, id_text(hold->id));
  event.note = context.shop_memory.reason;
  if (tell(context, std::move(event))) context.shop_memory.reason.clear();
}

void flags_part(ShownWork& s, std::string_view step) {
  int n = 0;
  for (const StepFlag& flag : s.work.progress.flags) {
    if (!step.empty() && flag.step != step) continue;
    caution(s.context.ui, "shop.flag." + std::to_string(n++), flag_text(flag, s.voice));
  }
}

bool plate_stops(ShownWork& s, const WorkStep& step) {
  const auto trouble = plate_trouble(s.context.shop.shop(), s.timber.mark, s.work.steps, step);
  if (!trouble) return false;
  const Language language = s.voice.language;
  const auto said = [&](Msg msg) {
    return say(msg, language,
               {{"plate", trouble->plate}, {"right", trouble->recorded}, {"other", trouble->other_timber}});
  };
  std::string text = said(trouble->twice ? Msg::kPlateTwice : Msg::kPlateWrong);
  if (!trouble->twice && !trouble->recorded.empty()) text += ' ' + said(Msg::kPlateRight);
  if (!trouble->twice && !trouble->other_timber.empty()) text += ' ' + said(Msg::kPlateElsewhere);
  caution(s.context.ui, "shop.plate_stops", text);
  return true;
}

void cautions_part(ShownWork& s, const WorkStep& step, const std::string& key) {
  const int cautions = step.cautions & ~kAtEveryTool;
  if (cautions == 0) return;
  Ui& ui = s.context.ui;
  bool& open = s.context.shop_memory.cautioned.blade_open;
  if (!is_narrow(ui)) return caution(ui, key + ".caution", cautions_text(cautions, ui.language));
  if (caution_row(ui, key + ".caution", shown_cautions(ui, cautions, open), open)) open = !open;
}

void timber_cautions(ShownWork& s) {
  std::array<int, kWorkplaceWords.size()> at{};
  int all = 0;
  for (const WorkStep& step : s.work.steps) {
    at[static_cast<std::size_t>(step.place)] |= step.cautions & ~kAtEveryTool;
    all |= step.cautions;
  }
  if ((all & kAtEveryTool) == 0) return;
  Ui& ui = s.context.ui;
  ShopMemory::Cautioned& kept = s.context.shop_memory.cautioned;
  if (kept.timber != s.timber.mark) kept = {s.timber.mark, {}, false, false};
  if (caution_row(ui, "shop.cautions", shown_cautions(ui, all & kAtEveryTool, kept.open), kept.open))
    kept.open = !kept.open;
  for (std::size_t i = 0; kept.open && i < at.size(); ++i)
    if (at[i] != 0)
      caution(ui, "shop.cautions." + std::string(kWorkplaceWords[i]),
              std::string(workplace_text(static_cast<Workplace>(i), ui.language)) + ": " +
                  cautions_text(at[i], ui.language));
}

void first_card_cautions(ShownWork& s, const WorkStep& step) {
  ShopMemory::Cautioned& kept = s.context.shop_memory.cautioned;
  if (kept.timber != s.timber.mark) kept = {s.timber.mark, step.id, false, false};
  if (kept.step == step.id) timber_cautions(s);
}

void tick_step(ShownWork& s, const WorkStep& step) {
  if (tell(s.context, event_of(s, EventAction::kDone, step.id, numbers_text(step.numbers))))
    s.context.toast(say(Msg::kShopTicked, s.voice.language, step_text(step, s.voice.language)), false);
}

void measure_part(ShownWork& s, const WorkStep& step) {
  if (!step.tolerance) return;
  Context& context = s.context;
  Ui& ui = context.ui;
  const std::string key = "shop.measure." + step.id;
  const StepState* told = s.told(step.id);
  const Claim* measured = told == nullptr ? nullptr : told->find(EventAction::kMeasured);
  const auto reading = measured == nullptr ? std::nullopt : std::optional(read_reading(measured->value));
  const Length shown = reading && *reading ? (*reading)->measured : step.wanted;
  fact(ui, key + ".wanted", context.say(Msg::kShopWanted),
       say_length(step.wanted, s.voice) + " ± " + say_length(*step.tolerance, s.voice));
  if (given(ui, key, context.say(Msg::kShopMeasure), measured == nullptr ? "–" : say_length(shown, s.voice),
            context.keypad.is_open(key)))
    context.keypad.open_length(key, context.say(Msg::kShopMeasure), shown);
  if (const auto length = context.keypad.take_length(key))
    tell(context, event_of(s, EventAction::kMeasured, step.id, reading_text({*length, step.wanted, *step.tolerance})));
}

void stop_part(ShownWork& s, std::string_view step) {
  if (hold_of(s).claim != nullptr) return;
  Context& context = s.context;
  Ui& ui = context.ui;
  const std::string_view title = context.say(step.empty() ? Msg::kShopHold : Msg::kShopHoldStep);
  // Seldom wanted, it stands in one quiet line until it is.
  std::string what = s.timber.mark;
  (what += '|') += step;
  std::string& stopping = context.shop_memory.stopping;
  if (fold_row(ui, "shop.stop", title, {}, stopping == what)) {
    stopping = stopping == what ? std::string{} : what;
    context.shop_memory.reason.clear();
  }
  if (stopping != what) return;
  const std::string_view reasons[] = {context.say(Msg::kHoldCheck), context.say(Msg::kHoldTwist),
                                      context.say(Msg::kHoldShort), context.say(Msg::kHoldPlate)};
  const auto known = std::find(std::begin(reasons), std::end(reasons), context.shop_memory.reason);
  const int chosen = known == std::end(reasons) ? -1 : static_cast<int>(known - std::begin(reasons));
  if (const auto picked = choice(ui, "shop.hold_reason", context.say(Msg::kShopHoldWhy), reasons, chosen))
    context.shop_memory.reason = reasons[static_cast<std::size_t>(*picked)];
  if (const auto why = text_field(ui, "shop.hold_why", context.say(Msg::kHoldOther), context.shop_memory.reason))
    context.shop_memory.reason = why->substr(0, kLongestEventNote);
  if (context.shop_memory.reason.empty()) return;
  if (!hold_row(context, "shop.hold_now", title)) return;
  Event event = event_of(s, EventAction::kHeld, step);
  event.note = context.shop_memory.reason;
  if (!tell(context, std::move(event))) return;
  context.shop_memory.reason.clear();
  stopping.clear();
  context.toast(say(Msg::kShopNowHeld, context.ui.language, s.timber.mark), false);
}

void pairing_part(ShownWork& s, const WorkStep& step) {
  const WorkStep* seated = plate_step(s.work.steps, step);
  if (seated == nullptr) return;
  const std::string& seat = seated->id;
  Context& context = s.context;
  Ui& ui = context.ui;
  const StepState* told = s.told(seat);
  const Claim* found = told == nullptr ? nullptr : told->find(EventAction::kPaired);
  if (step.id != seat) {  // asked once, where the plate is seated
    if (found != nullptr) pairing_answer(s, seat, *found);
    const bool right =
        found != nullptr &&
        check_pairing(context.shop.shop(), s.timber.mark, seat, found->value).pairing == Pairing::kMatches;
    if (!right && list_row(ui, "shop.pair.ask", context.say(Msg::kPairTitle), step_text(*seated, ui.language)))
      context.pages.push(shop_card_page(s.timber.mark, seat));
    return;
  }
  heading(ui, "shop.pair", context.say(Msg::kPairTitle));
  const auto number = text_field(ui, "shop.pair.number", context.say(Msg::kPairNumber),
                                 found == nullptr ? std::string{} : found->value);
  if (number && !number->empty())
    tell(context, event_of(s, EventAction::kPaired, seat, number->substr(0, kLongestValue)));
  if (found == nullptr) return note(ui, "shop.pair.how", context.say(Msg::kPairHow));
  pairing_answer(s, seat, *found);
}

}  // namespace bentbook::screens
