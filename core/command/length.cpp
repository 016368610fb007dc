#include "command/length.h"

#include "command/args.h"
#include "command/json/json_out.h"
#include "cut/flip_test.h"
#include "cut/mitre.h"

namespace bentbook {

Result<std::string> length_command(std::span<const std::string_view> words) {
  const auto args = Args::read(words, {}, {});
  if (!args) return tl::unexpected(args.error());
  if (args->words().size() != 1)
    return fail(args->words().empty() ? ErrorCode::kMissing : ErrorCode::kConflict, "length");
  const auto value = parse_length(args->words()[0], args->bare());
  if (!value) return tl::unexpected(value.error());
  const Printed printed = print_length(*value, args->voice().lengths, args->voice().marks);
  const std::string shown = say_length(*value, args->voice());
  if (!args->json()) return shown + "\n";
  JsonOut out(args->voice());
  out.number("inches", value->in(), 9);
  out.number("mm", value->to_mm(), 9);
  out.text("text", shown);
  out.flag("rounded", printed.rounded);
  return out.finish();
}

Result<std::string> mitre_command(std::span<const std::string_view> words) {
  constexpr std::string_view kOptions[] = {"between", "depth-a", "depth-b"};
  const auto args = Args::read(words, {}, kOptions);
  if (!args) return tl::unexpected(args.error());
  const auto between = args->angle("between");
  const auto a = args->length("depth-a"), b = args->length("depth-b");
  if (!between) return tl::unexpected(between.error());
  if (!a || !b) return tl::unexpected(a ? b.error() : a.error());
  if (!*between) return fail(ErrorCode::kMissing, "--between");
  if (!*a) return fail(ErrorCode::kMissing, "--depth-a");
  const auto mitre = solve_mitre(**between, **a, b->value_or(**a));
  if (!mitre) return tl::unexpected(mitre.error());
  const Voice& voice = args->voice();
  if (args->json()) {
    JsonOut out(voice);
    out.degrees("off_square_a", mitre->off_square_a);
    out.degrees("off_square_b", mitre->off_square_b);
    out.degrees("from_length_a", mitre->from_length_a);
    out.degrees("from_length_b", mitre->from_length_b);
    out.length("line", mitre->line);
    return out.finish();
  }
  return told(field_name("off_square_a", voice.language), say_angle(mitre->off_square_a, voice, 2)) +
         told(field_name("off_square_b", voice.language), say_angle(mitre->off_square_b, voice, 2)) +
         told(field_name("line", voice.language), say_length(mitre->line, voice));
}

Result<std::string> flip_command(std::span<const std::string_view> words) {
  constexpr std::string_view kOptions[] = {"gap", "depth"};
  const auto args = Args::read(words, {}, kOptions);
  if (!args) return tl::unexpected(args.error());
  const auto gap = args->length("gap"), depth = args->length("depth");
  if (!gap || !depth) return tl::unexpected(gap ? depth.error() : gap.error());
  if (!*gap) return fail(ErrorCode::kMissing, "--gap");
  if (!*depth) return fail(ErrorCode::kMissing, "--depth");
  const auto error = scale_error_from_flip(**gap, **depth);
  if (!error) return tl::unexpected(error.error());
  const Voice& voice = args->voice();
  if (!args->json()) return told(field_name("scale_error", voice.language), say_angle(*error, voice, 3));
  JsonOut out(voice);
  out.degrees("scale_error", *error);
  return out.finish();
}

}  // namespace bentbook
