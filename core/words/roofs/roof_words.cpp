#include "words/roofs/roof_words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>
#include <vector>

#include "frame/keys.h"
#include "numeric/index.h"
#include "words/error_words.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

constexpr std::array<std::string_view, kRoofTimberKinds> kRoofTimbers = {
    "ridge",  "hip",     "valley",     "common", "hip_jack", "valley_jack", "cripple",
    "purlin", "trimmer", "cut_common", "header", "post",     "plate"};
constexpr std::array<std::string_view, 8> kRoofLines = {"ridge", "hip", "valley", "rake",
                                                        "eave",  "top", "break",  "flush"};
constexpr std::array<std::string_view, 11> kRoofFindings = {
    "not_engineered", "fascia_apart", "thrust",     "thrust_unknown", "no_seat", "notch",
    "unlike_plates",  "shallow",      "no_bearing", "clash",          "dormer"};
constexpr std::array<std::string_view, 4> kRoofCuts = {"plumb", "cheek", "tail", "on_roof"};
static_assert(kRoofFindings.size() == static_cast<std::size_t>(RoofFindingId::kDormer) + 1);
static_assert(kRoofLines.size() == static_cast<std::size_t>(RoofLineKind::kFlush) + 1);

std::string mark_of(const RoofSolution& roof, int timber) {
  return timber < 0 ? std::string() : roof.timbers[at(timber)].mark;
}

std::string cures_text(const RoofFinding& finding, const Voice& voice) {
  const std::string side = side_letters(finding.b);
  std::string plate =
      say(Msg::kRoofCurePlate, voice.language, {{"plate", say_inches(finding.plate, voice)}, {"b", side}});
  if (finding.overhang < 0) return plate;
  const std::string overhang =
      say(Msg::kRoofCureOverhang, voice.language, {{"overhang", say_inches(finding.overhang, voice)}, {"b", side}});
  return say(Msg::kRoofCureOr, voice.language, {{"first", overhang}, {"second", plate}});
}

std::string angle_text(double radians, const Voice& voice) { return say_angle(Angle::from_radians(radians), voice); }

std::string cut_row(const RoofEndCut& cut, const Voice& voice) {
  const BladeAngles side = blade_angles(cut.plane, Face::kNear), top = blade_angles(cut.plane, Face::kTop);
  return say(Msg::kRoofCutRow, voice.language,
             {{"end", text(cut.at_b ? Msg::kRoofCutTop : Msg::kRoofCutFoot, voice.language)},
              {"side", angle_text(libm::fabs(side.swing), voice)},
              {"tilt", angle_text(libm::fabs(side.tilt), voice)},
              {"top", angle_text(libm::kPi / 2 - libm::fabs(top.swing), voice)}});
}

/// The hand of a timber with one cheek at an end: which way it leans.
bool leans_right(const RoofTimber& t) {
  double lean = 0;
  for (const RoofEndCut& cut : t.cuts) lean += cut.plane.normal.y * (cut.at_b ? 1 : 3);
  return lean < -1e-6;
}

/// All that is said of one timber but its mark.
std::string timber_rows(const RoofTimber& t, const Voice& voice) {
  std::string out = roof_timber_title(t, voice) + ", " +
                    say(Msg::kRoofTipToTip, voice.language, {{"length", say_inches(t.length, voice)}}) + "\n";
  for (const std::string& row : roof_timber_rows(t, voice)) out += "  " + row + "\n";
  return out;
}

std::string plane_rows(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice) {
  std::string out;
  for (std::size_t i = 0; i < plan.sides.size(); ++i) {
    const RoofPlane& plane = roof.shape.planes[i];
    const std::string side = say(Msg::kRoofSide, voice.language, side_letters(static_cast<int>(i)));
    out += "  " + side + ": ";
    out += plane.gable ? std::string(text(Msg::kRoofGableSide, voice.language))
                       : say(Msg::kRoofEaveSide, voice.language,
                             {{"pitch", print_slope(plan.sides[i].pitch, voice.marks)},
                              {"eave", say_inches(plane.eave_z, voice)},
                              {"area", roof_area_text(roof.shape.faces[i].slope_area, voice)}});
    out += "\n";
  }
  return out;
}

std::string line_rows(const RoofSolution& roof, const Voice& voice) {
  std::string out;
  for (const RoofLine& line : roof.shape.lines) {
    if (line.kind == RoofLineKind::kEave || line.kind == RoofLineKind::kFlush) continue;
    const double level = norm(flat(line.b - line.a));
    const bool edge = line.left < 0 || line.right < 0;  // a dormer's rake
    out += "  " + std::string(roof_line_name(line.kind, voice.language)) + " " +
           (line.left < 0 ? std::string() : plane_letters(roof, line.left)) + (edge ? "" : "-") +
           (line.right < 0 ? std::string() : plane_letters(roof, line.right)) + ": " +
           say(Msg::kRoofLineRow, voice.language,
               {{"length", say_inches(norm(line.b - line.a), voice)},
                {"slope", angle_text(libm::atan2(line.b.z - line.a.z, level), voice)}}) +
           "\n";
  }
  return out;
}

/// Their lengths are those of their openings and ridges.
std::string dormer_rows(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice) {
  const Language language = voice.language;
  std::string out;
  for (const DormerShape& d : roof.dormers) {
    const Dormer& told = plan.dormers[at(d.dormer)];
    const auto row = [&](Msg name, double inches) {
      return "; " + std::string(text(name, language)) + " " + say_inches(inches, voice);
    };
    out += "  " + dormer_letters(d.dormer) + ", " +
           std::string(text(d.gable ? Msg::kRoofDormerGable : Msg::kRoofDormerShed, language)) + ", " +
           say(Msg::kRoofSide, language, side_letters(d.side)) + ", " + print_slope(told.pitch, voice.marks) +
           row(Msg::kRoofDormerOpening, opening_length(d, roof.shape.planes[at(d.side)]));
    if (d.gable) out += row(Msg::kRoofDormerRidge, ridge_length(d));
    out += "\n";
  }
  return out;
}

/// "sides.2.pitch": the index and its field.
std::pair<int, std::string_view> index_and_field(std::string_view where, std::string_view list) {
  if (!where.starts_with(list)) return {-1, where};
  where.remove_prefix(list.size());
  int side = -1;
  const auto end = std::from_chars(where.data(), where.data() + where.size(), side).ptr;
  where.remove_prefix(static_cast<std::size_t>(end - where.data()));
  if (where.starts_with(".")) where.remove_prefix(1);
  return {side, where};
}

std::string finding_text(const RoofFinding& finding, const std::string& marks, const RoofSolution& roof,
                         const Voice& voice) {
  const auto msg = find_msg("roof_finding_" + std::string(roof_finding_key(finding.id)));
  if (!msg) return std::string(roof_finding_key(finding.id));
  const std::string value = finding.id == RoofFindingId::kThrust  ? say_weight(finding.value, voice)
                            : finding.id == RoofFindingId::kNotch ? print_fixed(finding.value * 100, 0) + " %"
                                                                  : say_inches(libm::fabs(finding.value), voice);
  const bool fascia = finding.id == RoofFindingId::kFasciaApart;
  return say(*msg, voice.language,
             {{"mark", marks},
              {"other", mark_of(roof, finding.other)},
              {"value", value},
              {"a", finding.a < 0 ? std::string() : side_letters(finding.a)},
              {"b", finding.b < 0 ? std::string() : side_letters(finding.b)},
              {"higher", text(finding.value > 0 ? Msg::kRoofFindingHigher : Msg::kRoofFindingLower, voice.language)},
              {"cures", fascia ? cures_text(finding, voice) : std::string()},
              {"dormer", std::to_string(finding.dormer + 1)}});
}

std::string dormer_error_text(const Error& error, int dormer, std::string_view field, const Voice& voice) {
  const struct {
    ErrorCode code;
    std::string_view field;
    Msg msg;
  } special[] = {{ErrorCode::kConflict, "side", Msg::kRoofErrorDormerSide},
                 {ErrorCode::kTooLarge, "pitch", Msg::kRoofErrorDormerPitch},
                 {ErrorCode::kConflict, "centre", Msg::kRoofErrorDormerCentre},
                 {ErrorCode::kTooLarge, "width", Msg::kRoofErrorDormerWidth},
                 {ErrorCode::kTooSmall, "width", Msg::kRoofErrorDormerNarrow},
                 {ErrorCode::kTooLarge, "plate_height", Msg::kRoofErrorDormerHigh},
                 {ErrorCode::kTooSmall, "plate_height", Msg::kRoofErrorDormerLow},
                 {ErrorCode::kTooSmall, "face", Msg::kRoofErrorDormerFace},
                 {ErrorCode::kImpossible, "room", Msg::kRoofErrorDormerRoom},
                 {ErrorCode::kImpossible, "meet", Msg::kRoofErrorDormerMeet}};
  const std::string number = std::to_string(dormer + 1);
  for (const auto& s : special)
    if (s.code == error.code && s.field == field) {
      const bool most = error.code == ErrorCode::kTooLarge;
      return say(
          s.msg, voice.language,
          {{"dormer", number},
           {"limit", most ? say_length_at_most({error.limit}, voice) : say_length_at_least({error.limit}, voice)}});
    }
  Error named = error;
  named.where = std::string(field);
  return say(Msg::kRoofErrorDormer, voice.language, {{"dormer", number}, {"error", error_text(named, voice)}});
}

}  // namespace

std::string_view roof_timber_key(RoofTimberKind kind) { return keys::word(kRoofTimbers, kind); }
std::string_view roof_line_key(RoofLineKind kind) { return keys::word(kRoofLines, kind); }
std::string_view roof_finding_key(RoofFindingId id) { return keys::word(kRoofFindings, id); }
std::string_view roof_cut_key(RoofCutName name) { return keys::word(kRoofCuts, name); }
std::string_view roof_timber_name(RoofTimberKind kind, Language language) {
  return key_text("roof_timber_", roof_timber_key(kind), language);
}
std::string_view roof_line_name(RoofLineKind kind, Language language) {
  return key_text("roof_line_", roof_line_key(kind), language);
}

std::string plane_letters(const RoofSolution& roof, int plane) {
  if (plane < roof.shape.sides) return side_letters(plane);
  for (const DormerShape& d : roof.dormers) {
    if (plane == d.plane) return dormer_letters(d.dormer) + (d.gable ? "L" : "");
    if (d.gable && plane == d.plane + 1) return dormer_letters(d.dormer) + "R";
  }
  return {};
}

std::string roof_area_text(double square_inches, const Voice& voice) {
  constexpr double kSquareFoot = 144, kSquareMetre = 1550.0031;
  return is_metric(voice.lengths.form) ? print_fixed(square_inches / kSquareMetre, 1) + " m²"
                                       : print_fixed(square_inches / kSquareFoot, 0) + " ft²";
}

std::string roof_finding_text(const RoofFinding& finding, const RoofSolution& roof, const Voice& voice) {
  return finding_text(finding, mark_of(roof, finding.timber), roof, voice);
}

std::vector<SaidRoofFinding> gathered_findings(const RoofSolution& roof, const Voice& voice) {
  struct Gathered {
    RoofFinding worst;
    std::vector<int> timbers;
  };
  std::vector<Gathered> all;
  for (const RoofFinding& finding : roof.findings) {
    const bool alone = finding.timber < 0 || finding.other >= 0 || finding.a >= 0 || finding.dormer >= 0;
    const auto it =
        std::find_if(all.begin(), all.end(), [&](const Gathered& g) { return !alone && g.worst.id == finding.id; });
    if (it == all.end()) {
      all.push_back({finding, {}});
      if (finding.timber >= 0) all.back().timbers.push_back(finding.timber);
      continue;
    }
    it->timbers.push_back(finding.timber);
    if (finding.value > it->worst.value) it->worst = finding;
  }
  std::vector<SaidRoofFinding> said;
  said.reserve(all.size());
  for (const Gathered& g : all)
    said.push_back({g.worst, finding_text(g.worst, roof_marks(roof, g.timbers), roof, voice)});
  return said;
}

std::string roof_error_text(const Error& error, const Voice& voice) {
  if (const auto dormer = index_and_field(error.where, "dormers."); dormer.first >= 0)
    return dormer_error_text(error, dormer.first, dormer.second, voice);
  const std::pair<int, std::string_view> place = index_and_field(error.where, "sides.");
  const std::string_view field = place.second;
  const std::string side = place.first < 0 ? std::string() : side_letters(place.first);
  const struct {
    ErrorCode code;
    std::string_view field;
    bool of_side;
    Msg msg;
  } special[] = {{ErrorCode::kConflict, "corner", true, Msg::kRoofErrorCorner},
                 {ErrorCode::kConflict, "outline", false, Msg::kRoofErrorClockwise},
                 {ErrorCode::kImpossible, "outline", false, Msg::kRoofErrorCrosses},
                 {ErrorCode::kImpossible, "roof", false, Msg::kRoofErrorGables},
                 {ErrorCode::kImpossible, "plane", true, Msg::kRoofErrorPlane},
                 {ErrorCode::kImpossible, "eave", true, Msg::kRoofErrorEave},
                 {ErrorCode::kImpossible, "overhang", true, Msg::kRoofErrorOverhang},
                 {ErrorCode::kImpossible, "overhang", false, Msg::kRoofErrorTails}};
  for (const auto& s : special)
    if (s.code == error.code && s.field == field && s.of_side == !side.empty())
      return say(s.msg, voice.language, {{"side", side}});
  Error named = error;
  named.where = std::string(field);
  if (field == "x" || field == "y") named.where.insert(0, "roof_");
  if (const std::size_t point = named.where.find('.'); point != std::string::npos)  // "hip.depth"
    named.where = named.where.substr(point + 1);
  const std::string said = error_text(named, voice);
  return side.empty() ? said : say(Msg::kRoofErrorField, voice.language, {{"side", side}, {"error", said}});
}

std::string roof_timber_title(const RoofTimber& t, const Voice& voice) {
  return std::string(roof_timber_name(t.kind, voice.language)) + ", " + section_text(t.section, voice);
}

std::vector<std::string> roof_timber_rows(const RoofTimber& t, const Voice& voice) {
  const Language language = voice.language;
  std::vector<std::string> rows;
  rows.reserve(t.cuts.size() + 5);
  rows.push_back(say(Msg::kRoofLineLength, language,
                     {{"line", say_inches(t.line_length, voice)}, {"shortening", say_inches(t.shortening, voice)}}));
  for (const RoofEndCut& cut : t.cuts) rows.push_back(cut_row(cut, voice));
  if (t.seat.cut)
    rows.push_back(say(Msg::kRoofSeatRow, language,
                       {{"seat", say_inches(t.seat.length, voice)}, {"heel", say_inches(t.seat.heel, voice)}}));
  if (t.drop > 0) rows.push_back(say(Msg::kRoofDropRow, language, {{"drop", say_inches(t.drop, voice)}}));
  if (libm::fabs(t.shift) > 1e-9)
    rows.push_back(say(
        Msg::kRoofShiftRow, language,
        {{"shift", say_inches(libm::fabs(t.shift), voice)}, {"side", side_letters(t.shift > 0 ? t.left : t.right)}}));
  if (t.backing.size() == 2) {
    const auto bevel = [&](const CutPlane& plane) {
      return angle_text(libm::atan2(libm::fabs(plane.normal.y), plane.normal.z), voice);
    };
    rows.push_back(
        say(Msg::kRoofBackingRow, language, {{"left", bevel(t.backing[0])}, {"right", bevel(t.backing[1])}}));
  }
  return rows;
}

std::vector<AlikeRoofTimbers> alike_timbers(const RoofSolution& roof, const Voice& voice) {
  std::vector<AlikeRoofTimbers> alike;
  std::vector<std::string> said;
  for (std::size_t i = 0; i < roof.timbers.size(); ++i) {
    std::string own = timber_rows(roof.timbers[i], voice);
    std::size_t k = 0;
    while (k < said.size() && said[k] != own) ++k;
    if (k == said.size()) {
      alike.emplace_back();
      said.push_back(std::move(own));
    }
    alike[k].by_hand[leans_right(roof.timbers[i]) ? 1 : 0].push_back(static_cast<int>(i));
  }
  return alike;
}

std::string roof_marks(const RoofSolution& roof, const std::vector<int>& timbers) {
  std::string marks;
  for (const int t : timbers) marks += (marks.empty() ? "" : ", ") + mark_of(roof, t);
  return marks;
}

std::string roof_text(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice) {
  const Language language = voice.language;
  std::string out = std::string(text(Msg::kRoofPlanes, language)) + "\n" + plane_rows(plan, roof, voice);
  out += std::string(text(Msg::kRoofLines, language)) + "\n" + line_rows(roof, voice);
  if (!roof.dormers.empty())
    out += std::string(text(Msg::kRoofDormers, language)) + "\n" + dormer_rows(plan, roof, voice);
  out += std::string(text(Msg::kRoofTimbers, language)) + "\n";
  for (const AlikeRoofTimbers& it : alike_timbers(roof, voice)) {
    const std::string left = roof_marks(roof, it.by_hand[0]), right = roof_marks(roof, it.by_hand[1]);
    const bool both = !left.empty() && !right.empty();
    out += (left.empty() ? right : left) + (both ? "; " + say(Msg::kRoofOtherHand, language, right) : std::string()) +
           ": " + timber_rows(roof.timbers[at(it.first())], voice);
  }
  out += std::string(text(Msg::kRoofNotes, language)) + "\n";
  for (const RoofFinding& finding : roof.findings) out += "  " + roof_finding_text(finding, roof, voice) + "\n";
  return out;
}

}  // namespace bentbook
