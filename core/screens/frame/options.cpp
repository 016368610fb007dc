#include "screens/frame/options.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "book/book_edit.h"
#include "frame/drawings/plan_drawing.h"
#include "frame/drawings/sections_drawing.h"
#include "frame/keys.h"
#include "screens/frame/form.h"
#include "screens/frame/plan_view.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

/// Rows of what the drawing above does not show.
class RowsBelow {
 public:
  RowsBelow(Context& context, const draw::Drawing& drawing) : context_(context), drawing_(drawing) {}
  void row(std::string_view field) const {
    const auto is = [&](const auto& figure) { return figure.key == field; };
    if (std::any_of(drawing_.dimensions.begin(), drawing_.dimensions.end(), is) ||
        std::any_of(drawing_.angles.begin(), drawing_.angles.end(), is))
      return;
    frame_field(context_, "frame." + std::string(field));
  }

 private:
  Context& context_;
  const draw::Drawing& drawing_;
};

/// What a hip roof asks for in place of a gable's overhang, frame and peak.
void hips_part(Context& context, const FramePlan& plan) {
  frame_field(context, "frame.hips.pitch");
  frame_field(context, "frame.rafter_spacing");
  frame_field(context, "frame.hips.hip_rafter.breadth");
  frame_field(context, "frame.hips.hip_rafter.depth");
  given_flag(context, "frame.hips.end_posts", context.say(Msg::kOptionsEndPosts));
  given_flag(context, "frame.hips.dragon_ties", kind_name(TimberKind::kDragonTie, context.ui.language),
             context.say(Msg::kOptionsDragonNote));
  if (!plan.hips.dragon_ties) return;
  frame_field(context, "frame.hips.dragon_leg");
  frame_field(context, "frame.hips.dragon_tie.breadth");
  frame_field(context, "frame.hips.dragon_tie.depth");
}

void roof_part(Context& context, const Book& book, const RowsBelow& below) {
  Ui& ui = context.ui;
  const FramePlan& plan = book.frame;
  heading(ui, "options.roof_heading", context.say(Msg::kOptionsRoof));
  given_choice(context, "frame.form", context.say(Msg::kOptionsForm),
               {ui.say(Msg::kFormGable), ui.say(Msg::kFormLeanTo), ui.say(Msg::kFormHip)});
  below.row("pitch_left");
  if (plan.form == RoofForm::kGable) below.row("pitch_right");
  below.row("eave_overhang");
  if (plan.form == RoofForm::kHip) return hips_part(context, plan);
  frame_field(context, "frame.gable_overhang");
  given_choice(context, "frame.roof", context.say(Msg::kOptionsRafters),
               {ui.say(Msg::kRoofCommons), ui.say(Msg::kRoofPrincipals)});
  if (plan.roof == RoofFrame::kCommons)
    frame_field(context, "frame.rafter_spacing");
  else
    frame_field(context, "frame.purlin_spacing");
  given_choice(context, "frame.peak", context.say(Msg::kOptionsPeak),
               {ui.say(Msg::kPeakPair), ui.say(Msg::kPeakRidgeBeam)});
}

void ties_part(Context& context, const Book& book, const RowsBelow& below) {
  Ui& ui = context.ui;
  const FramePlan& plan = book.frame;
  const auto kind = [&](TimberKind k) { return kind_name(k, ui.language); };
  heading(ui, "options.ties_heading", context.say(Msg::kOptionsTies));
  if (given_flag(context, "frame.ties", kind(TimberKind::kTie), context.say(Msg::kOptionsTiesNote))) {
    below.row("tie_drop");
    if (plan.form == RoofForm::kHip)
      given_choice(context, "frame.on_ties", context.say(Msg::kOptionsOnTies),
                   {ui.say(Msg::kOnTiesNothing), kind(TimberKind::kKingPost)});
    else
      given_choice(context, "frame.on_ties", context.say(Msg::kOptionsOnTies),
                   {ui.say(Msg::kOnTiesNothing), kind(TimberKind::kKingPost), kind(TimberKind::kQueenPost)});
    if (plan.on_ties == OnTies::kQueenPosts && plan.form != RoofForm::kHip) below.row("queen_inset");
    if (given_flag(context, "frame.loft", context.say(Msg::kOptionsLoft))) frame_field(context, "frame.joist_spacing");
  }
  if (plan.form == RoofForm::kHip) return;
  if (given_flag(context, "frame.collars", kind(TimberKind::kCollar), context.say(Msg::kOptionsCollarsNote)))
    below.row("collar_rise");
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
    frame_field(context, "frame.girts." + number + ".height");
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
  if (!girts.empty()) given_flag(context, "frame.end_girts", context.say(Msg::kOptionsEndGirts));
}

void walls_part(Context& context, const Book& book, const RowsBelow& below) {
  Ui& ui = context.ui;
  heading(ui, "options.walls_heading", context.say(Msg::kOptionsWalls));
  below.row("plate_left");
  if (book.frame.form == RoofForm::kGable) below.row("plate_right");
  if (!given_flag(context, "frame.sills", kind_name(TimberKind::kSill, ui.language)))
    frame_field(context, "frame.stand_off");
  girts_part(context, book);
  if (given_flag(context, "frame.braces", kind_name(TimberKind::kBrace, ui.language))) {
    below.row("brace_leg_post");
    below.row("brace_leg_beam");
  }
  frame_field(context, "frame.stock_most");
}

void wood_part(Context& context, const Book& book) {
  Ui& ui = context.ui;
  heading(ui, "options.wood_heading", context.say(Msg::kOptionsWood));
  for (std::size_t i = 0; i < book.species.size(); ++i) {
    const Species& species = book.species[i];
    if (pick_row(ui, "options.species." + std::to_string(i), shown_name(species.name, ui.language), {},
                 species == book.frame.species))
      edit_book(context, [&](Book& next) { next.frame.species = next.species[i]; });
  }
  frame_field(context, "frame.moisture", "%");
  frame_field(context, "frame.load_psf");
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
      refusal(context.ui, "frame.refused", frame_error_text(shown.frame().error(), voice_of(context)));
    const draw::Drawing drawing = shown.frame() ? options_drawing(shown.plan(), *shown.frame()) : draw::Drawing{};
    if (shown.frame()) plan_view(context, shown, "options.bent", Msg::kFrameBentPicture, 320, drawing);
    const RowsBelow below(context, drawing);
    roof_part(context, shown.book, below);
    ties_part(context, shown.book, below);
    walls_part(context, shown.book, below);
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
    const FramePlan& plan = shown.plan();
    plan_view(context, shown, "bays.wall", Msg::kFrameWallPicture, 280, wall_drawing(plan, *shown.frame()));
    answer(ui, "bays.length", context.say(Msg::kFrameLength), say_length(outside_length(plan), voice_of(context)));
    note(ui, "bays.how", context.say(Msg::kBaysHow));
    for (std::size_t i = 0; i < plan.bays.size(); ++i) {
      frame_field(context, bay_path(plan.bays[i]));
      bay_keys(context, plan, i);
      space(ui, kGap);
    }
  });
}

std::vector<TimberKind> kinds_there(const Frame& frame) {
  std::array<bool, kTimberKinds> there{};
  for (const Timber& timber : frame.timbers) there[static_cast<std::size_t>(timber.kind)] = true;
  std::vector<TimberKind> kinds;
  for (int k = 0; k < kPlannedKinds; ++k)
    if (there[static_cast<std::size_t>(k)]) kinds.push_back(static_cast<TimberKind>(k));
  return kinds;
}

void sections_screen(Context& context) {
  frame_page(context, "sections.page", [&](const ShownFrame& shown) {
    if (said_why(context, shown)) return;
    const Voice voice = voice_of(context);
    const std::vector<TimberKind> kinds = kinds_there(*shown.frame());
    const float cell = 150.0F * static_cast<float>(context.kit.settings.text_percent) / 100;
    const int columns = std::max(1, static_cast<int>(context.ui.column.width / cell));
    const auto rows =
        static_cast<float>((kinds.size() + static_cast<std::size_t>(columns) - 1) / static_cast<std::size_t>(columns));
    const std::string root = "frame.sections.";
    const auto tapped = drawing_form(
        context, "sections", context.say(Msg::kFrameSections), rows * (cell + 48),
        sections_drawing(shown.plan(), kinds, columns), [&](std::string_view key) -> bentbook::FigureText {
          const std::size_t point = key.find('.');
          if (point == std::string_view::npos)
            return {
                std::string(kind_name(static_cast<TimberKind>(keys::index_of(keys::kTimberKind, key)), voice.language)),
                std::string(text(Msg::kFrameSections, voice.language))};
          const std::string path = root + std::string(key);
          const auto field = field_at(shown.book, path);
          return {field ? field_text(voice, *field) : std::string{}, frame_field_name(path, voice.language)};
        });
    if (tapped) open_field(context, root + *tapped, frame_field_name(root + *tapped, voice.language));
    caution(context.ui, "sections.not_engineered", finding_text({}, voice));
  });
}

}  // namespace

Page frame_options_page() { return {"frame.options", Msg::kFrameOptions, options_screen}; }
Page frame_bays_page() { return {"frame.bays", Msg::kFrameBays, bays_screen}; }
Page frame_sections_page() { return {"frame.sections", Msg::kFrameSections, sections_screen}; }

}  // namespace bentbook::screens
