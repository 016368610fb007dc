#pragma once
/// A timber in the shop with its steps and what the log says of it, and the parts that its pages share.

#include <string>
#include <string_view>

#include "screens/shop/form.h"
#include "words/words.h"

namespace bentbook::screens {

struct ShownWork {
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

/// A page about one timber: waits, says why there is nothing, or draws `content(shown)` in a scroll area.
template <class Content>
void timber_page(Context& context, ItemKey key, std::string_view mark, Content&& content) {
  shop_page(context, key, [&](const ShownFrame& shown) {
    const ShopMemory::Work& work = shop_work_of(context, shown);
    const TimberWork* found = find_work(work, *shown.frame(), mark);
    if (found == nullptr) return body(context.ui, "shop.gone", context.say(Msg::kShopGone));
    content(ShownWork{context, shown, *found, shown.frame()->timbers[static_cast<std::size_t>(found->timber)],
                      context.shop.shop().find(mark), voice_of(context)});
  });
}

[[nodiscard]] Event event_of(const ShownWork&, EventAction action, std::string_view step = {}, std::string value = {});
/// The first hold on the timber; no step and no claim where there is none.
struct HoldAt {
  const StepState* step = nullptr;
  const Claim* claim = nullptr;
};
[[nodiscard]] HoldAt hold_of(const ShownWork&);

/// A hold stops the timber until somebody says by name why it may go on.
void hold_part(ShownWork&);
/// What the plan has changed under finished work; of all steps where none is named.
void flags_part(ShownWork&, std::string_view step);
/// A measure that the lead asked for: read off the tape, entered, held when it is out of tolerance.
void measure_part(ShownWork&, const WorkStep& step);
/// Says that a plate stops this step: another one is in hand, or its number stands at two places. True where it does.
[[nodiscard]] bool plate_stops(ShownWork&, const WorkStep& step);
/// What is to be minded at this step beside what holds at every tool.
void cautions_part(ShownWork&, const WorkStep& step, const std::string& key);
/// What is to be minded at every tool, in a line that opens to what each workplace adds.
void timber_cautions(ShownWork&);
/// The same on the card by which one came to the timber, if its own page did not say it.
void first_card_cautions(ShownWork&, const WorkStep& step);
/// Is the plate in hand the one that was fitted here? Asked whenever it was away from its timber.
void pairing_part(ShownWork&, const WorkStep& step);
/// Holding the timber, or one step of it, until it is released.
void stop_part(ShownWork&, std::string_view step);
void tick_step(ShownWork&, const WorkStep& step);

}  // namespace bentbook::screens
