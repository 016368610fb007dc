#include "command/roofs/corner.h"

#include <algorithm>

#include "command/args.h"
#include "command/json/json_out.h"
#include "words/roofs/corner_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kCornerFlags[] = {"valley", "backed"};
constexpr std::string_view kCornerOptions[] = {"eave-angle", "pitch",    "other",          "run",    "thickness",
                                               "depth",      "peak",     "ridge",          "seat",   "heel",
                                               "jack-depth", "overhang", "jack-thickness", "spacing"};
constexpr std::string_view kCornerPeakOptions[] = {"ridge", "between"};
constexpr std::string_view kCornerCutIds[] = {"peak_cheek",   "foot_cheek",    "jack",         "purlin_square",
                                              "purlin_plumb", "fascia_square", "fascia_plumb", "boards"};
constexpr std::string_view kCornerCautionIds[] = {"rises_away", "hip_shallow", "hip_high", "notch_past_quarter"};
constexpr std::string_view kCutFaces[] = {"top", "side", "bottom", "far_side"};
constexpr int kMostJacksListed = 100;

struct CornerLengthOption {
  std::string_view option;
  Length CornerInput::*at;
};
constexpr CornerLengthOption kCornerLengths[] = {
    {"run", &CornerInput::run},
    {"thickness", &CornerInput::hip_breadth},
    {"depth", &CornerInput::hip_depth},
    {"jack-thickness", &CornerInput::jack_breadth},
    {"jack-depth", &CornerInput::jack_depth},
    {"ridge", &CornerInput::ridge},
    {"overhang", &CornerInput::overhang},
    {"spacing", &CornerInput::spacing},
    {"seat", &CornerInput::seat},
    {"heel", &CornerInput::heel},
};

/// What tables are printed for: a foot of run, stock of an inch and a half, jacks every 16 in, nothing taken off.
CornerInput table_corner() {
  CornerInput input;
  input.run = Length::feet(1);
  input.hip_breadth = input.jack_breadth = Length::inches(3, 2);
  input.jack_depth = Length::inches(11, 2);
  input.spacing = Length::inches(16);
  input.ridge = input.overhang = input.seat = {};
  return input;
}

Result<void> read_corner_roofs(const Args& args, CornerInput& input) {
  const auto eaves = args.angle("eave-angle");
  const auto pitch = args.slope("pitch"), other = args.slope("other");
  if (!eaves) return tl::unexpected(eaves.error());
  for (const auto* slope : {&pitch, &other})
    if (!*slope) return tl::unexpected(slope->error());
  if (!*pitch) return fail(ErrorCode::kMissing, "--pitch");
  input.eave_angle = eaves->value_or(Angle::degrees(90));
  if (args.has("valley")) input.kind = CornerKind::kValley;
  if (input.eave_angle > Angle::degrees(180)) {  // as measured inside of the building
    input.kind = CornerKind::kValley;
    input.eave_angle = Angle::degrees(360) - input.eave_angle;
  }
  input.pitch = **pitch;
  input.pitch_other = other->value_or(**pitch);
  return {};
}

Result<void> read_corner_timbers(const Args& args, CornerInput& input) {
  if (args.has("seat") && args.has("heel")) return fail(ErrorCode::kConflict, "--heel");
  for (const CornerLengthOption& o : kCornerLengths) {
    const auto value = args.length(o.option);
    if (!value) return tl::unexpected(value.error());
    if (*value) input.*o.at = **value;
  }
  if (!args.has("jack-thickness")) input.jack_breadth = input.hip_breadth;
  if (!args.has("jack-depth")) input.jack_depth = std::max(input.jack_depth, input.hip_breadth);
  if (args.has("heel")) input.heel_by = HeelBy::kHeel;
  input.backed = args.has("backed");
  const auto peak = args.choice("peak", kCornerPeakOptions);
  if (!peak) return tl::unexpected(peak.error());
  if (*peak) input.peak = static_cast<CornerPeak>(**peak);
  return {};
}

/// Without its depth the hip is as deep as the jacks' cuts want it.
Result<RoofCorner> solve_told_corner(const Args& args, CornerInput& input) {
  if (!args.has("depth")) input.hip_depth = input.jack_depth;
  auto corner = solve_corner(input);
  if (!corner || args.has("depth")) return corner;
  for (const CornerCaution& c : corner->cautions)
    if (c.id == CornerCautionId::kHipShallow) input.hip_depth = c.length;
  return solve_corner(input);
}

void json_corner_roof(JsonOut& out, const CornerRoof& roof, const std::string& end) {
  out.degrees("slope_common" + end, roof.slope);
  out.degrees("plan" + end, roof.plan);
  out.degrees("backing" + end, roof.backing);
  out.degrees("jack_side" + end, roof.jack_side);
  out.degrees("jack_tilt" + end, roof.jack_tilt);
  out.length("jack_difference" + end, roof.jack_difference);
  out.length("jack_shortening" + end, roof.jack_shortening);
  out.length("jack_long_point" + end, roof.jack_long_point);
  out.length("common_run" + end, roof.run);
  out.length("overhang" + end, roof.overhang);
  out.length("seat_common" + end, roof.seat);
}

void json_corner_jacks(JsonOut& out, const CornerInput& input, const RoofCorner& corner, int roof) {
  out.open_list(roof == 0 ? "jacks" : "jacks_other");
  for (int i = 1; i <= std::min(corner.roof(roof).jacks, kMostJacksListed); ++i) {
    const Jack jack = jack_of(input, corner, roof, i);
    out.open_item();
    out.length("line", jack.line);
    out.length("to_cut", jack.length);
    out.close();
  }
  out.close_list();
}

void json_corner_cuts(JsonOut& out, const CornerInput& input, const RoofCorner& corner) {
  out.open_list("cuts");
  for (const CornerCut& cut : corner_cuts(input, corner)) {
    out.open_item();
    out.text("id", kCornerCutIds[static_cast<int>(cut.name)]);
    out.text("name", corner_cut_text(cut.name, out.voice().language));
    out.text("roof", cut.roof == 0 ? "first" : "other");
    out.open_list("faces");
    for (const Face face : {Face::kTop, Face::kNear, Face::kBottom, Face::kFar}) {
      const CutLine line = cut_line(cut, face);
      const OnSquare square = on_square(line.off_square);
      out.open_item();
      out.text("face", kCutFaces[static_cast<int>(face) - 1]);
      out.degrees("from_length", line.from_length);
      out.degrees("off_square", line.off_square);
      out.degrees("tilt", line.tilt);
      out.length("square", square.number);
      out.flag("along_12", square.along_12);
      out.close();
    }
    out.close_list();
    if (cut.section.depth > Length{}) {
      out.open_list("arrises");
      for (const Length mark : arris_marks(cut)) {
        out.open_item();
        out.length("behind", mark);
        out.close();
      }
      out.close_list();
    }
    out.close();
  }
  out.close_list();
}

std::string corner_json(const CornerInput& input, const RoofCorner& corner, const Voice& voice) {
  JsonOut out(voice);
  out.text("kind", input.kind == CornerKind::kHip ? "hip" : "valley");
  out.degrees("slope", corner.slope);
  out.degrees("complement", Angle::degrees(90) - corner.slope);
  out.length("run", corner.run);
  out.length("rise", corner.rise);
  out.length("length", corner.length);
  out.length("length_per_foot", corner.per_foot);
  out.length("square_run", corner.square_run);
  out.length("drop", corner.drop);
  out.length("hip_shift", corner.shift);
  if (corner.shift > Length{}) out.text("shift_to", corner.shift_to == 0 ? "first" : "other");
  out.length("shortening_level", corner.shortening_level);
  out.length("shortening", corner.shortening);
  out.length("to_cut", corner.to_cut);
  out.length("tail", corner.tail);
  out.length("heel_height", corner.heel);
  out.length("seat", corner.seat);
  out.length("birdsmouth_depth", corner.notch);
  out.number("birdsmouth_share", corner.notch_share);
  out.length("plumb_depth", corner.plumb_depth);
  out.length("longest", corner.longest);
  json_corner_roof(out, corner.roof(0), "");
  json_corner_roof(out, corner.roof(1), "_other");
  for (const int roof : {0, 1}) json_corner_jacks(out, input, corner, roof);
  json_corner_cuts(out, input, corner);
  out.open_list("cautions");
  for (const CornerCaution& c : corner.cautions) {
    out.open_item();
    out.text("id", kCornerCautionIds[static_cast<int>(c.id)]);
    out.text("text", corner_caution_text(c, voice));
    out.close();
  }
  out.close_list();
  return out.finish();
}

void text_corner_roof(std::string& out, const CornerInput& input, const RoofCorner& corner, int roof,
                      const Voice& voice) {
  const CornerRoof& r = corner.roof(roof);
  const auto name = [&](std::string_view key) { return "  " + field_name(key, voice.language); };
  out += std::string(corner_roof_text(roof, voice.language)) + "\n";
  out += told(name("plan"), say_angle(r.plan, voice, 2));
  out += told(name(input.kind == CornerKind::kHip ? "backing" : "trough"), say_angle(r.backing, voice, 2));
  if (!r.meets) return;
  out += told(name("jack_side"), say_angle(r.jack_side, voice, 2));
  out += told(name("jack_tilt"), say_angle(r.jack_tilt, voice, 2));
  out += told(name("jack_difference"), say_length(r.jack_difference, voice));
  out += told(name("jack_shortening"), say_length(r.jack_shortening, voice));
  for (int i = 1; i <= std::min(r.jacks, kMostJacksListed); ++i)
    out += told("  " + say(Msg::kCornerJack, voice.language, std::to_string(i)),
                say_length(jack_of(input, corner, roof, i).length, voice));
}

std::string corner_text(const CornerInput& input, const RoofCorner& corner, const Voice& voice) {
  std::string out = std::string(corner_kind_text(input.kind, voice.language)) + "\n";
  const auto angle = [&](Msg name, Angle value) {
    out += told(text(name, voice.language), say_angle(value, voice, 2));
  };
  const auto length = [&](std::string_view key, Length value) {
    out += told(field_name(key, voice.language), say_length(value, voice));
  };
  angle(Msg::kPlumbCut, corner.slope);
  angle(Msg::kSeatCut, Angle::degrees(90) - corner.slope);
  length("hip_run", corner.run);
  length("rise", corner.rise);
  length("hip_length", corner.length);
  length("per_foot", corner.per_foot);
  if (corner.shortening > Length{}) {
    length("shortening", corner.shortening);
    length("to_cut", corner.to_cut);
  }
  if (corner.tail > Length{}) length("hip_tail", corner.tail);
  length("longest", corner.longest);
  length("hip_heel", corner.heel);
  length("hip_seat", corner.seat);
  if (corner.shift == Length{} && corner.drop > Length{}) length("drop", corner.drop);
  if (const std::string how = drop_text(input, corner, voice); !how.empty()) out += how + "\n";
  for (const int roof : {0, 1}) text_corner_roof(out, input, corner, roof, voice);
  for (const CornerCut& cut : corner_cuts(input, corner)) {
    const CutLine line = cut_line(cut, first_face(cut.name));
    const bool broad = first_face(cut.name) == Face::kNear;
    out += std::string(corner_cut_text(cut.name, voice.language)) + ", " +
           std::string(corner_roof_text(cut.roof, voice.language)) + "\n";
    out += told("  " + std::string(text(broad ? Msg::kCornerOnBroad : Msg::kCornerOnTop, voice.language)),
                say_angle(line.from_length, voice, 2));
    out += "  " + on_square_text(line.off_square, voice) + "\n";
    out += told("  " + std::string(text(Msg::kCornerEdgeTilt, voice.language)), say_angle(line.tilt, voice, 2));
  }
  for (const CornerCaution& c : corner.cautions) out += "! " + corner_caution_text(c, voice) + "\n";
  return out;
}

}  // namespace

Result<std::string> corner_command(std::span<const std::string_view> words) {
  const auto args = Args::read(words, kCornerFlags, kCornerOptions);
  if (!args) return tl::unexpected(args.error());
  if (!args->words().empty()) return fail(ErrorCode::kUnknownOption, std::string(args->words()[0]));
  CornerInput input = table_corner();
  Result<void> ok = read_corner_roofs(*args, input);
  if (ok) ok = read_corner_timbers(*args, input);
  if (!ok) return tl::unexpected(ok.error());
  const auto corner = solve_told_corner(*args, input);
  if (!corner) return tl::unexpected(corner.error());
  return args->json() ? corner_json(input, *corner, args->voice()) : corner_text(input, *corner, args->voice());
}

}  // namespace bentbook
