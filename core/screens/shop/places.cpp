#include "screens/shop/places.h"

#include <algorithm>
#include <string>

#include "screens/shop/card.h"
#include "screens/shop/form.h"
#include "screens/shop/timber.h"
#include "words/frame_words.h"
#include "words/steps/saw_scale.h"

namespace bentbook::screens {
namespace {

void waiting_row(Context& context, const ShownFrame& shown, const TimberWork& work, const WorkStep& step,
                 std::string_view prefix = "shop.wait") {
  const Timber& timber = shown.frame()->timbers[static_cast<std::size_t>(work.timber)];
  const Voice voice = voice_of(context);
  // The saw's numbers stand over its group.
  std::string second;
  if (step.place != Workplace::kSaw && !step.numbers.empty())
    second = step_number_from_text(step.numbers[0], voice.language) + ": " +
             step_value_text(step.numbers[0], voice);
  if (list_row(context.ui, std::string(prefix) + "." + timber.mark + "." + step.id,
               timber.mark + " · " + step_text(step, voice.language), second))
    context.pages.push(shop_card_page(timber.mark, step.id));
}

/// One setting, many alike timbers: ticked with one hold when the last of them is cut.
void tick_all(Context& context, const ShownFrame& shown, const ShopMemory::Work& work, const SawGroup& group,
              const std::string& key) {
  const auto count = static_cast<std::int64_t>(group.cuts.size());
  if (count < 2 || !hold_row(context, key + ".all", say_count(Msg::kShopHoldAll, context.ui.language, count))) return;
  for (const WaitingCut& cut : group.cuts) {
    const TimberWork& on = work.timbers[static_cast<std::size_t>(cut.work)];
    const WorkStep& step = on.steps[static_cast<std::size_t>(cut.step)];
    Event event;
    event.action = EventAction::kDone;
    event.timber = shown.frame()->timbers[static_cast<std::size_t>(on.timber)].mark;
    event.step = step.id;
    event.value = numbers_text(step.numbers);
    if (!tell(context, std::move(event))) return;
  }
  context.toast(say_count(Msg::kShopTickedAll, context.ui.language, count), false);
}

/// What a group's cuts are set to; a word where all is square.
void setup_part(Context& context, const ShownFrame& shown, const SawGroup& group, const std::string& key) {
  Ui& ui = context.ui;
  if (group.along) return body(ui, key + ".along", context.say(Msg::kShopAlong));
  if (group.setup.table == 0 && group.setup.tilt == 0) return body(ui, key + ".square", context.say(Msg::kCardSquare));
  const Saw& saw = saw_of(shown.book);
  const auto scale = [&](std::string_view part, Msg name, std::int64_t hundredths) {
    const ScaleWords words = scale_words(saw, hundredths, voice_of(context));
    answer(ui, key + std::string(part), context.say(name), words.reads, words.exactly);
  };
  const auto table = [&](Ui&) { scale(".table", Msg::kSheetTable, group.setup.table); };
  const auto tilt = [&](Ui&) { scale(".tilt", Msg::kSheetTilt, group.setup.tilt); };
  if (group.setup.tilt == 0) return table(ui);
  if (group.setup.table == 0) return tilt(ui);
  side_by_side(ui, 16, 120, table, tilt);
}

void saw_part(Context& context, const ShownFrame& shown, const ShopMemory::Work& work) {
  Ui& ui = context.ui;
  const Voice voice = voice_of(context);
  const std::vector<SawGroup> groups = waiting_for_saw(work.timbers);
  if (groups.empty()) return body(ui, "shop.wait.none", context.say(Msg::kShopNothingWaits));
  body(ui, "shop.settings", say_count(Msg::kWorkplaceSettings, ui.language, static_cast<std::int64_t>(groups.size())));
  int n = 0;
  for (const SawGroup& group : groups) {
    const std::string key = "shop.setting." + std::to_string(n++);
    setup_part(context, shown, group, key);
    if (group.setup.stop != 0)
      fact(ui, key + ".stop", step_number_text(StepNumberName::kStop, ui.language),
           say_inches(static_cast<double>(group.setup.stop) / 64, voice));
    note(ui, key + ".count", say_count(Msg::kWorkplaceCuts, ui.language, static_cast<std::int64_t>(group.cuts.size())));
    tick_all(context, shown, work, group, key);
    for (const WaitingCut& cut : group.cuts) {
      const TimberWork& timber = work.timbers[static_cast<std::size_t>(cut.work)];
      waiting_row(context, shown, timber, timber.steps[static_cast<std::size_t>(cut.step)], key);
    }
    space(ui, 16);
  }
}

void place_screen(Context& context) {
  shop_page(context, "shop.place.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const auto word = std::find(kWorkplaceWords.begin(), kWorkplaceWords.end(), context.subject);
    if (word == kWorkplaceWords.end()) return;
    const auto place = static_cast<Workplace>(word - kWorkplaceWords.begin());
    const ShopMemory::Work& work = shop_work_of(context, shown);
    heading(ui, "shop.place.title", workplace_text(place, ui.language));
    if (place == Workplace::kSaw) return saw_part(context, shown, work);
    int waiting = 0;
    for (const TimberWork& timber : work.timbers)
      for (std::size_t i = 0; i < timber.steps.size(); ++i)
        if (timber.steps[i].place == place && !timber.progress.done[i] && !timber.progress.held) {
          ++waiting;
          waiting_row(context, shown, timber, timber.steps[i]);
        }
    if (waiting == 0) body(ui, "shop.wait.none", context.say(Msg::kShopNothingWaits));
  });
}

}  // namespace

Page shop_place_page(std::string place) { return {"shop.place", Msg::kShopByPlace, place_screen, std::move(place)}; }

}  // namespace bentbook::screens
