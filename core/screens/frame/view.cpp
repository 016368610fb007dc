#include "screens/frame/view.h"

#include <algorithm>
#include <array>
#include <string>

#include "screens/frame/solid_view.h"
#include "screens/shop/form.h"
#include "screens/timber/sheet.h"
#include "ui/widgets_inside.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

using render::PartLook;
using render::PartPattern;
using Solids = FrameMemory::Solids;

/// A pattern for each of the four ticks, and for what is held.
PartPattern pattern_of(const TimberProgress& progress) {
  if (progress.held) return PartPattern::kBars;
  constexpr PartPattern kByTick[] = {PartPattern::kSparse, PartPattern::kCrossed, PartPattern::kDense,
                                     PartPattern::kFull};
  for (std::size_t i = 4; i-- > 0;)
    if (progress.has(static_cast<Tick>(i))) return kByTick[i];
  return PartPattern::kNone;
}

SolidLooks looks_of(Context& context, const ShownFrame& shown, const Solids& solids) {
  SolidLooks out;
  const std::size_t parts = solids.picture.timbers.size();
  out.looks.reserve(parts);
  for (const int index : solids.picture.timbers) {
    const Timber& timber = shown.frame()->timbers[static_cast<std::size_t>(index)];
    const bool here = solids.bent == 0 || stands_in_bent(timber, solids.bent);
    PartLook look = here && !solids.alone ? PartLook::kPlain : PartLook::kGhost;
    if (timber.mark == solids.picture.lit) look = PartLook::kLit;
    out.looks.push_back(static_cast<std::uint8_t>(look));
  }
  if (!solids.progress || shown.typing || context.shop.state() != ShopDesk::State::kOpen) return out;
  std::vector<std::uint8_t> by_timber(shown.frame()->timbers.size(), 0);
  for (const TimberWork& work : shop_work_of(context, shown).timbers)
    by_timber[static_cast<std::size_t>(work.timber)] = static_cast<std::uint8_t>(pattern_of(work.progress));
  out.patterns.reserve(parts);
  for (const int index : solids.picture.timbers) out.patterns.push_back(by_timber[static_cast<std::size_t>(index)]);
  return out;
}

/// What each pattern says, and how many timbers have come so far and no farther.
void legend(Context& context, const ShownFrame& shown) {
  Ui& ui = context.ui;
  std::array<int, render::kPartPatterns> counts{};
  for (const TimberWork& work : shop_work_of(context, shown).timbers)
    ++counts[static_cast<std::size_t>(pattern_of(work.progress))];
  const auto row = [&](PartPattern pattern, std::string_view name) {
    const std::string key = "view.legend." + std::to_string(static_cast<int>(pattern));
    const Column whole = ui.column;
    constexpr float kSwatch = 32;
    const float top = ui.column.y;
    ui.column.x += kSwatch + kGap;
    ui.column.width -= kSwatch + kGap;
    fact(ui, key, name, std::to_string(counts[static_cast<std::size_t>(pattern)]), true);
    draw_pattern(ui, {whole.x, top + 4, kSwatch, std::max(16.0F, ui.column.y - top - 12)}, pattern);
    ui.column = {whole.x, ui.column.y, whole.width, whole.scroll, whole.clip};
  };
  row(PartPattern::kNone, context.say(Msg::kViewNotBegun));
  row(PartPattern::kSparse, tick_text(Tick::kCut, ui.language));
  row(PartPattern::kCrossed, tick_text(Tick::kJoined, ui.language));
  row(PartPattern::kDense, tick_text(Tick::kFitted, ui.language));
  row(PartPattern::kFull, tick_text(Tick::kReady, ui.language));
  row(PartPattern::kBars, context.say(Msg::kShopIsHeld));
}

// ── Keys ──────────────────────────────────────────────────────────────────────────────────────────────────────────

void step_keys(Context& context, const FramePlan& plan) {
  Ui& ui = context.ui;
  Solids& solids = context.frame_memory.solids;
  std::vector<int> labels{0, 1};
  for (const Bay& bay : plan.bays) labels.push_back(bay.label);
  const auto found = std::find(labels.begin(), labels.end(), solids.bent);
  const auto at = found == labels.end() ? 0 : found - labels.begin();
  const Column whole = ui.column;
  const float side = ui.theme.target;
  const Rect row = take_box(ui, side);
  const auto step = [&](std::ptrdiff_t to) { solids.bent = labels[static_cast<std::size_t>(to)]; };
  if (icon_button(ui, "view.back", {row.x, row.y, side, side}, Icon::kBefore, context.say(Msg::kViewBentBack), at > 0))
    step(at - 1);
  if (icon_button(ui, "view.on", {row.x + row.w - side, row.y, side, side}, Icon::kAfter, context.say(Msg::kViewBentOn),
                  at + 1 < static_cast<std::ptrdiff_t>(labels.size())))
    step(at + 1);
  const std::string words = solids.bent == 0 ? std::string(context.say(Msg::kViewAllBents))
                                             : say(Msg::kViewBent, ui.language, std::to_string(solids.bent));
  draw_centred(pen(ui), *ui.fonts.strong, {row.x + side, row.y, row.w - 2 * side, side}, ui.theme.ink, words);
  Item item{"view.bent", Role::kText, Touch::kNone, words, {}, {row.x + side, row.y, row.w - 2 * side, side}};
  item.live = true;
  add_read(ui, std::move(item));
  ui.column = {whole.x, row.y + row.h + kGap, whole.width, whole.scroll, whole.clip};
}

void lit_keys(Context& context, const Frame& frame) {
  Ui& ui = context.ui;
  Solids& solids = context.frame_memory.solids;
  const int lit = solids.picture.lit.empty() ? -1 : timber_by_mark(frame, solids.picture.lit);
  if (lit < 0) {
    const float top = ui.column.y;
    note(ui, "view.how", context.say(Msg::kViewHow));
    ui.column.y = std::max(ui.column.y, top + ui.theme.target + kGap);
    return;
  }
  const Timber& timber = frame.timbers[static_cast<std::size_t>(lit)];
  side_by_side(
      ui, kGap, 100,
      [&](Ui& half) {
        const std::string label = timber.mark + " · " + std::string(kind_name(timber.kind, ui.language));
        if (button(half, "view.sheet", label, Weight::kPrimary)) context.pages.push(frame_sheet_page(timber.mark));
      },
      [&](Ui& half) {
        if (button(half, "view.alone", context.say(solids.alone ? Msg::kViewRest : Msg::kViewAlone)))
          solids.alone = !solids.alone;
      });
  if (timber.overridden.any())
    note(ui, "view.overridden", context.say(timber.overridden.added ? Msg::kSheetAdded : Msg::kSheetOverridden));
}

void keys(Context& context, const ShownFrame& shown) {
  Solids& solids = context.frame_memory.solids;
  view_choice(context, "view.kind", solids.picture);
  if (shown.book.framed) step_keys(context, shown.plan());
  lit_keys(context, *shown.frame());
  if (toggle(context.ui, "view.progress", context.say(Msg::kViewProgress), solids.progress,
             context.say(Msg::kViewProgressNote)))
    solids.progress = !solids.progress;
  if (solids.progress && log_is_open(context)) legend(context, shown);
}

void view_screen(Context& context) {
  Ui& ui = context.ui;
  const Rect page = context.page;
  if (!book_is_open(context)) return;
  const ShownFrame shown = frame_now(context);
  if (!shown.frame()) {
    begin_scroll(ui, "view.page", page);
    frame_refused(context, shown);
    end_scroll(ui);
    return;
  }
  Solids& solids = context.frame_memory.solids;
  make_scene(solids.picture, shown);
  if (solids.progress) context.shop.open(shown.book.identity);
  const bool beside = page.w > page.h * 1.2F;
  Rect picture = page, below = page;
  if (beside) {
    below.w = std::min(300.0F, page.w * 0.4F);
    picture.w -= below.w;
    below.x = picture.x + picture.w;
  } else {
    below.h = std::min(solids.controls, page.h * 0.6F);
    picture.h -= below.h;
    below.y = picture.y + picture.h;
  }
  const std::string of = std::to_string(solids.bent) + (solids.alone ? "a" : "-");
  const std::string name = say(Msg::kViewPicture, ui.language, std::to_string(solids.picture.timbers.size()));
  if (draw_solids(context, shown, solids.picture, picture, {"view", name, of, !solids.progress},
                  [&] { return looks_of(context, shown, solids); }))
    solids.alone = false;
  begin_scroll(ui, "view.keys", below);
  const float top = ui.column.y;
  keys(context, shown);
  const float height = ui.column.y - top + kGap + kMargin;
  end_scroll(ui);
  if (!beside && height != solids.controls) {
    solids.controls = height;
    ui.memory.want_frame = true;
  }
}

}  // namespace

Page frame_view_page() { return {"frame.view", Msg::kFrameView, view_screen}; }

}  // namespace bentbook::screens
