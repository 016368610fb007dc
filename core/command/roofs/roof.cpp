#include "command/roofs/roof.h"

#include "book/book_file.h"
#include "command/args.h"
#include "command/output.h"
#include "command/roofs/roof_json.h"
#include "roof/plan/roof_edits.h"
#include "text/invisible.h"
#include "words/roofs/roof_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kRoofUsage =
    R"(usage: bentbook roof FILE
       bentbook roof new FILE [--shape rectangle|l|t|u|bay] [--along 40' --across 20' --wing 20' --out 12']
                         [--pitch 8:12 --overhang 1' --spacing 2'] [--tops dropped|backed] [--tail plumb|square]
                         [--dormer gable|shed --dormer-side A --dormer-centre 20' --dormer-width 6' --dormer-face 2'
                          --dormer-plate 5' --dormer-pitch 8:12 --dormer-overhang 6"]
every command: [--json] [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";
constexpr std::string_view kPlanOptions[] = {"shape",        "along",         "across",         "wing",
                                             "out",          "pitch",         "overhang",       "spacing",
                                             "tops",         "tail",          "title",          "dormer",
                                             "dormer-side",  "dormer-centre", "dormer-width",   "dormer-face",
                                             "dormer-plate", "dormer-pitch",  "dormer-overhang"};
constexpr std::string_view kDormers[] = {"gable", "shed"};
constexpr std::string_view kShapes[] = {"rectangle", "l", "t", "u", "bay"};
constexpr std::string_view kTops[] = {"dropped", "backed"};
constexpr std::string_view kEnds[] = {"plumb", "square"};

/// The plan that was asked for.
Result<RoofPlan> asked_plan(const Args& args) {
  Length along = Length::feet(40), across = Length::feet(20), wing = Length::feet(20), out = Length::feet(12),
         overhang = Length::feet(1), spacing = Length::feet(2);
  const struct {
    std::string_view name;
    Length& value;
  } lengths[] = {{"along", along}, {"across", across},     {"wing", wing},
                 {"out", out},     {"overhang", overhang}, {"spacing", spacing}};
  const auto shape = args.choice("shape", kShapes), tops = args.choice("tops", kTops),
             tail = args.choice("tail", kEnds);
  const auto pitch = args.slope("pitch");
  for (const auto* choice : {&shape, &tops, &tail})
    if (!*choice) return tl::unexpected(choice->error());
  if (!pitch) return tl::unexpected(pitch.error());
  // A bay is no wing: its usual size is its own.
  const int kind = shape->value_or(0);
  if (kind == 3) wing = Length::feet(14);  // two of them leave a court
  if (kind == 4) wing = Length::feet(8), out = Length::inches(30);
  for (const auto& it : lengths) {
    const auto given = args.length(it.name);
    if (!given) return tl::unexpected(given.error());
    if (*given) it.value = **given;
  }
  const Slope slope = pitch->value_or(Slope::in_12(Length::inches(8)));
  RoofPlan plan = kind == 1   ? l_roof(along, across, wing, out, slope)
                  : kind == 2 ? t_roof(along, across, wing, out, slope)
                  : kind == 3 ? u_roof(along, across, wing, out, slope)
                  : kind == 4 ? bay_roof(along, across, wing, out, slope)
                              : rectangle_roof(along, across, slope);
  for (PlanSide& side : plan.sides) side.overhang = overhang;
  plan.spacing = spacing;
  if (*tops) plan.hip_top = static_cast<HipTop>(**tops);
  if (*tail) plan.tail = static_cast<TailEnd>(**tail);
  return plan;
}

/// With the dormer that was asked for: of usual size where nothing else is said.
Result<RoofPlan> with_asked_dormer(RoofPlan plan, const Args& args) {
  const auto kind = args.choice("dormer", kDormers);
  if (!kind) return tl::unexpected(kind.error());
  if (!*kind) return plan;
  int side = -1;
  const std::string letters(args.has("dormer-side") ? args.text("dormer-side") : std::string_view("A"));
  for (std::size_t i = 0; i < plan.sides.size(); ++i)
    if (side_letters(static_cast<int>(i)) == letters) side = static_cast<int>(i);
  if (side < 0) return fail(ErrorCode::kUnexpected, "dormer-side");
  plan = with_dormer(plan, side, static_cast<DormerKind>(**kind), Length::feet(1));
  Dormer& d = plan.dormers.back();
  const struct {
    std::string_view name;
    Length& value;
  } lengths[] = {{"dormer-centre", d.centre},
                 {"dormer-width", d.width},
                 {"dormer-face", d.face},
                 {"dormer-plate", d.plate_height},
                 {"dormer-overhang", d.overhang}};
  for (const auto& it : lengths) {
    const auto given = args.length(it.name);
    if (!given) return tl::unexpected(given.error());
    if (*given) it.value = **given;
  }
  const auto pitch = args.slope("dormer-pitch");
  if (!pitch) return tl::unexpected(pitch.error());
  if (*pitch) d.pitch = **pitch;
  return plan;
}

CommandOutput new_roof(const Args& args, const Files& files) {
  const Voice& voice = args.voice();
  if (args.words().size() < 2) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice);
  const std::string_view path = args.words()[1];
  if (files.read(path)) return refused(say(Msg::kBookExists, voice.language, path));
  auto plan = asked_plan(args);
  if (plan) plan = with_asked_dormer(*std::move(plan), args);
  if (!plan) return refused(plan.error(), voice);
  // A roof that cannot be solved is no start.
  if (const auto roof = solve_roof(*plan); !roof) return refused(roof_error_text(roof.error(), voice));
  const FramePlan usual;
  Book book = new_book(args.text("title"), usual.span, Length::feet(24), usual.plate_left, usual.pitch_left);
  book.framed = false;
  book.roof = *plan;
  if (!files.write(path, write_book(book))) return refused(say(Msg::kBookUnwritable, voice.language, path));
  return said(say(Msg::kBookWritten, voice.language, path) + "\n");
}

CommandOutput tell_roof(const Args& args, const Files& files) {
  Voice voice = args.voice();
  const std::string_view path = args.words()[0];
  const auto bytes = files.read(path);
  if (!bytes) return refused(say(Msg::kBookUnreadable, voice.language, path));
  const auto book = read_book(*bytes);
  if (!book) return refused(std::string(path) + ": " + frame_error_text(book.error(), voice));
  if (!args.has("unit") && !args.has("division")) voice.lengths = book->lengths;
  if (book->roof.sides.empty()) return refused(say(Msg::kRoofErrorNoRoof, voice.language, path));
  const auto roof = solve_roof(book->roof);
  if (!roof) return refused(roof_error_text(roof.error(), voice));
  return said(args.json() ? roof_json(book->roof, *roof, voice) : made_visible(roof_text(book->roof, *roof, voice)));
}

}  // namespace

CommandOutput roof_command(std::span<const std::string_view> args, const Files& files) {
  const auto read = Args::read(args, {}, kPlanOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kRoofUsage)};
  if (read->words()[0] == "help") return said(std::string(kRoofUsage));
  return read->words()[0] == "new" ? new_roof(*read, files) : tell_roof(*read, files);
}

}  // namespace bentbook
