#include "screens/shop/form.h"

#include <utility>

#include "book/book.h"
#include "shop/log/conflicts.h"
#include "words/frame_words.h"

namespace bentbook::screens {

bool log_is_open(Context& context) {
  Ui& ui = context.ui;
  context.shop.open(context.desk.book().identity);
  switch (context.shop.state()) {
    case ShopDesk::State::kOpen:
      if (context.shop.damaged() > 0)
        refusal(ui, "shop.damaged", say_count(Msg::kShopDamaged, ui.language, context.shop.damaged()));
      return true;
    case ShopDesk::State::kUnreadable:
      refusal(ui, "shop.unreadable", context.say(Msg::kShopUnreadable));
      return false;
    case ShopDesk::State::kReading:
    case ShopDesk::State::kNone:
      note(ui, "shop.reading", context.say(Msg::kShopReading));
      return false;
  }
  return false;
}

const ShopMemory::Work& shop_work_of(Context& context, const ShownFrame& shown) {
  ShopMemory::Work& kept = context.shop_memory.work;
  const ShopState& state = context.shop.shop();
  const Saw& saw = saw_of(shown.book);
  if (kept.of != shown.solved || kept.saw != saw.name || !(kept.rules == state.rules)) {
    kept = {shown.solved,       saw.name, state.rules, context.shop.turn(), shop_work(*shown.frame(), state, saw),
            conflicts_of(state)};
  } else if (kept.turn != context.shop.turn()) {
    kept.turn = context.shop.turn();
    for (TimberWork& work : kept.timbers)
      work.progress =
          progress_of(work.steps, state.find(shown.frame()->timbers[static_cast<std::size_t>(work.timber)].mark));
    kept.conflicts = conflicts_of(state);
  }
  return kept;
}

const TimberWork* find_work(const ShopMemory::Work& work, const Frame& frame, std::string_view mark) {
  for (const TimberWork& w : work.timbers)
    if (frame.timbers[static_cast<std::size_t>(w.timber)].mark == mark) return &w;
  return nullptr;
}

bool tell(Context& context, Event event) {
  event.who = context.kit.settings.who;
  const Result<EventId> told = context.shop.add(std::move(event));
  if (!told) context.toast(frame_error_text(told.error(), voice_of(context)), false);
  return told.has_value();
}

std::string clock_text(const Context& context, std::int64_t wall_ms) {
  return moment_text(wall_ms, context.platform.clock_ahead_minutes(wall_ms));
}

std::string claim_text(const Context& context, const Claim& claim) {
  const std::string who = claim.who.empty() ? std::string(context.say(Msg::kShopNobody)) : claim.who;
  std::string out =
      say(Msg::kShopStepDone, context.ui.language, {{"who", who}, {"when", clock_text(context, claim.wall)}});
  if (context.shop.pending(claim.id)) out += " · " + std::string(context.say(Msg::kShopStepPending));
  return out;
}

bool hold_row(Context& context, ItemKey key, std::string_view label) {
  Ui& ui = context.ui;
  const Rect box = take_box(ui, ui.theme.target + 16);
  space(ui, kGap);
  return hold_button(ui, key, box, label, kHoldMs) && !ui.read_only;
}

}  // namespace bentbook::screens
