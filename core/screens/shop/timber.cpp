#include "screens/shop/timber.h"

#include <algorithm>
#include <map>
#include <string>

#include "screens/shop/codes.h"
#include "screens/shop/form.h"
#include "screens/timber/sheet.h"
#include "shop/log/conflicts.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

struct Shown {
  Context& context;
  const ShownFrame& frame;
  const TimberWork& work;
  const Timber& timber;
  const TimberState* state;
  Voice voice;
  [[nodiscard]] const StepState* told(std::string_view step) const {
    return state == nullptr ? nullptr : state->find(step);
  }
};

template <class Content>
void timber_page(Context& context, ItemKey key, std::string_view mark, Content&& content) {
  shop_page(context, key, [&](const ShownFrame& shown) {
    const ShopMemory::Work& work = shop_work_of(context, shown);
    const TimberWork* found = find_work(work, *shown.frame(), mark);
    if (found == nullptr) return body(context.ui, "shop.gone", context.say(Msg::kShopGone));
    content(Shown{context, shown, *found, shown.frame()->timbers[static_cast<std::size_t>(found->timber)],
                  context.shop.shop().find(mark), voice_of(context)});
  });
}

Event event_of(const Shown& s, EventAction action, std::string_view step = {}, std::string value = {}) {
  Event event;
  event.action = action;
  event.timber = s.timber.mark;
  event.step = step;
  event.value = std::move(value);
  return event;
}

/// The first hold on the timber or, where it is named, on that step.
struct HoldAt {
  const StepState* step = nullptr;
  const Claim* claim = nullptr;
};
HoldAt hold_of(const Shown& s) {
  if (s.state == nullptr) return {};
  for (const StepState& step : s.state->steps)
    if (const Claim* hold = step.find(EventAction::kHeld)) return {&step, hold};
  return {};
}

/// A hold stops the timber until somebody says by name why it may go on.
void hold_part(Shown& s) {
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

void flags_part(Shown& s, std::string_view step) {
  int n = 0;
  for (const StepFlag& flag : s.work.progress.flags) {
    if (!step.empty() && flag.step != step) continue;
    caution(s.context.ui, "shop.flag." + std::to_string(n++), flag_text(flag, s.voice));
  }
}

/// The numbers of a step: the first as large as can be, the rest below.
void numbers_part(Shown& s, const WorkStep& step, const std::string& key) {
  Ui& ui = s.context.ui;
  bool first = true;
  std::map<StepNumberName, int> times;
  for (const StepNumber& n : step.numbers) {
    std::string own = key + ".number." + std::string(kStepNumberWords[static_cast<std::size_t>(n.name)]);
    if (const int time = ++times[n.name]; time > 1) own += "." + std::to_string(time);
    const std::string name = step_number_from_text(n, ui.language);
    const std::string value = step_value_text(n.name, n.value, s.voice);
    if (first)
      answer(ui, own, name, value);
    else
      fact(ui, own, name, value);
    first = false;
  }
}

void cautions_part(Shown& s, const WorkStep& step, const std::string& key) {
  std::string text;
  for (int bit = kKickback; bit <= kWorkHeld; bit *= 2) {
    if ((step.cautions & bit) == 0) continue;
    if (!text.empty()) text += ' ';
    text += work_caution_text(static_cast<WorkCaution>(bit), s.voice.language);
  }
  if (!text.empty()) caution(s.context.ui, key + ".caution", text);
}

void tick_step(Shown& s, const WorkStep& step) {
  if (tell(s.context, event_of(s, EventAction::kDone, step.id, numbers_text(step.numbers))))
    s.context.toast(say(Msg::kShopTicked, s.voice.language, step_text(step, s.voice.language)), false);
}

void take_back(Shown& s, const WorkStep& step, const StepClaim& finish) {
  if (tell(s.context, event_of(s, EventAction::kTakenBack, finish.step, id_text(finish.claim->id))))
    s.context.toast(say(Msg::kShopTakenBack, s.voice.language, step_text(step, s.voice.language)), false);
}

/// A measure that the lead asked for: read off the tape, entered, held when it is out of tolerance.
void measure_part(Shown& s, const WorkStep& step) {
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

std::string step_state(const Shown& s, const WorkStep& step) {
  const std::vector<StepClaim> finishes = finishes_of(step, s.state);
  if (!finishes.empty()) return claim_text(s.context, *finishes.front().claim);
  return std::string(s.context.say(Msg::kShopStepOpen));
}

void next_part(Shown& s) {
  Ui& ui = s.context.ui;
  if (s.work.progress.next < 0) return body(ui, "shop.all_done", s.context.say(Msg::kShopDoneAll));
  const WorkStep& step = s.work.steps[static_cast<std::size_t>(s.work.progress.next)];
  const std::string title = step_text(step, ui.language);
  heading(ui, "shop.next", std::string(s.context.say(Msg::kShopNext)) + ": " + title);
  numbers_part(s, step, "shop.next");
  measure_part(s, step);
  cautions_part(s, step, "shop.next");
  if (hold_row(s.context, "shop.next.tick", say(Msg::kShopHoldToTick, ui.language, title))) tick_step(s, step);
  if (button(ui, "shop.next.open", s.context.say(Msg::kShopStepPicture)))
    s.context.pages.push(shop_step_page(s.timber.mark, step.id));
}

void four_ticks(Shown& s) {
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
    if (count.full()) continue;
    if (hold_row(s.context, key, say(Msg::kShopHoldToTick, ui.language, name))) {
      for (Event& event : tick_events(s.timber.mark, s.work.steps, s.work.progress, tick))
        if (!tell(s.context, std::move(event))) return;
      s.context.toast(say(Msg::kShopTicked, ui.language, name), false);
    }
  }
}

void steps_part(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "shop.steps", s.context.say(Msg::kShopSteps));
  int n = 0;
  for (const WorkStep& step : s.work.steps) {
    ++n;
    const std::string title = std::to_string(n) + ". " + step_text(step, ui.language);
    if (list_row(ui, "shop.step." + step.id, title, step_state(s, step)))
      s.context.pages.push(shop_step_page(s.timber.mark, step.id));
  }
}

void recorded(Shown& s, EventAction action, std::string_view step, const std::string& key, std::string_view label) {
  const StepState* told = s.told(step);
  const Claim* claim = told == nullptr ? nullptr : told->find(action);
  const auto text = text_field(s.context.ui, key, label, claim == nullptr ? std::string_view{} : claim->value);
  if (text && !text->empty() && (claim == nullptr || claim->value != *text))
    tell(s.context, event_of(s, action, step, text->substr(0, kLongestValue)));
}

/// What belongs to this timber and to no other: plates by their numbers, witness marks, the stock's lot.
void identity_part(Shown& s) {
  Ui& ui = s.context.ui;
  heading(ui, "shop.identity", s.context.say(Msg::kShopIdentity));
  recorded(s, EventAction::kStock, "", "shop.stock", s.context.say(Msg::kShopStock));
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

/// Holding the timber, or one step of it, until it is released.
void stop_part(Shown& s, std::string_view step) {
  if (hold_of(s).claim != nullptr) return;
  Context& context = s.context;
  Ui& ui = context.ui;
  const std::string_view title = context.say(step.empty() ? Msg::kShopHold : Msg::kShopHoldStep);
  heading(ui, "shop.stop", title);
  if (const auto why = text_field(ui, "shop.hold_why", context.say(Msg::kShopHoldWhy), context.shop_memory.reason))
    context.shop_memory.reason = why->substr(0, kLongestEventNote);
  if (context.shop_memory.reason.empty()) return;
  if (!hold_row(context, "shop.hold_now", title)) return;
  Event event = event_of(s, EventAction::kHeld, step);
  event.note = context.shop_memory.reason;
  if (tell(context, std::move(event))) context.shop_memory.reason.clear();
}

std::string pairing_text(const Shown& s, const PairingAnswer& pair) {
  const Language language = s.voice.language;
  if (pair.pairing == Pairing::kMatches) return say(Msg::kPairMatches, language, pair.recorded);
  if (pair.pairing == Pairing::kNotRecorded) return std::string(text(Msg::kPairNotRecorded, language));
  if (!pair.other_timber.empty()) return say(Msg::kPairElsewhere, language, pair.other_timber);
  return say(Msg::kPairOther, language, pair.recorded);
}

/// Is the plate in hand the one that was fitted here? Asked whenever it was away from its timber.
void pairing_part(Shown& s, const WorkStep& step) {
  const WorkStep* seated = plate_step(s.work.steps, step);
  if (seated == nullptr) return;
  const std::string& seat = seated->id;
  Context& context = s.context;
  Ui& ui = context.ui;
  heading(ui, "shop.pair", context.say(Msg::kPairTitle));
  const StepState* told = s.told(seat);
  const Claim* found = told == nullptr ? nullptr : told->find(EventAction::kPaired);
  const auto number = text_field(ui, "shop.pair.number", context.say(Msg::kPairNumber),
                                 found == nullptr ? std::string{} : found->value);
  if (number && !number->empty())
    tell(context, event_of(s, EventAction::kPaired, seat, number->substr(0, kLongestValue)));
  if (found == nullptr) return note(ui, "shop.pair.how", context.say(Msg::kPairHow));
  const PairingAnswer pair = check_pairing(context.shop.shop(), s.timber.mark, seat, found->value);
  if (pair.pairing == Pairing::kMatches)
    fact(ui, "shop.pair.answer", pairing_text(s, pair), claim_text(context, *found), true);
  else
    caution(ui, "shop.pair.answer", pairing_text(s, pair));
}

void timber_screen(Context& context) {
  timber_page(context, "shop.timber.page", context.subject, [](Shown s) {
    Ui& ui = s.context.ui;
    heading(ui, "shop.mark", s.timber.mark + " · " + std::string(kind_name(s.timber.kind, ui.language)));
    note(ui, "shop.section",
         section_text(s.timber.wood.nominal, s.voice) + " · " + say_inches(s.timber.length, s.voice));
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

// ── One step ──────────────────────────────────────────────────────────────────────────────────────────────────────

/// What of the timber is drawn large.
std::pair<double, double> stretch_of(const Shown& s, const WorkStep& step) {
  constexpr double kAround = 10;
  double from = 0, to = s.timber.length;
  if (step.on == WorkOn::kFeature && step.index >= 0) {
    const Feature& f = s.timber.features[static_cast<std::size_t>(step.index)];
    from = f.from;
    to = f.to;
  } else if (step.end) {
    from = to = *step.end == End::kA ? 0 : s.timber.length;
  } else {
    return {from, to};
  }
  return {std::max(0.0, std::min(from, to) - kAround), std::min(s.timber.length, std::max(from, to) + kAround)};
}

void picture_part(Shown& s, const WorkStep& step) {
  ShopMemory::Shown& kept = s.context.shop_memory.shown;
  const Saw& saw = saw_of(s.frame.book);
  if (kept.of != s.frame.solved || kept.mark != s.timber.mark || kept.saw != saw.name) {
    kept = {s.frame.solved, s.timber.mark, saw.name, solve_sheet(*s.frame.frame(), s.work.timber, saw), {}, {}};
    kept.step.clear();
  }
  if (kept.step != step.id) {
    kept.step = step.id;
    const auto [from, to] = stretch_of(s, step);
    kept.drawing = to - from >= s.timber.length ? whole_drawing(s.timber, kept.sheet)
                                                : stretch_drawing(s.timber, kept.sheet, from, to);
  }
  const auto words = [&](std::string_view key) -> bentbook::FigureText {
    const SheetFigure* figure = find_figure(kept.drawing, key);
    if (figure == nullptr) return {};
    const std::string said = sheet_figure_text(*figure, *s.frame.frame(), s.voice);
    return {said, said};
  };
  (void)drawing_form(s.context, "shop.picture", s.context.say(Msg::kSheetStretchPicture),
                     drawing_height(s.context, 300), kept.drawing.drawing, words);
}

void step_screen(Context& context) {
  const std::size_t bar = context.subject.find('|');
  const std::string mark = context.subject.substr(0, bar), id = context.subject.substr(bar + 1);
  timber_page(context, "shop.step.page", mark, [&](Shown s) {
    Ui& ui = s.context.ui;
    const auto found =
        std::find_if(s.work.steps.begin(), s.work.steps.end(), [&](const WorkStep& w) { return w.id == id; });
    if (found == s.work.steps.end()) return body(ui, "shop.step.gone", say(Msg::kShopStepGone, ui.language, id));
    const WorkStep& step = *found;
    const std::string title = step_text(step, ui.language);
    heading(ui, "shop.step.title", s.timber.mark + " · " + title);
    note(ui, "shop.step.place", workplace_text(step.place, ui.language));
    hold_part(s);
    flags_part(s, step.id);
    numbers_part(s, step, "shop.step");
    picture_part(s, step);
    measure_part(s, step);
    cautions_part(s, step, "shop.step");
    int n = 0;
    for (const StepClaim& finish : finishes_of(step, s.state)) {
      const std::string key = "shop.step.claim." + std::to_string(n++);
      fact(ui, key, worked_text(finish.claim->value, s.voice), claim_text(s.context, *finish.claim));
      if (hold_row(s.context, key + ".back", say(Msg::kShopHoldAgain, ui.language, title))) take_back(s, step, finish);
    }
    if (n == 0 && hold_row(s.context, "shop.step.tick", say(Msg::kShopHoldToTick, ui.language, title)))
      tick_step(s, step);
    if (n > 0 &&
        std::any_of(s.work.progress.flags.begin(), s.work.progress.flags.end(),
                    [&](const StepFlag& f) { return f.step == step.id; }) &&
        hold_row(s.context, "shop.step.anew", say(Msg::kShopHoldAnew, ui.language, title)))
      tick_step(s, step);
    pairing_part(s, step);
    stop_part(s, step.id);
  });
}

}  // namespace

Page shop_timber_page(std::string mark) { return {"shop.timber", Msg::kShopTimber, timber_screen, std::move(mark)}; }
Page shop_step_page(const std::string& mark, const std::string& step) {
  return {"shop.step", Msg::kShopStep, step_screen, mark + '|' + step};
}

}  // namespace bentbook::screens
