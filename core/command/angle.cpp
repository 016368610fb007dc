#include "command/angle.h"

#include "command/args.h"
#include "command/json/json_out.h"
#include "cut/setting.h"
#include "cut/triangle.h"

namespace bentbook {
namespace {

constexpr std::string_view kFlags[] = {"reads-90"};
constexpr std::string_view kOptions[] = {"pitch", "rise",       "run",         "slope-length", "depth",     "breadth",
                                         "kind",  "scale-step", "scale-error", "reach",        "max-swing", "max-tilt"};
constexpr std::string_view kKinds[] = {"circular", "bar", "hand"};
constexpr std::string_view kFaces[] = {"one", "two", "by_hand", "cannot"};

struct Asked {
  std::optional<Triangle> triangle;  ///< where two of its measures were given
  Slope slope;
  std::optional<Setting> plumb, seat;
  Saw saw;
  bool passes = false;  ///< breadth and reach are known
};

Result<void> read_triangle(const Args& args, Asked& asked) {
  TriangleInput input;
  int given = 0;
  const auto tell = [&](TrianglePart part) {
    ++given;
    input.older = input.newer;
    input.newer = part;
  };
  const auto pitch = args.slope("pitch");
  if (!pitch) return tl::unexpected(pitch.error());
  if (*pitch) input.slope = asked.slope = **pitch, tell(TrianglePart::kSlope);
  const auto rise = args.length("rise"), run = args.length("run"), length = args.length("slope-length");
  for (const auto* value : {&rise, &run, &length})
    if (!*value) return tl::unexpected(value->error());
  if (*rise) input.rise = **rise, tell(TrianglePart::kRise);
  if (*run) input.run = **run, tell(TrianglePart::kRun);
  if (*length) input.slope_length = **length, tell(TrianglePart::kSlopeLength);
  if (given == 0) return fail(ErrorCode::kMissing, "--pitch");
  if (given > 2) return fail(ErrorCode::kConflict, "triangle");
  if (given == 1) {
    if (!*pitch) return fail(ErrorCode::kMissing, "triangle");
    return {};
  }
  const auto triangle = solve_triangle(input);
  if (!triangle) return tl::unexpected(triangle.error());
  asked.triangle = *triangle;
  if (*pitch) return {};
  if (triangle->vertical) return fail(ErrorCode::kSteep, "slope");
  asked.slope = *rise && *run ? Slope::ratio(**rise, **run) : Slope::of_angle(triangle->angle);
  return {};
}

Result<void> read_saw(const Args& args, Saw& saw) {
  const auto kind = args.choice("kind", kKinds);
  if (!kind) return tl::unexpected(kind.error());
  if (*kind) saw.kind = static_cast<SawKind>(**kind);
  if (args.has("reads-90")) saw.square_reads = SquareReads::kNinety;
  const auto reach = args.length("reach");
  if (!reach) return tl::unexpected(reach.error());
  if (*reach) saw.reach = **reach;
  struct AngleOption {
    const char* name;
    Angle Saw::*at;
  };
  for (const AngleOption o : {AngleOption{"scale-step", &Saw::step}, AngleOption{"scale-error", &Saw::scale_error},
                              AngleOption{"max-swing", &Saw::max_swing}, AngleOption{"max-tilt", &Saw::max_tilt}}) {
    const auto value = args.angle(o.name);
    if (!value) return tl::unexpected(value.error());
    if (*value) saw.*o.at = **value;
  }
  return {};
}

Result<void> read_settings(const Args& args, Asked& asked) {
  const auto depth = args.length("depth"), breadth = args.length("breadth");
  if (!depth || !breadth) return tl::unexpected(depth ? breadth.error() : depth.error());
  if (auto ok = read_saw(args, asked.saw); !ok) return ok;
  if (!*depth) return {};
  asked.passes = breadth->has_value() && (args.has("reach") || asked.saw.kind == SawKind::kHand);
  const Section section{breadth->value_or(Length::inches(1)), **depth};
  const Angle angle = Angle::from_degrees(asked.slope.deg());
  const auto plumb = saw_setting(asked.saw, section, angle);
  if (!plumb) return tl::unexpected(plumb.error());
  asked.plumb = *plumb;
  if (angle == Angle{}) return {};
  const auto seat = saw_setting(asked.saw, section, Angle::degrees(90) - angle);
  if (seat) asked.seat = *seat;
  return {};
}

void json_graduation(JsonOut& out, const Graduation& g) {
  out.open_item();
  out.number("deg", g.reads.deg());
  out.number("arris_in", g.arris.in());
  out.number("gap_in", g.gap.in());
  out.number("gap_mated_in", g.gap_mated.in());
  out.close();
}

void json_pass(JsonOut& out, std::string_view key, const Pass& pass) {
  out.open(key);
  out.text("faces", kFaces[static_cast<int>(pass.faces)]);
  out.length("needed", pass.needed);
  out.length("left", pass.left);
  out.close();
}

void json_setting(JsonOut& out, const Setting& s, const std::string& prefix, bool passes) {
  out.degrees(prefix + "set_to", s.set_to);
  out.open_list(prefix + "settings");
  json_graduation(out, s.graduations.below);
  if (!s.graduations.on_mark) json_graduation(out, s.graduations.above);
  out.close_list();
  out.length(prefix + "travel", s.travel);
  if (!passes) return;
  json_pass(out, prefix + "on_side", s.on_side);
  json_pass(out, prefix + "on_top", s.on_top);
}

std::string as_json(const Asked& asked, const Voice& voice) {
  JsonOut out(voice);
  const SlopeFacts facts = slope_facts(asked.slope);
  out.degrees("slope", facts.angle);
  out.degrees("complement", facts.complement);
  out.number("pitch_in_12", facts.in_12);
  out.number("percent", facts.percent);
  out.number("mm_per_m", facts.mm_per_m);
  out.text("pitch_text", print_slope(asked.slope, voice.marks));
  if (asked.triangle) {
    out.length("rise", asked.triangle->rise);
    out.length("run", asked.triangle->run);
    out.length("slope_length", asked.triangle->slope_length);
  }
  if (asked.plumb) json_setting(out, *asked.plumb, "", asked.passes);
  if (asked.seat) json_setting(out, *asked.seat, "seat_", asked.passes);
  return out.finish();
}

std::string told_setting(const Asked& asked, const Setting& s, const Voice& voice) {
  const auto mark = [&](const Graduation& g) {
    return "  " + say(Msg::kSawSetAt, voice.language, say_angle(g.reads, voice, 2)) + ": " + say_costs(g, voice) + "\n";
  };
  std::string out = "  " + told(field_name("set_to", voice.language), say_angle(s.set_to, voice, 3));
  out += mark(s.graduations.below);
  if (!s.graduations.on_mark) out += mark(s.graduations.above);
  out += "  " + told(field_name("travel", voice.language), say_length(s.travel, voice));
  if (!asked.passes) return out;
  return out + "  " + say(Msg::kSawOnSide, voice.language, pass_text(s.on_side, asked.saw, voice)) + "\n  " +
         say(Msg::kSawOnTop, voice.language, pass_text(s.on_top, asked.saw, voice)) + "\n";
}

std::string as_text(const Asked& asked, const Voice& voice) {
  const SlopeFacts facts = slope_facts(asked.slope);
  std::string out = told(field_name("pitch", voice.language), print_slope(asked.slope, voice.marks));
  out += told(field_name("angle", voice.language), say_angle(facts.angle, voice, 3));
  out += told(field_name("complement", voice.language), say_angle(facts.complement, voice, 3));
  out += say(Msg::kAnglesIn12Value, voice.language, print_fixed(facts.in_12, 3)) + ", " +
         print_fixed(facts.percent, 2) + " %, " + print_fixed(facts.mm_per_m, 1) + " mm/m\n";
  if (asked.triangle) {
    out += told(field_name("rise", voice.language), say_length(asked.triangle->rise, voice));
    out += told(field_name("run", voice.language), say_length(asked.triangle->run, voice));
    out += told(field_name("slope_length", voice.language), say_length(asked.triangle->slope_length, voice));
  }
  if (asked.plumb)
    out += std::string(text(Msg::kPlumbCut, voice.language)) + "\n" + told_setting(asked, *asked.plumb, voice);
  if (asked.seat)
    out += std::string(text(Msg::kSeatCut, voice.language)) + "\n" + told_setting(asked, *asked.seat, voice);
  return out;
}

}  // namespace

Result<std::string> angle_command(std::span<const std::string_view> words) {
  const auto args = Args::read(words, kFlags, kOptions);
  if (!args) return tl::unexpected(args.error());
  if (!args->words().empty()) return fail(ErrorCode::kUnknownOption, std::string(args->words()[0]));
  Asked asked;
  if (auto ok = read_triangle(*args, asked); !ok) return tl::unexpected(ok.error());
  if (auto ok = read_settings(*args, asked); !ok) return tl::unexpected(ok.error());
  return args->json() ? as_json(asked, args->voice()) : as_text(asked, args->voice());
}

}  // namespace bentbook
