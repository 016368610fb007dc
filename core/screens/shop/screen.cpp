#include "screens/shop/screen.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "screens/form/drawing_form.h"
#include "screens/shop/bench.h"
#include "screens/shop/form.h"
#include "screens/shop/pass.h"
#include "screens/shop/places.h"
#include "screens/shop/rules.h"
#include "screens/shop/stock/sticks.h"
#include "screens/shop/timber.h"
#include "screens/shop/writers.h"
#include "shop/log/conflicts.h"
#include "shop/plate_bench.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

constexpr int kMostConflicts = 100;  // as many as anybody reads, and as a page draws at once

std::string number(int n) { return std::to_string(n); }

/// "3 of 12" for each of the four ticks, the crew's own measure of how far the building is.
void ticks_so_far(Context& context, const ShopCount& count) {
  Abreast abreast(context.ui, 16, kRowAbreast);
  for (std::size_t i = 0; i < kTickWords.size(); ++i) {
    abreast.next();
    fact(context.ui, "shop.tick." + std::string(kTickWords[i]), tick_text(static_cast<Tick>(i), context.ui.language),
         number(count.ticked[i]) + " / " + number(count.timbers), true);
  }
}

void troubles(Context& context, const ShopMemory::Work& work, const ShopCount& count) {
  Ui& ui = context.ui;
  if (count.held > 0 && list_row(ui, "shop.held", say_count(Msg::kShopHeld, ui.language, count.held)))
    context.pages.push(shop_bent_page("held"));
  if (work.conflicts.empty()) return;
  const auto n = static_cast<std::int64_t>(work.conflicts.size());
  if (list_row(ui, "shop.conflicts", say_count(Msg::kShopConflicts, ui.language, n)))
    context.pages.push(shop_conflicts_page());
}

void by_workplace(Context& context, const ShopMemory::Work& work) {
  Ui& ui = context.ui;
  heading(ui, "shop.by_place", context.say(Msg::kShopByPlace));
  const std::array<PlaceCount, 5> counts = count_by_workplace(work.timbers);
  Abreast abreast(ui, 16, kRowAbreast);
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const auto there = [&](const WorkStep& step) { return step.place == static_cast<Workplace>(i); };
    if (std::none_of(work.timbers.begin(), work.timbers.end(),
                     [&](const TimberWork& w) { return std::any_of(w.steps.begin(), w.steps.end(), there); }))
      continue;
    const std::string key = "shop.place." + std::string(kWorkplaceWords[i]);
    const std::string second = counts[i].steps == 0
                                   ? std::string(context.say(Msg::kShopDoneAll))
                                   : say(Msg::kShopPlaceRow, ui.language,
                                         {{"steps", number(counts[i].steps)}, {"next", number(counts[i].next)}});
    abreast.next();
    if (list_row(ui, key, workplace_text(static_cast<Workplace>(i), ui.language), second))
      context.pages.push(shop_place_page(std::string(kWorkplaceWords[i])));
  }
}

void by_bent(Context& context, const Frame& frame, const ShopMemory::Work& work) {
  Ui& ui = context.ui;
  heading(ui, "shop.by_bent", context.say(Msg::kShopByBent));
  Abreast abreast(ui, 16, kRowAbreast);
  for (const BentCount& bent : count_by_bent(frame, work.timbers)) {
    const ShopCount& c = bent.count;
    const std::string title = bent.bent < 0 ? std::string(context.say(Msg::kListNoBent))
                                            : say(Msg::kViewBent, ui.language, number(bent.bent));
    const std::string second = say(Msg::kShopBentRow, ui.language,
                                   {{"cut", number(c.ticked[0])},
                                    {"joined", number(c.ticked[1])},
                                    {"fitted", number(c.ticked[2])},
                                    {"ready", number(c.ticked[3])},
                                    {"all", number(c.timbers)}});
    abreast.next();
    if (list_row(ui, "shop.bent." + number(bent.bent), title, second))
      context.pages.push(shop_bent_page(number(bent.bent)));
  }
}

std::string progress_text(const Context& context, const TimberWork& work) {
  std::string out;
  if (work.progress.held) out += std::string(context.say(Msg::kShopIsHeld)) + " · ";
  for (std::size_t i = kTickWords.size(); i-- > 0;) {
    if (!work.progress.has(static_cast<Tick>(i))) continue;
    out += std::string(tick_text(static_cast<Tick>(i), context.ui.language));
    break;
  }
  if (work.progress.next >= 0) {
    if (!out.empty() && !out.ends_with("· ")) out += " · ";
    out += std::string(context.say(Msg::kShopNext)) + ": " +
           step_text(work.steps[static_cast<std::size_t>(work.progress.next)], context.ui.language);
  }
  return out;
}

void bent_screen(Context& context) {
  shop_page(context, "shop.bent.page", [&](const ShownFrame& shown) {
    const ShopMemory::Work& work = shop_work_of(context, shown);
    const Frame& frame = *shown.frame();
    Abreast abreast(context.ui, 16, kRowAbreast);
    for (const TimberWork& w : work.timbers) {
      const Timber& timber = frame.timbers[static_cast<std::size_t>(w.timber)];
      const bool wanted = context.subject == "all" || (context.subject == "held" && w.progress.held) ||
                          context.subject == number(timber.place.bent);
      if (!wanted) continue;
      abreast.next();
      if (list_row(context.ui, "shop.timber." + timber.mark,
                   timber.mark + " · " + std::string(kind_name(timber.kind, context.ui.language)),
                   progress_text(context, w)))
        context.pages.push(shop_timber_page(timber.mark));
    }
  });
}

void conflicts_screen(Context& context) {
  shop_page(context, "shop.conflicts.page", [&](const ShownFrame& shown) {
    int n = 0;
    const std::vector<Conflict>& conflicts = shop_work_of(context, shown).conflicts;
    for (const Conflict& conflict : conflicts) {
      if (n == kMostConflicts) break;
      const std::string key = "shop.conflict." + number(n++);
      caution(context.ui, key, conflict_text(conflict, voice_of(context)));
      if (!conflict.timber.empty() && button(context.ui, key + ".open", conflict.timber))
        context.pages.push(shop_timber_page(conflict.timber));
    }
    if (conflicts.size() > static_cast<std::size_t>(n))
      note(context.ui, "shop.conflicts.more",
           say(Msg::kFrameMoreFindings, context.ui.language, number(static_cast<int>(conflicts.size()) - n)));
    if (n == 0) body(context.ui, "shop.conflicts.none", context.say(Msg::kShopAgreed));
  });
}

void bench_row(Context& context) {
  if (!list_row(context.ui, "shop.bench", context.say(Msg::kBenchTitle), context.say(Msg::kBenchNote))) return;
  // Nothing was entered there yet: it opens with what is usual in the units that are chosen.
  const SizedBy by = is_metric(context.style().form) ? SizedBy::kMillimetres : SizedBy::kInches;
  const SizedBy other = by == SizedBy::kInches ? SizedBy::kMillimetres : SizedBy::kInches;
  if (context.places.bench == usual_bench(other)) {
    Places next = context.places;
    next.bench = usual_bench(by);
    context.change(std::move(next));
  }
  context.pages.push(shop_bench_page());
}

void crew(Context& context) {
  Ui& ui = context.ui;
  heading(ui, "shop.crew", context.say(Msg::kShopCrew));
  if (const auto who = text_field(ui, "shop.who", context.say(Msg::kShopWho), context.kit.settings.who)) {
    Kit kit = context.kit;
    kit.settings.who = who->substr(0, kLongestWho);
    context.change_kit(std::move(kit));
  }
  Abreast abreast(ui, 16, kRowAbreast);
  abreast.next();
  if (list_row(ui, "shop.pass", context.say(Msg::kPassTitle), context.say(Msg::kPassNote)))
    context.pages.push(shop_pass_page());
  abreast.next();
  if (list_row(ui, "shop.writers", context.say(Msg::kWritersTitle), context.say(Msg::kWritersNote)))
    context.pages.push(shop_writers_page());
  abreast.next();
  if (list_row(ui, "shop.rules", context.say(Msg::kRulesTitle), context.say(Msg::kRulesNote)))
    context.pages.push(shop_rules_page());
}

}  // namespace

void shop_screen(Context& context) {
  Ui& ui = context.ui;
  bool with_book = false;
  begin_scroll(ui, "shop.page", context.page);
  shop_content(context, [&](const ShownFrame& shown) {
    const ShopMemory::Work& work = shop_work_of(context, shown);
    const ShopCount count = count_all(work.timbers);
    troubles(context, work, count);
    heading(ui, "shop.left", context.say(Msg::kShopLeft));
    ticks_so_far(context, count);
    {
      Abreast abreast(ui, 16, kRowAbreast);
      abreast.next();
      if (list_row(ui, "shop.all", context.say(Msg::kShopAllTimbers),
                   say_count(Msg::kFrameTimbersNote, ui.language, count.timbers)))
        context.pages.push(shop_bent_page("all"));
      abreast.next();
      if (list_row(ui, "shop.stock", context.say(Msg::kStockTitle), context.say(Msg::kStockNote)))
        context.pages.push(shop_stock_page());
      abreast.next();
      bench_row(context);
    }
    with_book = true;
    by_workplace(context, work);
    by_bent(context, *shown.frame(), work);
  });
  if (!with_book) bench_row(context);
  if (context.shop.state() == ShopDesk::State::kOpen) crew(context);
  space(ui, 24);
  end_scroll(ui);
}

Page shop_bent_page(std::string label) { return {"shop.bent", Msg::kShopLeft, bent_screen, std::move(label)}; }
Page shop_conflicts_page() { return {"shop.conflicts", Msg::kShopConflictsTitle, conflicts_screen}; }

}  // namespace bentbook::screens
