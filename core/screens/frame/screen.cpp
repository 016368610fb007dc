#include "screens/frame/screen.h"

#include <string>
#include <utility>
#include <vector>

#include "frame/drawings/plan_drawing.h"
#include "screens/books/screen.h"
#include "screens/frame/form.h"
#include "screens/frame/hardware.h"
#include "screens/frame/joints.h"
#include "screens/frame/list.h"
#include "screens/frame/options.h"
#include "screens/frame/plan_view.h"
#include "screens/frame/view.h"
#include "screens/roofs/form.h"
#include "screens/roofs/screen.h"
#include "screens/roofs/side.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook::screens {
namespace {

constexpr std::size_t kMostFindings = 12;

const FrameMemory::Elevations& elevations_of(Context& context, const ShownFrame& shown) {
  FrameMemory::Elevations& kept = context.frame_memory.elevations;
  if (kept.of != shown.solved)
    kept = {shown.solved, bent_drawing(shown.plan(), *shown.frame(), 1), wall_drawing(shown.plan(), *shown.frame())};
  return kept;
}

void findings(Context& context, const Frame& frame) {
  const Voice voice = voice_of(context);
  std::size_t said = 0;
  for (const Finding& finding : frame.findings) {
    if (said == kMostFindings) break;
    caution(context.ui, "frame.finding." + std::to_string(said++), finding_text(finding, voice));
  }
  if (frame.findings.size() > said)
    note(context.ui, "frame.more_findings",
         say(Msg::kFrameMoreFindings, voice.language, std::to_string(frame.findings.size() - said)));
}

std::string kinds_text(Context& context, const FramePlan& plan) {
  std::string out;
  const auto add = [&](bool there, TimberKind kind) {
    if (there) out += (out.empty() ? "" : ", ") + std::string(kind_name(kind, context.ui.language));
  };
  add(plan.ties, TimberKind::kTie);
  add(plan.on_ties == OnTies::kKingPosts && plan.ties, TimberKind::kKingPost);
  add(plan.on_ties == OnTies::kQueenPosts && plan.ties, TimberKind::kQueenPost);
  add(plan.collars, TimberKind::kCollar);
  add(plan.peak == Peak::kRidgeBeam, TimberKind::kRidgeBeam);
  add(plan.roof == RoofFrame::kPrincipals, TimberKind::kPurlin);
  add(plan.braces, TimberKind::kBrace);
  return out;
}

void rows(Context& context, const ShownFrame& shown) {
  Ui& ui = context.ui;
  Abreast abreast(ui, 16, kRowAbreast);
  const auto row = [&](const char* key, Msg title, const std::string& second, const Page& page) {
    abreast.next();
    if (list_row(ui, key, context.say(title), second)) context.pages.push(page);
  };
  const std::size_t timbers = shown.frame() ? shown.frame()->timbers.size() : 0;
  row("frame.row.view", Msg::kFrameView, std::string(context.say(Msg::kFrameViewNote)), frame_view_page());
  row("frame.row.timbers", Msg::kFrameTimbers,
      say_count(Msg::kFrameTimbersNote, ui.language, static_cast<std::int64_t>(timbers)), frame_list_page());
  row("frame.row.hardware", Msg::kHardware, std::string(context.say(Msg::kHardwareNote)), frame_hardware_page());
  if (shown.book.framed) {
    row("frame.row.options", Msg::kFrameOptions, kinds_text(context, shown.plan()), frame_options_page());
    row("frame.row.bays", Msg::kFrameBays,
        say_count(Msg::kFrameBaysNote, ui.language, static_cast<std::int64_t>(shown.plan().bays.size())),
        frame_bays_page());
    row("frame.row.sections", Msg::kFrameSections, std::string(context.say(Msg::kFrameSectionsNote)),
        frame_sections_page());
    row("frame.row.joints", Msg::kFrameJoints, std::string(context.say(Msg::kFrameJointsNote)), frame_joints_page());
  }
  row("frame.row.roofs", Msg::kRoofPlanTitle, std::string(context.say(Msg::kRoofPlanNote)), roof_plan_page());
  row("frame.row.books", Msg::kBooks, say_count(Msg::kBooksNote, ui.language, books_on_shelf(context.desk.shelf())),
      books_page());
}

void totals(Context& context, const ShownFrame& shown) {
  FrameMemory::Totals& kept = context.frame_memory.totals;
  const Voice voice = voice_of(context);
  const Length step = stock_step(voice);
  if ((kept.of != shown.solved && !shown.typing) || (kept.of != nullptr && kept.step != step))
    kept = {shown.solved, step, totals_of(*shown.frame(), step)};
  if (kept.of == nullptr) return;
  note(context.ui, "frame.totals", totals_text(kept.totals, voice) + " · " + totals_wood_text(kept.totals, voice));
}

/// Span, the bays' widths, height and pitch follow one another on the keypad.
void walk(Context& context, const FramePlan& plan) {
  std::vector<std::pair<std::string, std::string>> fields{{"frame.span", "frame.bent.span"}};
  for (const Bay& bay : plan.bays) fields.emplace_back(bay_path(bay), "frame.wall.bay:" + std::to_string(bay.label));
  fields.emplace_back("frame.plate_left", "frame.bent.plate_left");
  fields.emplace_back("frame.pitch_left", "frame.bent.pitch_left");
  std::vector<std::string> paths;
  paths.reserve(fields.size());
  for (const auto& [path, item] : fields) {
    paths.push_back(path);
    walk_on(context, path, frame_field_name(path, context.ui.language), item);
  }
  context.keypad.set_walk(std::move(paths));
}

}  // namespace

void frame_screen(Context& context) {
  frame_page(context, "frame.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (!shown.frame()) return frame_refused(context, shown);
    if (shown.book.framed) {
      walk(context, shown.plan());
      const FrameMemory::Elevations& drawn = elevations_of(context, shown);
      side_by_side(
          ui, 16, beside_drawing(context),
          [&](Ui&) { plan_view(context, shown, "frame.bent", Msg::kFrameBentPicture, 290, drawn.bent); },
          [&](Ui&) { plan_view(context, shown, "frame.wall", Msg::kFrameWallPicture, 280, drawn.wall); });
    } else if (!shown.book.roof.sides.empty()) {
      take_wall_length(context);
      if (const auto side = roof_plan_form(context, roof_now(context), drawing_height(context, 420), -1))
        context.pages.push(roof_side_page(*side));
    } else {
      body(ui, "frame.list_only", context.say(Msg::kFrameListOnly));
    }
    totals(context, shown);
    findings(context, *shown.frame());
    rows(context, shown);
  });
}

}  // namespace bentbook::screens
