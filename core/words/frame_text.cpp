#include "words/frame_text.h"

#include <algorithm>
#include <utility>

#include "book/book_edit.h"
#include "text/utf8.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

std::string digits(int n) { return std::to_string(n); }
std::string face_number(Face face) { return digits(static_cast<int>(face)); }

std::string joined(const std::vector<std::string>& parts, std::string_view by = ", ") {
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : std::string(by)) + part;
  return out;
}

std::string marks_of(const Frame& frame, const std::vector<int>& timbers) {
  std::vector<std::string> marks;
  marks.reserve(timbers.size());
  for (const int i : timbers) marks.push_back(frame.timbers[static_cast<std::size_t>(i)].mark);
  return joined(marks);
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t letters = count_characters(text);
  if (letters < width) text.append(width - letters, ' ');
  return text;
}

std::string wood_lines(const Timber& timber, const Sheet& sheet, const Voice& voice) {
  const Language language = voice.language;
  const Wood& wood = timber.wood;
  std::string section = section_text(wood.nominal, voice);
  if (!(wood.actual == wood.nominal))
    section += ", " + say(Msg::kSheetMeasures, language, section_text(wood.actual, voice));
  std::string out = told(text(Msg::kSheetSection, language), section);
  const std::string references =
      std::string(wood.top_is_reference ? "1" : "3") + ", " + (wood.near_is_reference ? "2" : "4");
  out += say(Msg::kSheetReferences, language, references) + "\n";
  for (const FloatingFace& floating : sheet.floating)
    out += say(Msg::kSheetFloating, language,
               {{"face", face_number(floating.face)}, {"over", say_inches(floating.over, voice)}}) +
           "\n";
  if (wood.bow != Length{}) out += say(Msg::kSheetBow, language, say_length(wood.bow, voice)) + "\n";
  return out;
}

std::string pair_lines(const Frame& frame, const Sheet& sheet, Language language) {
  std::string out;
  if (sheet.hand != Hand::kNone)
    out +=
        say(sheet.hand == Hand::kLeft ? Msg::kSheetLeft : Msg::kSheetRight, language, marks_of(frame, sheet.mirrored)) +
        "\n";
  if (!sheet.alike.empty()) out += told(text(Msg::kSheetAlike, language), marks_of(frame, sheet.alike));
  return out;
}

std::string check_lines(const CheckMeasures& check, const Voice& voice) {
  std::vector<std::string> arrises;
  for (const double a : check.arrises) arrises.push_back(say_inches(a, voice));
  std::string out;
  for (const Face face : {Face::kTop, Face::kNear}) {
    const auto i = static_cast<std::size_t>(face) - 1;
    out += say(Msg::kSheetCheck, voice.language,
               {{"arrises", joined(arrises)},
                {"face", face_number(face)},
                {"rising", say_inches(check.rising[i], voice)},
                {"falling", say_inches(check.falling[i], voice)}}) +
           "\n";
  }
  return out;
}

/// Patches of one joint on one face are said as one stretch.
std::string mate_lines(const Frame& frame, const Sheet& sheet, const Voice& voice) {
  struct Landing {
    int joint;
    int mate;
    Face face;
    double from = 1e300, to = -1e300;
  };
  std::vector<Landing> landings;
  for (const MateOutline& mate : sheet.mates) {
    if (landings.empty() || landings.back().joint != mate.joint || landings.back().face != mate.face)
      landings.push_back({mate.joint, mate.mate, mate.face});
    for (const Vec2& p : mate.outline) {
      landings.back().from = std::min(landings.back().from, p.x);
      landings.back().to = std::max(landings.back().to, p.x);
    }
  }
  std::string out;
  for (const Landing& landing : landings)
    out += say(Msg::kSheetMate, voice.language,
               {{"mark", frame.timbers[static_cast<std::size_t>(landing.mate)].mark},
                {"face", face_number(landing.face)},
                {"from", say_inches(landing.from, voice)},
                {"to", say_inches(landing.to, voice)}}) +
           "\n";
  return out;
}

/// Where an end cut is marked: on the arrises that it reaches, else by its line on each face.
std::string cut_stations(const CutMarks& cut, const Voice& voice) {
  std::vector<std::string> stations;
  if (std::count(cut.on_wood.begin(), cut.on_wood.end(), true) > 0) {
    for (std::size_t i = 0; i < 4; ++i)
      stations.push_back(cut.on_wood[i] ? say_inches(cut.stations[i], voice) : std::string("-"));
    return say(Msg::kSheetStations, voice.language, joined(stations));
  }
  for (const LineMark& line : cut.lines) {
    const std::string a = say_inches(line.a.x, voice), b = say_inches(line.b.x, voice);
    stations.push_back(say(Msg::kSheetLineOnFace, voice.language,
                           {{"face", face_number(line.face)}, {"at", a == b ? a : a + " – " + b}}));
  }
  return joined(stations);
}

std::string cut_line(const Timber& timber, const CutMarks& cut, const Voice& voice) {
  const Language language = voice.language;
  const EndCut& own = timber.cuts[static_cast<std::size_t>(cut.cut)];
  return std::string(end_cut_name(own.name, language)) + ", " +
         say(Msg::kSheetEnd, language, own.end == End::kA ? "A" : "B") + ". " + cut_stations(cut, voice) + "; " +
         std::string(text(cut.waste == Waste::kTowardA ? Msg::kSheetWasteA : Msg::kSheetWasteB, language));
}

/// The recess of a feature on the face it is laid out on, else on the first it breaks through.
const RecessOnFace* shown_recess(const Sheet& sheet, int feature, Face face) {
  const RecessOnFace* found = nullptr;
  for (const RecessMarks& recess : sheet.marks.recesses) {
    if (recess.feature != feature) continue;
    for (const RecessOnFace& on : recess.faces)
      if (found == nullptr || (on.face == face && found->face != face)) found = &on;
  }
  return found;
}

std::string feature_line(const Frame& frame, const Sheet& sheet, int index, const Voice& voice) {
  const Language language = voice.language;
  const Timber& timber = frame.timbers[static_cast<std::size_t>(sheet.timber)];
  const Feature& f = timber.features[static_cast<std::size_t>(index)];
  std::string out(feature_name(f.kind, language));
  if (f.at_end) out += ", " + say(Msg::kSheetEnd, language, f.end == End::kA ? "A" : "B");
  out += ", " + say(Msg::kSheetFace, language, face_number(f.face));
  if (const int mate = mate_of(frame, sheet.timber, f); mate >= 0)
    out += ", " + frame.timbers[static_cast<std::size_t>(mate)].mark;
  out += ": ";
  const RecessOnFace* on = shown_recess(sheet, index, f.face);
  // Of a bird's mouth it is told how deep it goes from below, not that it goes from side to side.
  const bool mouth = f.kind == FeatureKind::kBirdsMouth;
  const bool through = on != nullptr && on->through && !mouth;
  const double deep = mouth                        ? f.across_hi - f.across_lo
                      : on != nullptr && !f.at_end ? depth_here(timber, *on)
                                                   : f.depth;
  const std::string depth = say_tool_inches(deep, voice);
  if (f.kind == FeatureKind::kHole)
    return out + say(through ? Msg::kSheetHoleThrough : Msg::kSheetHole, language,
                     {{"diameter", say_inches(f.diameter, voice)},
                      {"from", say_inches((f.from + f.to) / 2, voice)},
                      {"depth", depth}});
  const Msg msg = f.at_end ? Msg::kSheetRecessEnd : through ? Msg::kSheetRecessThrough : Msg::kSheetRecess;
  return out +
         say(msg, language, {{"from", say_inches(f.from, voice)}, {"to", say_inches(f.to, voice)}, {"depth", depth}});
}

/// What is warned of, with the marks of all timbers that it is said of.
struct Alike {
  std::string said;
  std::vector<std::string> marks;
};
std::vector<Alike> alike_warnings(const Frame& frame, const Voice& voice) {
  std::vector<Alike> all;
  for (const Timber& timber : frame.timbers)
    for (const TimberWarning& warning : timber.warnings) {
      std::string said = warning_text(warning, voice);
      auto alike = std::find_if(all.begin(), all.end(), [&](const Alike& a) { return a.said == said; });
      if (alike == all.end()) alike = all.insert(alike, {std::move(said), {}});
      if (alike->marks.empty() || alike->marks.back() != timber.mark) alike->marks.push_back(timber.mark);
    }
  return all;
}

}  // namespace

std::string marks_in_short(std::vector<std::string> marks, const Voice& voice) {
  constexpr std::size_t kNamed = 4;
  if (marks.size() <= kNamed + 1) return joined(marks);
  const std::string more = std::to_string(marks.size() - kNamed);
  marks.resize(kNamed);
  return say(Msg::kMarksAndMore, voice.language, {{"marks", joined(marks)}, {"n", more}});
}

std::string check_text(const Book& book, const Frame& frame, const Voice& voice) {
  std::string out;
  if (!book.title.empty()) out += book.title + "\n";
  for (const Finding& finding : frame.findings) out += finding_text(finding, voice) + "\n";
  for (const Alike& alike : alike_warnings(frame, voice)) out += told(marks_in_short(alike.marks, voice), alike.said);
  return out;
}

std::string totals_text(const FrameTotals& totals, const Voice& voice) {
  return say(Msg::kTotals, voice.language,
             {{"timbers", digits(totals.timbers)},
              {"weight", say_weight(totals.weight_lb, voice)},
              {"wood", say_wood(totals.board_feet, voice)}});
}

std::string totals_wood_text(const FrameTotals& totals, const Voice& voice) {
  std::string species(totals.species ? shown_name(*totals.species, voice.language)
                                     : text(Msg::kTotalsMixed, voice.language));
  if (!totals.moisture) return species;
  return say(Msg::kTotalsWood, voice.language, {{"species", species}, {"moisture", print_fixed(*totals.moisture, 0)}});
}

std::string members_text(const Frame& frame, const Voice& voice) {
  std::string out;
  for (const Timber& timber : frame.timbers) {
    const TimberFacts facts = facts_of(timber);
    out += padded(timber.mark, 10) + " " + padded(std::string(kind_name(timber.kind, voice.language)), 18) + " " +
           padded(section_text(timber.wood.nominal, voice), 16) + " " + padded(say_inches(timber.length, voice), 16) +
           " " + say_weight(facts.weight_lb, voice);
    if (timber.overridden.added)
      out += "  " + std::string(text(Msg::kSheetAdded, voice.language));
    else if (timber.overridden.any())
      out += "  " + std::string(text(Msg::kSheetOverridden, voice.language));
    out += "\n";
  }
  return out + totals_text(totals_of(frame, stock_step(voice)), voice) + "\n";
}

std::string saw_cut_text(const SawCut& cut, SawKind saw, const Voice& voice) {
  const Language language = voice.language;
  const std::string face = face_number(cut.face);
  if (cut.along)
    return say(
        Msg::kSheetCheek, language,
        {{"face", face}, {"depth", say_inches(cut.depth, voice)}, {"needed", say_length(cut.pass.needed, voice)}});
  std::string out = say(saw == SawKind::kChainsawBar ? Msg::kSheetSaw : Msg::kSheetSawGuide, language,
                        {{"face", face},
                         {"swing", say_angle(Angle::from_radians(cut.blade.swing), voice)},
                         {"tilt", say_angle(Angle::from_radians(cut.blade.tilt), voice)},
                         {"travel", say_length(cut.pass.travel, voice)},
                         {"needed", say_length(cut.pass.needed, voice)}});
  if (!cut.through) out += " " + say(Msg::kSheetSawStop, language, {{"depth", say_tool_inches(cut.depth, voice)}});
  return out;
}

std::string step_text(const Frame& frame, const Sheet& sheet, const BenchStep& step, const Voice& voice) {
  if (step.work == WorkOn::kFeature) return feature_line(frame, sheet, step.index, voice);
  for (const CutMarks& cut : sheet.marks.cuts)
    if (cut.cut == step.index) return cut_line(frame.timbers[static_cast<std::size_t>(sheet.timber)], cut, voice);
  return {};
}

std::string sheet_text(const Book& book, const Frame& frame, const Sheet& sheet, const Voice& voice) {
  const Timber& timber = frame.timbers[static_cast<std::size_t>(sheet.timber)];
  const Language language = voice.language;
  const Saw& saw = saw_of(book);
  const TimberFacts facts = facts_of(timber, stock_step(voice));
  std::string out = timber.mark + ", " + std::string(kind_name(timber.kind, language)) + "\n";
  if (timber.overridden.added)
    out += std::string(text(Msg::kSheetAdded, language)) + "\n";
  else if (timber.overridden.any())
    out += std::string(text(Msg::kSheetOverridden, language)) + "\n";
  out += wood_lines(timber, sheet, voice);
  out += told(text(Msg::kSheetLength, language), say_inches(timber.length, voice));
  if (timber.kind == TimberKind::kPost)
    out += told(text(Msg::kSheetPier, language), say_inches(timber.pier_level, voice));
  out += pair_lines(frame, sheet, language);
  int number = 0;
  for (const BenchStep& step : sheet.steps) {
    out += digits(++number) + ". " + step_text(frame, sheet, step, voice) + "\n";
    for (const int i : step.saw_cuts) {
      const SawCut& cut = sheet.saw_cuts[static_cast<std::size_t>(i)];
      out += "   " + saw_cut_text(cut, saw.kind, voice) + "\n";
      if (!cut.along && cut.pass.faces != Faces::kOne) out += "   " + pass_text(cut.pass, saw, voice) + "\n";
    }
  }
  out += check_lines(sheet.check, voice) + mate_lines(frame, sheet, voice);
  for (const int j : joints_of(frame, sheet.timber)) {
    const Joint& joint = frame.joints[static_cast<std::size_t>(j)];
    out += told(joint_name(joint.kind, language), contact_text(frame, joint, sheet.timber, language));
  }
  out += told(text(Msg::kSheetWeight, language), say_weight(facts.weight_lb, voice));
  out += told(text(Msg::kSheetStock, language), say_length(facts.stock, voice));
  for (const TimberWarning& warning : sheet.warnings)
    out += told(text(Msg::kCaution, language), warning_text(warning, voice));
  if (const std::string_view note = note_of(book, timber.mark); !note.empty())
    out += told(text(Msg::kSheetNote, language), note);
  return out;
}

}  // namespace bentbook
