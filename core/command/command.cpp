#include "command/command.h"

#include "command/angle.h"
#include "command/args.h"
#include "command/length.h"
#include "command/roofs/corner.h"
#include "command/roofs/rafter.h"
#include "text/utf8.h"
#include "words/error_words.h"

namespace bentbook {
namespace {

struct Command {
  std::string_view name;
  Result<std::string> (*run)(std::span<const std::string_view> words);
};
constexpr Command kCommands[] = {
    {"angle", angle_command},   {"rafter", rafter_command}, {"corner", corner_command},
    {"length", length_command}, {"mitre", mitre_command},   {"flip", flip_command},
};

constexpr std::string_view kUsage =
    R"(usage: bentbook angle --pitch 10:12 [--depth 7-1/2" --scale-step 1]
       bentbook rafter --span 24' --pitch 8:12 --depth 7-1/2" [--ridge 1-1/2"] [--overhang 1']
                       [--seat 3-1/2" | --heel 6"] [--load 30] (lb/ft2; kPa with --unit mm|m)
       bentbook corner --pitch 12:12 --other 8:12 [--eave-angle 90] [--valley] [--run 12'] [--thickness 1-1/2"]
                       [--spacing 16"]
       bentbook length "12' 7-3/8 + 3 1/2"
       bentbook mitre --between 90 --depth-a 7-1/2" [--depth-b 5-1/2"]
       bentbook flip --gap 1/16 --depth 7-1/2"
       bentbook book new|check|members|sheet|export|import FILE …
       bentbook roof FILE | roof new FILE …
       bentbook log merge|show|verify FILE …
       bentbook steps BOOK MARK [--log FILE]
       bentbook raise FILE [--seed N] [--seconds S]
       bentbook raise check|text|order FILE …
       bentbook stock FILE|--pieces PIECES.csv …
       bentbook paper FILE --what sheets|patterns|labels|lists|raising …
       bentbook backup FILE|-
       bentbook restore FILE [--kit]
       bentbook verify FILE
every command: [--json] [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";

/// The text that an option (or the length itself) was given as.
std::string_view given_text(std::span<const std::string_view> args, std::string_view where) {
  if (!where.starts_with("--")) return args.size() > 1 && !args[1].starts_with("--") ? args[1] : std::string_view{};
  for (std::size_t i = 0; i < args.size(); ++i) {
    if (args[i] == where && i + 1 < args.size()) return args[i + 1];
    if (args[i].starts_with(where) && args[i].substr(where.size()).starts_with("="))
      return args[i].substr(where.size() + 1);
  }
  return {};
}

/// The entry again, a caret below the spot.
std::string spot(std::string_view entry, std::int64_t at) {
  if (entry.empty() || at < 0 || at > static_cast<std::int64_t>(entry.size())) return {};
  std::string out = "  " + std::string(entry) + "\n  ";
  out.append(count_characters(entry.substr(0, static_cast<std::size_t>(at))), ' ');
  return out + "^\n";
}

Voice voice_of(std::span<const std::string_view> args) {
  Voice voice;
  voice.marks = Marks::kAscii;
  voice.language = find_language(given_text(args, "--lang")).value_or(Language{});
  if (given_text(args, "--unit") == "mm") voice.lengths = {LengthForm::kMm, 16, 1};
  return voice;
}

CommandOutput refuse(std::span<const std::string_view> args, const Error& error) {
  CommandOutput out;
  out.exit_code = 2;
  const std::string sentence = error_text(error, voice_of(args));
  const bool named = sentence.find(error.where) != std::string::npos;
  out.err = "bentbook: ";
  if (error.where.starts_with("--") && !named) out.err += error.where + ": ";
  out.err += sentence + "\n" + spot(given_text(args, error.where), error.at);
  return out;
}

}  // namespace

bool is_command(std::string_view word) {
  for (const std::string_view known :
       {"--help", "help", "book", "roof", "log", "steps", "raise", "stock", "paper", "backup", "restore", "verify"})
    if (word == known) return true;
  for (const Command& c : kCommands)
    if (c.name == word) return true;
  return false;
}

CommandOutput run_command(std::span<const std::string_view> args) {
  if (args.empty()) return {2, {}, std::string(kUsage)};
  for (const std::string_view word : args)
    if (word == "--help" || word == "help") return {0, std::string(kUsage), {}};
  for (const Command& c : kCommands) {
    if (c.name != args[0]) continue;
    auto out = c.run(args.subspan(1));
    if (!out) return refuse(args, out.error());
    return {0, *std::move(out), {}};
  }
  return {2, {}, "bentbook: " + std::string(args[0]) + "?\n" + std::string(kUsage)};
}

}  // namespace bentbook
