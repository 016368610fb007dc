// The Frame place's pages about the plan: kinds of timbers and their measures, bays, sections.

#include <string>

#include "book/book_edit.h"
#include "frame/keys.h"
#include "frame/plan_drawing.h"
#include "screens/frame/form.h"
#include "screens/frame/pages.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

template <class Enum>
void plan_choice(Context& context, ItemKey key, Msg name, std::initializer_list<std::string_view> options, Enum now,
                 Enum FramePlan::*at) {
  const auto picked = choice(context.ui, key, context.say(name), options, static_cast<int>(now));
  if (picked) edit_book(context, [&](Book& book) { book.frame.*at = static_cast<Enum>(*picked); });
}

bool plan_toggle(Context& context, ItemKey key, std::string_view label, const Book& book, bool FramePlan::*at,
                 std::string_view second = {}) {
  const bool on = book.frame.*at;
  if (toggle(context.ui, key, label, on, second)) edit_book(context, [&](Book& next) { next.frame.*at = !on; });
  return on;
}

void roof_part(Context& context, const Book& book) {
  Ui& ui = context.ui;
  const FramePlan& plan = book.frame;
  heading(ui, "options.roof_heading", context.say(Msg::kOptionsRoof));
  plan_choice(context, "options.form", Msg::kOptionsForm, {ui.say(Msg::kFormGable), ui.say(Msg::kFormLeanTo)},
              plan.form, &FramePlan::form);
  slope_row(context, book, "pitch_left");
  if (plan.form == RoofForm::kGable) slope_row(context, book, "pitch_right");
  plan_row(context, book, "eave_overhang");
  plan_row(context, book, "gable_overhang");
  plan_choice(context, "options.roof", Msg::kOptionsRafters, {ui.say(Msg::kRoofCommons), ui.say(Msg::kRoofPrincipals)},
              plan.roof, &FramePlan::roof);
  if (plan.roof == RoofFrame::kCommons)
    plan_row(context, book, "rafter_spacing");
  else
    plan_row(context, book, "purlin_spacing");
  plan_choice(context, "options.peak", Msg::kOptionsPeak, {ui.say(Msg::kPeakPair), ui.say(Msg::kPeakRidgeBeam)},
              plan.peak, &FramePlan::peak);
}

void ties_part(Context& context, const Book& book) {
  Ui& ui = context.ui;
  const FramePlan& plan = book.frame;
  const auto kind = [&](TimberKind k) { return kind_name(k, ui.language); };
  heading(ui, "options.ties_heading", context.say(Msg::kOptionsTies));
  if (plan_toggle(context, "options.ties", kind(TimberKind::kTie), book, &FramePlan::ties,
                  context.say(Msg::kOptionsTiesNote))) {
    plan_row(context, book, "tie_drop");
    plan_choice(context, "options.on_ties", Msg::kOptionsOnTies,
                {ui.say(Msg::kOnTiesNothing), kind(TimberKind::kKingPost), kind(TimberKind::kQueenPost)}, plan.on_ties,
                &FramePlan::on_ties);
    if (plan.on_ties == OnTies::kQueenPosts) plan_row(context, book, "queen_inset");
    if (plan_toggle(context, "options.loft", context.say(Msg::kOptionsLoft), book, &FramePlan::loft))
      plan_row(context, book, "joist_spacing");
  }
  if (plan_toggle(context, "options.collars", kind(TimberKind::kCollar), book, &FramePlan::collars,
                  context.say(Msg::kOptionsCollarsNote)))
    plan_row(context, book, "collar_rise");
}

void girts_part(Context& context, const Book& book) {
  Ui& ui = context.ui;
  const auto& girts = book.frame.girts;
  heading(ui, "options.girts_heading", kind_name(TimberKind::kGirt, ui.language), 3);
  for (std::size_t i = 0; i < girts.size(); ++i) {
    const std::string number = std::to_string(i);
    const Column whole = ui.column;
    const float bin = ui.theme.target;
    ui.column.width -= bin + kGap;
    plan_row(context, book, "girt:" + number);
    const Rect box{whole.x + whole.width - bin, whole.y, bin, ui.column.y - whole.y - kGap / 2};
    ui.column.x = whole.x;
    ui.column.width = whole.width;
    if (icon_button(ui, "options.girt_remove." + number, box, Icon::kBin, context.say(Msg::kGirtRemove))) {
      edit_book(context, [&](Book& next) { next.frame.girts.erase(next.frame.girts.begin() + static_cast<long>(i)); });
      return;
    }
  }
  if (girts.size() < 20 && button(ui, "options.girt_add", context.say(Msg::kGirtAdd)))
    edit_book(context, [&](Book& next) {
      const Length top = girts.empty() ? Length::inches(42) : girts.back() + Length::feet(3);
      next.frame.girts.push_back(top);
    });
  if (!girts.empty())
    plan_toggle(context, "options.end_girts", context.say(Msg::kOptionsEndGirts), book, &FramePlan::end_girts);
}

void walls_part(Context& context, const Book& book) {
  Ui& ui = context.ui;
  heading(ui, "options.walls_heading", context.say(Msg::kOptionsWalls));
  plan_row(context, book, "plate_left");
  if (book.frame.form == RoofForm::kGable) plan_row(context, book, "plate_right");
  if (!plan_toggle(context, "options.sills", kind_name(TimberKind::kSill, ui.language), book, &FramePlan::sills))
    plan_row(context, book, "stand_off");
  girts_part(context, book);
  if (plan_toggle(context, "options.braces", kind_name(TimberKind::kBrace, ui.language), book, &FramePlan::braces)) {
    plan_row(context, book, "brace_leg_post");
    plan_row(context, book, "brace_leg_beam");
  }
  plan_row(context, book, "stock_most");
}

void wood_part(Context& context, const Book& book) {
  Ui& ui = context.ui;
  heading(ui, "options.wood_heading", context.say(Msg::kOptionsWood));
  for (std::size_t i = 0; i < book.species.size(); ++i) {
    const Species& species = book.species[i];
    if (pick_row(ui, "options.species." + std::to_string(i), species.name, {}, species == book.frame.species))
      edit_book(context, [&](Book& next) { next.frame.species = next.species[i]; });
  }
  const std::string moisture = std::to_string(*count_at(book, "moisture")) + " %";
  count_row(context, book, "moisture", moisture, 300);
  const std::string load = say(Msg::kFeetLoadValue, ui.language, std::to_string(*count_at(book, "load_psf")));
  count_row(context, book, "load_psf", load, 1000);
  note(ui, "options.load_note", context.say(Msg::kOptionsLoadNote));
}

/// Above each page that edits the plan: why it gives no frame.
bool said_why(Context& context, const ShownFrame& shown) {
  if (shown.frame()) return false;
  frame_refused(context, shown);
  return true;
}

void options_screen(Context& context) {
  frame_page(context, "options.page", [&](const ShownFrame& shown) {
    if (!shown.frame())
      caution(context.ui, "frame.refused", frame_error_text(shown.frame().error(), voice_of(context)));
    roof_part(context, shown.book);
    ties_part(context, shown.book);
    walls_part(context, shown.book);
    wood_part(context, shown.book);
  });
}

void bay_keys(Context& context, const FramePlan& plan, std::size_t i) {
  Ui& ui = context.ui;
  const std::string number = std::to_string(i);
  const int index = static_cast<int>(i);
  side_by_side(
      ui, kGap, 120,
      [&](Ui& half) {
        if (button(half, "bays.add." + number, context.say(Msg::kBayAddAfter)))
          edit_book(context, [&](Book& book) { book = with_bay(std::move(book), index, plan.bays[i].width); });
      },
      [&](Ui& half) {
        if (button(half, "bays.remove." + number, context.say(Msg::kBayRemove), Weight::kDestructive,
                   plan.bays.size() > 1)) {
          edit_book(context, [&](Book& book) { book = without_bay(std::move(book), index); });
          context.toast(std::string(context.say(Msg::kBayRemoved)), true);
        }
      });
}

void bays_screen(Context& context) {
  frame_page(context, "bays.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (said_why(context, shown)) return;
    const FramePlan plan = shown.plan();
    answer(ui, "bays.length", context.say(Msg::kFrameLength), say_length(length_of(plan), voice_of(context)),
           context.say(Msg::kBaysHow));
    for (std::size_t i = 0; i < plan.bays.size(); ++i) {
      plan_row(context, shown.book, "bay:" + std::to_string(plan.bays[i].label));
      bay_keys(context, plan, i);
      space(ui, kGap);
    }
  });
}

void sections_screen(Context& context) {
  frame_page(context, "sections.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (said_why(context, shown)) return;
    caution(ui, "sections.not_engineered", finding_text({}, voice_of(context)));
    std::array<bool, kTimberKinds> there{};
    for (const Timber& timber : shown.frame()->timbers) there[static_cast<std::size_t>(timber.kind)] = true;
    for (int k = 0; k < kTimberKinds - 1; ++k) {
      if (!there[static_cast<std::size_t>(k)]) continue;
      const std::string key = "section:" + std::string(keys::kTimberKind[static_cast<std::size_t>(k)]);
      heading(ui, key, kind_name(static_cast<TimberKind>(k), ui.language), 3);
      side_by_side(
          ui, 16, 240, [&](Ui&) { plan_row(context, shown.book, key + ":breadth"); },
          [&](Ui&) { plan_row(context, shown.book, key + ":depth"); });
    }
  });
}

}  // namespace

Page frame_options_page() { return {"frame.options", Msg::kFrameOptions, options_screen}; }
Page frame_bays_page() { return {"frame.bays", Msg::kFrameBays, bays_screen}; }
Page frame_sections_page() { return {"frame.sections", Msg::kFrameSections, sections_screen}; }

}  // namespace bentbook::screens
