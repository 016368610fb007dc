#include "command/json/frame_sheet_json.h"

#include "book/book_edit.h"
#include "command/json/frame_json_parts.h"
#include "frame/facts.h"

namespace bentbook {
namespace {

using namespace frame_json;

constexpr std::array<std::string_view, 4> kFacesOf = {"one", "two", "by_hand", "cannot"};

std::string mark_of(const Frame& frame, int timber) { return frame.timbers[static_cast<std::size_t>(timber)].mark; }

std::vector<std::string> marks_of(const Frame& frame, std::span<const int> timbers) {
  std::vector<std::string> marks;
  for (const int i : timbers) marks.push_back(mark_of(frame, i));
  return marks;
}

void line_mark(JsonOut& out, const LineMark& line) {
  out.open_item();
  out.count("face", static_cast<int>(line.face));
  const double from[] = {line.a.x, line.a.y}, to[] = {line.b.x, line.b.y};
  out.numbers("from_in", from, 9);
  out.numbers("to_in", to, 9);
  out.degrees("off_square", Angle::from_radians(line.off_square));
  waste(out, line.waste);
  out.close();
}

void cut_marks(JsonOut& out, const Timber& timber, const CutMarks& cut) {
  const EndCut& own = timber.cuts[static_cast<std::size_t>(cut.cut)];
  out.open_item();
  out.text("end", keys::word(keys::kEnd, own.end));
  out.text("name", keys::word(keys::kEndCut, own.name));
  waste(out, cut.waste);
  out.open_list("arrises");
  for (int arris = 1; arris <= 4; ++arris) {
    out.open_item();
    out.count("arris", arris);
    out.length("station", Length::from_inches(cut.stations[static_cast<unsigned>(arris - 1)]));
    out.flag("on_wood", cut.on_wood[static_cast<unsigned>(arris - 1)]);
    out.close();
  }
  out.close_list();
  out.open_list("lines");
  for (const LineMark& line : cut.lines) line_mark(out, line);
  out.close_list();
  out.close();
}

void recess_marks(JsonOut& out, const Frame& frame, int timber_index, const RecessMarks& recess) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(timber_index)];
  out.open_item();
  if (recess.feature >= 0) {
    const Feature& feature = timber.features[static_cast<std::size_t>(recess.feature)];
    out.text("feature", keys::word(keys::kFeatureKind, feature.kind));
    if (const int mate = mate_of(frame, timber_index, feature); mate >= 0) out.text("mate", mark_of(frame, mate));
  }
  if (recess.on_end)
    out.flag("on_end", true);
  else
    out.count("face", static_cast<int>(recess.face));
  points(out, "outline", recess.outline);
  if (recess.diameter > 0) out.number("diameter_in", recess.diameter);
  out.number("start_in", recess.start, 9);
  out.number("stop_in", recess.stop, 9);
  out.open_list("lines");
  for (const RecessOnFace& on : recess.faces)
    if (recess.diameter <= 0)
      for (const LineMark& line : on.lines) line_mark(out, line);
  out.close_list();
  out.open_list("depths");
  for (const RecessOnFace& on : recess.faces) {
    out.open_item();
    out.count("face", static_cast<int>(on.face));
    out.length("depth", Length::from_inches(depth_here(timber, on)));
    if (on.under > 0) out.length("under", Length::from_inches(on.under));
    out.flag("through", on.through);
    out.close();
  }
  out.close_list();
  out.close();
}

void graduations(JsonOut& out, std::string_view key, const std::optional<Graduations>& g) {
  if (!g) return;
  out.open_list(key);
  for (const Graduation* one : {&g->below, &g->above}) {
    out.open_item();
    out.number("deg", one->reads.deg());
    out.number("arris_in", one->arris.in());
    out.number("gap_in", one->gap.in());
    out.close();
    if (g->on_mark) break;
  }
  out.close_list();
}

void saw_cut(JsonOut& out, const SawCut& cut) {
  out.open_item();
  out.count("face", static_cast<int>(cut.face));
  out.flag("along", cut.along);
  out.number("from_in", cut.from, 9);
  out.number("to_in", cut.to, 9);
  out.length("depth", Length::from_inches(cut.depth));
  out.flag("through", cut.through);
  if (!cut.along) {
    out.degrees("table", Angle::from_radians(cut.blade.swing));
    out.degrees("tilt", Angle::from_radians(cut.blade.tilt));
    out.length("cut", cut.pass.travel);
    out.length("reach", cut.pass.needed);
    out.text("faces", keys::word(kFacesOf, cut.pass.faces));
    out.length("left", cut.pass.left);
    graduations(out, "table_settings", cut.swing);
    graduations(out, "tilt_settings", cut.tilt);
  }
  out.close();
}

void steps(JsonOut& out, const Timber& timber, const Sheet& sheet) {
  out.open_list("steps");
  for (const BenchStep& step : sheet.steps) {
    const bool end = step.work == WorkOn::kEndCut;
    const auto i = static_cast<std::size_t>(step.index);
    out.open_item();
    out.text("make", end ? keys::word(keys::kEndCut, timber.cuts[i].name)
                         : keys::word(keys::kFeatureKind, timber.features[i].kind));
    if (end || timber.features[i].at_end)
      out.text("end", keys::word(keys::kEnd, end ? timber.cuts[i].end : timber.features[i].end));
    out.count("index", step.index);
    out.open_list("saw");
    for (const int cut : step.saw_cuts) saw_cut(out, sheet.saw_cuts[static_cast<std::size_t>(cut)]);
    out.close_list();
    out.close();
  }
  out.close_list();
}

void check(JsonOut& out, const CheckMeasures& measures) {
  out.open("check");
  out.length("overall", Length::from_inches(measures.overall));
  out.numbers("arrises_in", measures.arrises, 6);
  out.numbers("rising_in", measures.rising, 6);
  out.numbers("falling_in", measures.falling, 6);
  out.close();
}

void mates(JsonOut& out, const Frame& frame, const Sheet& sheet) {
  out.open_list("mates");
  for (const MateOutline& mate : sheet.mates) {
    out.open_item();
    out.text("mark", mark_of(frame, mate.mate));
    out.count("face", static_cast<int>(mate.face));
    points(out, "outline", mate.outline);
    out.close();
  }
  out.close_list();
}

void tools(JsonOut& out, const Frame& frame, int timber) {
  constexpr std::array<std::string_view, kToolWords.size()> kSettings = {"depth_stop", "shim_to_centre", "jig_offset",
                                                                         "fence",      "fall",           "wedge",
                                                                         "slot_width", "let_in_depth",   "plug_depth"};
  out.open_list("tools");
  for (const Joint& joint : frame.joints)
    for (const ToolNumber& tool : joint.tools) {
      if (tool.timber != timber) continue;
      out.open_item();
      out.text("setting", keys::word(kSettings, tool.setting));
      out.text("mate", mark_of(frame, other_timber(joint, timber)));
      if (tool.from) out.count("face", static_cast<int>(*tool.from));
      out.number("value_in", tool.value);
      out.text("value_text", say_tool_inches(tool.value, out.voice()));
      out.close();
    }
  out.close_list();
}

}  // namespace

std::string sheet_json(const Book& book, const Frame& frame, const Sheet& sheet, const Voice& voice) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(sheet.timber)];
  JsonOut out(voice);
  head(out, timber);
  constexpr std::array<std::string_view, 3> kHands = {"none", "left", "right"};
  const double references[] = {static_cast<double>(reference_face(timber.wood, Axis::kZ)),
                               static_cast<double>(reference_face(timber.wood, Axis::kY))};
  out.numbers("reference_faces", references, 0);
  out.text("hand", keys::word(kHands, sheet.hand));
  out.texts("mirrored", marks_of(frame, sheet.mirrored));
  out.texts("alike", marks_of(frame, sheet.alike));
  if (timber.kind == TimberKind::kPost) out.length("pier_level", Length::from_inches(timber.pier_level));
  out.length("bow", timber.wood.bow);
  out.open_list("cuts");
  for (const CutMarks& cut : sheet.marks.cuts) cut_marks(out, timber, cut);
  out.close_list();
  out.open_list("recesses");
  for (const RecessMarks& recess : sheet.marks.recesses) recess_marks(out, frame, sheet.timber, recess);
  out.close_list();
  steps(out, timber, sheet);
  check(out, sheet.check);
  mates(out, frame, sheet);
  tools(out, frame, sheet.timber);
  warnings(out, sheet.warnings, voice);
  out.text("note", note_of(book, timber.mark));
  return out.finish();
}

}  // namespace bentbook
