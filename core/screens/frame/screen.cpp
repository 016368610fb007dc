#include "screens/frame/screen.h"

#include <string>

#include "frame/plan_drawing.h"
#include "screens/books/screen.h"
#include "screens/frame/form.h"
#include "screens/frame/hardware.h"
#include "screens/frame/joints.h"
#include "screens/frame/list.h"
#include "screens/frame/options.h"
#include "screens/frame/view.h"
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

/// The field that a figure of plan_drawing.h shows.
std::string path_of(std::string_view figure) {
  constexpr std::string_view kBay = "bay:";
  if (!figure.starts_with(kBay)) return "frame." + std::string(figure);
  return "frame.bays.@" + std::string(figure.substr(kBay.size())) + ".width";
}

bentbook::FigureText plan_figure(Context& context, std::string_view key, const ShownFrame& shown) {
  const Voice voice = voice_of(context);
  if (key == "length")
    return {say_length(outside_length(shown.plan()), voice), std::string(context.say(Msg::kFrameLength))};
  if (key == "peak_top")
    return {say_inches(shown.frame()->ridge_z, voice), std::string(context.say(Msg::kFramePeakTop))};
  const std::string path = path_of(key);
  const auto field = field_at(shown.book, path);
  return {field ? field_text(voice, *field) : std::string{}, frame_field_name(path, voice.language)};
}

void elevation(Context& context, const ShownFrame& shown, ItemKey prefix, Msg name, float height,
               const draw::Drawing& drawing) {
  const auto tapped = drawing_form(context, prefix, context.say(name), drawing_height(context, height), drawing,
                                   [&](std::string_view key) { return plan_figure(context, key, shown); });
  if (!tapped) return;
  const std::string path = path_of(*tapped);
  open_field(context, path, frame_field_name(path, context.ui.language));
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
  const auto row = [&](const char* key, Msg title, const std::string& second, const Page& page) {
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
  row("frame.row.books", Msg::kBooks, say_count(Msg::kBooksNote, ui.language, books_on_shelf(context.desk.shelf())),
      books_page());
}

void totals(Context& context, const ShownFrame& shown) {
  FrameMemory::Totals& kept = context.frame_memory.totals;
  if (kept.of != shown.solved && !shown.typing) kept = {shown.solved, totals_of(*shown.frame())};
  if (kept.of == nullptr) return;
  note(context.ui, "frame.totals", totals_text(kept.totals, voice_of(context)));
}

}  // namespace

void frame_screen(Context& context) {
  frame_page(context, "frame.page", [&](const ShownFrame& shown) {
    Ui& ui = context.ui;
    if (!shown.frame()) return frame_refused(context, shown);
    if (shown.book.framed) {
      const FrameMemory::Elevations& drawn = elevations_of(context, shown);
      side_by_side(
          ui, 16, 300, [&](Ui&) { elevation(context, shown, "frame.bent", Msg::kFrameBentPicture, 290, drawn.bent); },
          [&](Ui&) { elevation(context, shown, "frame.wall", Msg::kFrameWallPicture, 230, drawn.wall); });
    } else {
      body(ui, "frame.list_only", context.say(Msg::kFrameListOnly));
    }
    totals(context, shown);
    findings(context, *shown.frame());
    rows(context, shown);
  });
}

}  // namespace bentbook::screens
