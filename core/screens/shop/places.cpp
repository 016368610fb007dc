#include "screens/shop/places.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "frame/keys.h"
#include "screens/shop/card.h"
#include "screens/shop/form.h"
#include "screens/shop/timber.h"
#include "words/frame_text.h"
#include "words/frame_words.h"
#include "words/steps/saw_scale.h"

namespace bentbook::screens {
namespace {

/// A workplace as it is shown.
struct ShownPlace {
  Context& context;
  const ShownFrame& shown;
  const ShopMemory::Work& work;
  Voice voice;
  [[nodiscard]] const TimberWork& on(const WaitingCut& cut) const {
    return work.timbers[static_cast<std::size_t>(cut.work)];
  }
  [[nodiscard]] const WorkStep& step(const WaitingCut& cut) const {
    return on(cut).steps[static_cast<std::size_t>(cut.step)];
  }
  [[nodiscard]] const std::string& mark(const WaitingCut& cut) const {
    return shown.frame()->timbers[static_cast<std::size_t>(on(cut).timber)].mark;
  }
  /// The saw's numbers stand over its group.
  [[nodiscard]] std::string number_of(const WorkStep& step) const {
    if (step.place == Workplace::kSaw || step.numbers.empty()) return {};
    return step_number_from_text(step.numbers[0], voice.language) + ": " + step_value_text(step.numbers[0], voice);
  }
};

/// Whether what a row folds is open. `of`: what is folded, in words that stay while others are ticked. `at_first`: as
/// it comes.
bool unfolded(Context& context, const std::string& key, const std::string& of, const std::string& title,
              const std::string& second, bool at_first) {
  ShopMemory::Folded& kept = context.shop_memory.folded;
  if (kept.place != context.subject) kept = {context.subject, {}};
  const auto told = kept.open.find(of);
  const bool open = told == kept.open.end() ? at_first : told->second;
  if (!fold_row(context.ui, key, title, second, open)) return open;
  kept.open[of] = !open;
  return !open;
}

void waiting_row(const ShownPlace& s, const WaitingCut& cut, const std::string& prefix) {
  const WorkStep& step = s.step(cut);
  if (list_row(s.context.ui, prefix + "." + s.mark(cut) + "." + step.id,
               s.mark(cut) + " · " + step_text(step, s.voice.language), s.number_of(step)))
    s.context.pages.push(shop_card_page(s.mark(cut), step.id));
}

/// The same on many timbers: ticked with one hold when the last of them is done.
void tick_all(const ShownPlace& s, std::span<const WaitingCut> cuts, const std::string& key) {
  Context& context = s.context;
  const auto count = static_cast<std::int64_t>(cuts.size());
  if (count < 2 || !hold_row(context, key + ".all", say_count(Msg::kShopHoldAll, context.ui.language, count))) return;
  for (const WaitingCut& cut : cuts) {
    const WorkStep& step = s.step(cut);
    Event event;
    event.action = EventAction::kDone;
    event.timber = s.mark(cut);
    event.step = step.id;
    event.value = numbers_text(step.numbers);
    if (!tell(context, std::move(event))) return;
  }
  context.toast(say_count(Msg::kShopTickedAll, context.ui.language, count), false);
}

/// The same on several timbers is one row that they are unfolded from.
void waiting_rows(const ShownPlace& s, std::span<const WaitingCut> cuts, const std::string& prefix, Waiting when) {
  Ui& ui = s.context.ui;
  int n = 0;
  for (const std::vector<WaitingCut>& alike : alike_steps(*s.shown.frame(), s.work.timbers, cuts)) {
    if (alike.size() == 1) {
      waiting_row(s, alike.front(), prefix);
      continue;
    }
    WorkStep step = s.step(alike.front());
    std::vector<std::string> marks;
    marks.reserve(alike.size());
    for (const WaitingCut& cut : alike) {
      if (marks.empty() || marks.back() != s.mark(cut)) marks.push_back(s.mark(cut));
      if (s.step(cut).mate != step.mate) step.mate.clear();
    }
    const std::size_t count = step.place == Workplace::kSaw ? alike.size() : marks.size();
    const std::string title = marks_in_short(std::move(marks), s.voice) + " · " + step_text(step, ui.language);
    std::string second = s.number_of(step);
    if (!second.empty()) second += " · ";
    second += say_count(step.place == Workplace::kSaw ? Msg::kWorkplaceCuts : Msg::kWorkplaceTimbers, ui.language,
                        static_cast<std::int64_t>(count));
    // All that makes them alike, and whether they wait: what is ticked meanwhile changes none of it.
    step.mate.clear();
    const Timber& on = s.shown.frame()->timbers[static_cast<std::size_t>(s.on(alike.front()).timber)];
    const std::string of = std::string(keys::word(keys::kTimberKind, on.kind)) + '|' +
                           section_text(on.wood.nominal, s.voice) + '|' + step_text(step, ui.language) + '|' +
                           numbers_text(step.numbers) + (when == Waiting::kLater ? "|later" : "");
    if (!unfolded(s.context, prefix + ".alike." + std::to_string(n++), of, title, second, false)) continue;
    const Column whole = ui.column;
    constexpr float kIn = 16;
    ui.column.x += kIn;
    ui.column.width -= kIn;
    // A plate is matched to its own end, a measure taken on its own timber: those are ticked on their cards.
    const bool one_by_one = step.work == StepWork::kSeatPlate || step.tolerance.has_value();
    if (step.place != Workplace::kSaw && when == Waiting::kNow && !one_by_one)
      tick_all(s, alike, prefix + ".alike." + std::to_string(n - 1));
    for (const WaitingCut& cut : alike) waiting_row(s, cut, prefix);
    ui.column.x = whole.x;
    ui.column.width = whole.width;
  }
}

/// Where nothing can be done yet: what is to be done first and on how many timbers, a row for each such work that leads
/// to where it is done.
void first_rows(const ShownPlace& s, std::span<const WaitingCut> later) {
  Ui& ui = s.context.ui;
  std::map<StepWork, std::pair<Workplace, std::set<int>>> first;  // timbers by the work that holds them up
  for (const WaitingCut& cut : later) {
    const TimberWork& on = s.on(cut);
    const WorkStep& step = on.steps[static_cast<std::size_t>(waits_for(on, cut.step))];
    auto& [place, timbers] = first[step.work];
    place = step.place;
    timbers.insert(on.timber);
  }
  for (const auto& [work, held] : first) {
    const std::string_view word = kWorkplaceWords[static_cast<std::size_t>(held.first)];
    const std::string timbers =
        say_count(Msg::kWorkplaceTimbers, ui.language, static_cast<std::int64_t>(held.second.size()));
    const std::string title =
        say(Msg::kShopFirst, ui.language, {{"work", work_text(work, ui.language)}, {"timbers", timbers}});
    if (list_row(ui, "shop.first." + std::string(kStepWorkWords[static_cast<std::size_t>(work)]), title))
      s.context.pages.push(shop_place_page(std::string(word)));
  }
}

/// What comes after work elsewhere, in one row that says how much and where that work is. True: it is open.
bool later_row(const ShownPlace& s, std::span<const WaitingCut> later) {
  if (later.empty()) return false;
  std::array<bool, kWorkplaceWords.size()> places{};
  for (const WaitingCut& cut : later) {
    const TimberWork& on = s.on(cut);
    places[static_cast<std::size_t>(on.steps[static_cast<std::size_t>(waits_for(on, cut.step))].place)] = true;
  }
  std::string second;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i]) continue;
    if (!second.empty()) second += " · ";
    second += workplace_text(static_cast<Workplace>(i), s.voice.language);
  }
  const auto count = static_cast<std::int64_t>(later.size());
  return unfolded(s.context, "shop.later", "later", say_count(Msg::kShopWaitFirst, s.voice.language, count), second,
                  false);
}

/// What a group's cuts are set to; a word where all is square.
void setup_part(Context& context, const ShownFrame& shown, const SawGroup& group, const std::string& key) {
  Ui& ui = context.ui;
  if (group.along) return body(ui, key + ".along", context.say(Msg::kShopAlong));
  if (group.setup.table == 0 && group.setup.tilt == 0) return body(ui, key + ".square", context.say(Msg::kCardSquare));
  const Saw& saw = saw_of(shown.book);
  const bool on_table = saw.kind == SawKind::kChainsawBar;
  const auto scale = [&](std::string_view part, Msg name, std::int64_t hundredths) {
    const ScaleWords words = scale_words(saw, hundredths, voice_of(context));
    answer(ui, key + std::string(part), context.say(name), words.reads, words.exactly);
  };
  const auto table = [&](Ui&) { scale(".table", on_table ? Msg::kSheetTable : Msg::kSheetGuide, group.setup.table); };
  const auto tilt = [&](Ui&) { scale(".tilt", Msg::kSheetTilt, group.setup.tilt); };
  if (group.setup.tilt == 0) return table(ui);
  if (group.setup.table == 0) return tilt(ui);
  side_by_side(ui, 16, 120, table, tilt);
}

/// `n`: how many settings stand over them on the page.
void saw_groups(const ShownPlace& s, Waiting when, int& n) {
  const std::vector<SawGroup> groups = waiting_for_saw(s.work.timbers, when);
  Context& context = s.context;
  Ui& ui = context.ui;
  if (groups.empty()) return;
  body(ui, n == 0 ? "shop.settings" : "shop.settings.later",
       say_count(Msg::kWorkplaceSettings, ui.language, static_cast<std::int64_t>(groups.size())));
  for (const SawGroup& group : groups) {
    const std::string key = "shop.setting." + std::to_string(n++);
    setup_part(context, s.shown, group, key);
    if (group.setup.stop != 0)
      fact(ui, key + ".stop", step_number_text(StepNumberName::kStop, ui.language),
           say_inches(static_cast<double>(group.setup.stop) / 64, s.voice));
    note(ui, key + ".count", say_count(Msg::kWorkplaceCuts, ui.language, static_cast<std::int64_t>(group.cuts.size())));
    tick_all(s, group.cuts, key);
    waiting_rows(s, group.cuts, key, when);
    space(ui, 16);
  }
}

void place_screen(Context& context) {
  shop_page(context, "shop.place.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    const auto word = std::find(kWorkplaceWords.begin(), kWorkplaceWords.end(), context.subject);
    if (word == kWorkplaceWords.end()) return;
    const auto place = static_cast<Workplace>(word - kWorkplaceWords.begin());
    const ShownPlace s{context, shown, shop_work_of(context, shown), voice_of(context)};
    heading(ui, "shop.place.title", workplace_text(place, ui.language));
    const std::vector<WaitingCut> now = waiting_at(s.work.timbers, place, Waiting::kNow);
    const std::vector<WaitingCut> later = waiting_at(s.work.timbers, place, Waiting::kLater);
    if (now.empty() && later.empty()) return body(ui, "shop.wait.none", context.say(Msg::kShopNothingWaits));
    int settings = 0;
    if (place == Workplace::kSaw)
      saw_groups(s, Waiting::kNow, settings);
    else
      waiting_rows(s, now, "shop.wait", Waiting::kNow);
    if (now.empty()) first_rows(s, later);
    if (!later_row(s, later)) return;
    if (place == Workplace::kSaw)
      saw_groups(s, Waiting::kLater, settings);
    else
      waiting_rows(s, later, "shop.wait.later", Waiting::kLater);
  });
}

}  // namespace

Page shop_place_page(std::string place) { return {"shop.place", Msg::kShopByPlace, place_screen, std::move(place)}; }

}  // namespace bentbook::screens
