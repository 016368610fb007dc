#include "command/roofs/rafter.h"

#include "command/args.h"
#include "command/roofs/rafter_answers.h"
#include "roof/rafter_fields.h"

namespace bentbook {
namespace {

/// Options that are lengths of the whole roof, and their keys (rafter_fields.h).
struct LengthOption {
  std::string_view option, key;
};
constexpr LengthOption kRoofLengths[] = {
    {"depth", "depth"},
    {"breadth", "breadth"},
    {"plate", "plate"},
    {"ridge", "ridge"},
    {"ridge-beam", "ridge_beam"},
    {"ridge-seat", "ridge_seat"},
    {"ridge-depth", "ridge_depth"},
    {"sheathing", "sheathing"},
    {"trim", "trim"},
    {"spacing", "spacing"},
};
/// Of one side: the left (or both) by this name, the right with -right.
constexpr LengthOption kSideLengths[] = {
    {"seat", "seat"},
    {"heel", "heel"},
    {"overhang", "overhang"},
    {"plate-height", "plate_height"},
    {"measured-rise", "measured_rise"},
    {"measured-run", "measured_run"},
};
constexpr std::string_view kRafterOptions[] = {"span",          "run",
                                               "pitch",         "pitch-right",
                                               "depth",         "breadth",
                                               "plate",         "ridge",
                                               "ridge-beam",    "ridge-seat",
                                               "ridge-depth",   "sheathing",
                                               "trim",          "spacing",
                                               "seat",          "seat-right",
                                               "heel",          "heel-right",
                                               "overhang",      "overhang-right",
                                               "plate-height",  "plate-height-right",
                                               "measured-rise", "measured-rise-right",
                                               "measured-run",  "measured-run-right",
                                               "tail",          "tail-plumb",
                                               "held",          "load"};
constexpr std::string_view kTails[] = {"plumb", "square", "level"};
constexpr std::string_view kHeld[] = {"heels-and-plates", "ridge-and-plates", "ridge-and-heels"};

RafterInput nothing_said() {
  RafterInput input;
  input.left.seat = input.plate_breadth;
  input.left.overhang = input.sheathing = {};
  input.right = input.left;
  return input;
}

Result<void> read_plan(const Args& args, RafterInput& input) {
  const auto span = args.length("span"), run = args.length("run");
  if (!span || !run) return tl::unexpected(span ? run.error() : span.error());
  if (*span) input.span = **span;
  if (*run) input.run = **run;
  const bool measured = args.has("measured-run");
  if (!*span && !*run && !measured) return fail(ErrorCode::kMissing, "--span");
  input.plan_by = *span && *run ? PlanBy::kSpanAndRun : *run ? PlanBy::kRun : PlanBy::kSpan;
  if (!*span && !*run) {
    const auto own = args.length("measured-run");
    if (!own) return tl::unexpected(own.error());
    input.plan_by = PlanBy::kRun;
    input.run = **own;
  }
  return {};
}

Result<void> read_roof(const Args& args, RafterInput& input) {
  if (!args.has("depth")) return fail(ErrorCode::kMissing, "--depth");
  if (args.has("ridge") && (args.has("ridge-beam") || args.has("ridge-seat")))
    return fail(ErrorCode::kConflict, "--ridge");
  for (const LengthOption& o : kRoofLengths) {
    const auto value = args.length(o.option);
    if (!value) return tl::unexpected(value.error());
    if (*value) set_rafter_length(input, o.key, **value);
  }
  // A beam is borne on to its middle unless told otherwise.
  if (args.has("ridge-beam") && !args.has("ridge-seat")) input.beam_seat = {input.beam_breadth.count / 2};
  if (!args.has("seat") && !args.has("heel")) input.left.seat = input.plate_breadth;
  const auto tail = args.choice("tail", kTails);
  if (!tail) return tl::unexpected(tail.error());
  const auto plumb = args.length("tail-plumb");
  if (!plumb) return tl::unexpected(plumb.error());
  if (*plumb) set_rafter_length(input, "tail_plumb", **plumb);
  if (*tail) input.tail = static_cast<TailCut>(**tail);
  return {};
}

Result<void> read_side(const Args& args, RafterInput& input, bool right) {
  const std::string option_end = right ? "-right" : "", key_end = right ? "_right" : "_left";
  const auto pitch = args.slope("pitch" + option_end);
  if (!pitch) return tl::unexpected(pitch.error());
  if (*pitch) set_rafter_pitch(input, right ? Side::kRight : Side::kLeft, **pitch);
  if (args.has("seat" + option_end) && args.has("heel" + option_end))
    return fail(ErrorCode::kConflict, "--heel" + option_end);
  for (const LengthOption& o : kSideLengths) {
    const auto value = args.length(std::string(o.option) + option_end);
    if (!value) return tl::unexpected(value.error());
    if (*value) set_rafter_length(input, std::string(o.key) + key_end, **value);
  }
  if (args.has("measured-rise" + option_end) != args.has("measured-run" + option_end))
    return fail(ErrorCode::kMissing,
                (args.has("measured-rise" + option_end) ? "--measured-run" : "--measured-rise") + option_end);
  return {};
}

bool sides_differ(const Args& args) {
  for (const std::string_view option : kRafterOptions)
    if (option.ends_with("-right") && args.has(option)) return true;
  return args.has("held");
}

Result<void> read_load(const Args& args, RafterInput& input) {
  if (!args.has("load")) return {};
  const EntryStep step = entry_step(KeptIn::kPsf, args.voice().lengths.form);
  const auto load = parse_decimal(args.text("load"), step.decimals);
  if (!load) {
    Error error = load.error();
    error.where = "--load";
    return tl::unexpected(error);
  }
  input.load_psf = kept_of(*load, step);
  input.feet = Feet::kLoose;
  return {};
}

Result<RafterInput> read_rafter_options(const Args& args) {
  RafterInput input = nothing_said();
  if (!args.has("pitch") && !args.has("measured-rise")) return fail(ErrorCode::kMissing, "--pitch");
  Result<void> ok = read_plan(args, input);
  if (ok) ok = read_roof(args, input);
  if (ok) ok = read_side(args, input, false);
  if (ok && sides_differ(args)) {
    input.alike = false;
    input.right = input.left;
    if (!args.has("plate-height-right")) input.right.plate_height = input.left.plate_height;
    ok = read_side(args, input, true);
  }
  const auto held = args.choice("held", kHeld);
  if (ok && !held) ok = tl::unexpected(held.error());
  if (ok && *held) input.held = static_cast<Held>(**held);
  if (ok) ok = read_load(args, input);
  if (!ok) return tl::unexpected(ok.error());
  return input;
}

}  // namespace

Result<std::string> rafter_command(std::span<const std::string_view> words) {
  const auto args = Args::read(words, {}, kRafterOptions);
  if (!args) return tl::unexpected(args.error());
  if (!args->words().empty()) return fail(ErrorCode::kUnknownOption, std::string(args->words()[0]));
  const auto input = read_rafter_options(*args);
  if (!input) return tl::unexpected(input.error());
  const auto pair = solve_rafters(*input);
  if (!pair) return tl::unexpected(pair.error());
  return args->json() ? rafter_json(*input, *pair, args->voice()) : rafter_text(*input, *pair, args->voice());
}

}  // namespace bentbook
