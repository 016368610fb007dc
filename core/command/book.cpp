#include "command/book.h"

#include "book/book_edit.h"
#include "book/book_file.h"
#include "command/args.h"
#include "command/frame_obj.h"
#include "command/json/frame_json.h"
#include "command/json/frame_sheet_json.h"
#include "command/output.h"
#include "frame/joinery.h"
#include "frame/keys.h"
#include "frame/list/csv.h"
#include "frame/list/csv_write.h"
#include "frame/list/hardware.h"
#include "paper/tape_svg.h"
#include "text/invisible.h"
#include "words/face_words.h"
#include "words/frame_text.h"
#include "words/frame_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kBookUsage =
    R"(usage: bentbook book new FILE [--span 20' --length 24' --height 10' --pitch 8:12]
                              [--roof gable|lean_to|hip [--end-pitch 10:12] [--dragon-ties]] [--title "…"] [--list] [--demo]
       bentbook book check FILE
       bentbook book members FILE
       bentbook book sheet FILE MARK [--saw NAME]
       bentbook book export FILE --format obj|csv|svg|hardware [--mark MARK] [--out FILE]
       bentbook book import FILE LIST.csv [--good]
every command: [--json] [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";

constexpr std::string_view kBookFlags[] = {"list", "demo", "good", "dragon-ties"};
constexpr std::string_view kBookOptions[] = {"span", "length", "height", "pitch", "joinery", "title",
                                             "saw",  "format", "mark",   "out",   "roof",    "end-pitch"};
constexpr std::string_view kJoineryWords[] = {"plates", "wooden"};

/// One call of a command: what was asked, and the hands to do it.
class BookCall {
 public:
  BookCall(const Args& args, const Files& files) : args_(args), files_(files), voice_(args.voice()) {}

  CommandOutput make_new() {
    const std::string_view path = word(1);
    if (path.empty()) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    if (files_.read(path)) return refused(say(Msg::kBookExists, voice_.language, path));
    const auto book = asked_book();
    if (!book) return refused(book.error(), voice_);
    if (const std::string_view name = of_hips_alone(); !name.empty())
      return refused(say(Msg::kBookHipOnly, voice_.language, name));
    // A frame that cannot be solved is no start.
    if (const BookModel model = solve(*book); !*model.frame) return refused(model.frame->error(), voice_);
    return store(path, *book, say(Msg::kBookWritten, voice_.language, path) + "\n");
  }

  CommandOutput check() {
    return with_frame([&](const Book& book, const Frame& frame) {
      return said(args_.json() ? check_json(book, frame, voice_) : made_visible(check_text(book, frame, voice_)));
    });
  }

  CommandOutput members() {
    return with_frame([&](const Book& book, const Frame& frame) {
      return said(args_.json() ? members_json(book, frame, voice_) : made_visible(members_text(frame, voice_)));
    });
  }

  CommandOutput sheet() {
    return with_sheet(word(2), [&](const Book& book, const Frame& frame, const Sheet& sheet) {
      return said(args_.json() ? sheet_json(book, frame, sheet, voice_) : sheet_text(book, frame, sheet, voice_));
    });
  }

  CommandOutput put_out() {
    constexpr std::string_view kFormats[] = {"obj", "csv", "svg", "hardware"};
    const auto format = args_.choice("format", kFormats);
    if (!format) return refused(format.error(), voice_);
    if (!*format) return refused({ErrorCode::kMissing, "--format", -1, 0}, voice_);
    if (**format == 0) return with_frame([&](const Book&, const Frame& frame) { return hand_over(frame_obj(frame)); });
    if (**format == 1)
      return with_book([&](const Book& book) { return hand_over(write_timbers_csv(book.frame.added)); });
    if (**format == 3)
      return with_frame(
          [&](const Book&, const Frame& frame) { return hand_over(write_hardware_csv(hardware_of(frame))); });
    return with_sheet(args_.text("mark"), [&](const Book&, const Frame& frame, const Sheet& sheet) {
      return hand_over(sheet_svg(frame, sheet));
    });
  }

  CommandOutput take_in() {
    return with_book([&](const Book& book) {
      const auto bytes = files_.read(word(2));
      if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, word(2)));
      const CsvTimbers list = read_timbers_csv(*bytes, args_.bare(), book.species);
      CommandOutput out;
      for (const CsvTrouble& trouble : list.troubles)
        out.err += say(Msg::kBookCsvLine, voice_.language,
                       {{"line", std::to_string(trouble.line)},
                        {"column", trouble.column},
                        {"reason", frame_error_text(trouble.error, voice_)}}) +
                   "\n";
      const std::string good = std::to_string(list.timbers.size());
      if (!list.troubles.empty() && !(args_.has("good") && !list.timbers.empty())) {
        out.exit_code = 2;
        out.err += say(Msg::kBookCsvRefused, voice_.language, {{"n", good}}) + "\n";
        return out;
      }
      CommandOutput stored = store(word(1), with_all_added(book, list.timbers),
                                   say(Msg::kBookCsvTaken, voice_.language, {{"n", good}}) + "\n");
      stored.err.insert(0, out.err);
      return stored;
    });
  }

 private:
  [[nodiscard]] std::string_view word(std::size_t index) const {
    return index < args_.words().size() ? args_.words()[index] : std::string_view{};
  }

  /// What was asked of hipped ends where none were; empty: nothing.
  [[nodiscard]] std::string_view of_hips_alone() const {
    if (args_.text("roof") == keys::word(keys::kRoofForm, RoofForm::kHip)) return {};
    return args_.has("end-pitch") ? "--end-pitch" : args_.has("dragon-ties") ? "--dragon-ties" : "";
  }

  Result<Book> asked_book() {
    if (args_.has("demo")) return demo_book();
    const auto span = args_.length("span"), length = args_.length("length"), height = args_.length("height");
    const auto pitch = args_.slope("pitch");
    for (const auto* value : {&span, &length, &height})
      if (!*value) return tl::unexpected(value->error());
    if (!pitch) return tl::unexpected(pitch.error());
    const auto joinery = args_.choice("joinery", kJoineryWords);
    if (!joinery) return tl::unexpected(joinery.error());
    const FramePlan usual;
    const SizedBy by = is_metric(voice_.lengths.form) ? SizedBy::kMillimetres : SizedBy::kInches;
    Book book = new_book(args_.text("title"), span->value_or(usual.span), length->value_or(Length::feet(24)),
                         height->value_or(usual.plate_left), pitch->value_or(usual.pitch_left), by);
    const auto roof = args_.choice("roof", keys::kRoofForm);
    if (!roof) return tl::unexpected(roof.error());
    const auto end_pitch = args_.slope("end-pitch");
    if (!end_pitch) return tl::unexpected(end_pitch.error());
    if (*roof) book.frame.form = static_cast<RoofForm>(**roof);
    if (book.frame.form == RoofForm::kHip) {
      book.frame = default_hip_plan(book.frame.span, length->value_or(Length::feet(24)), book.frame.plate_left,
                                    book.frame.pitch_left, by, *end_pitch);
      book.frame.hips.dragon_ties = args_.has("dragon-ties");
    }
    if (*joinery) book.frame = with_joinery(std::move(book.frame), static_cast<Joinery>(**joinery));
    book.framed = !args_.has("list");
    return book;
  }

  CommandOutput store(std::string_view path, const Book& book, std::string text) {
    if (!files_.write(path, write_book(book))) return refused(say(Msg::kBookUnwritable, voice_.language, path));
    return said(std::move(text));
  }

  CommandOutput hand_over(std::string bytes) {
    if (!args_.has("out")) return said(std::move(bytes));
    const std::string_view path = args_.text("out");
    if (!files_.write(path, bytes)) return refused(say(Msg::kBookUnwritable, voice_.language, path));
    return said(say(Msg::kBookWritten, voice_.language, path) + "\n");
  }

  template <class Then>
  CommandOutput with_book(Then then) {
    const std::string_view path = word(1);
    if (path.empty()) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    std::string identity;
    const auto book = read_book(*bytes, &identity);
    if (!book) return refused(std::string(path) + ": " + frame_error_text(book.error(), voice_));
    if (!args_.has("unit") && !args_.has("division")) voice_.lengths = book->lengths;
    CommandOutput out = then(*book);
    if (!identity.empty()) out.err.insert(0, told(path, text(Msg::kBookIdentityFresh, voice_.language)) + "\n");
    return out;
  }

  template <class Then>
  CommandOutput with_frame(Then then) {
    return with_book([&](const Book& book) {
      const BookModel model = solve(book);
      if (!*model.frame) return refused(model.frame->error(), voice_);
      return then(book, **model.frame);
    });
  }

  template <class Then>
  CommandOutput with_sheet(std::string_view mark, Then then) {
    return with_frame([&](const Book& book, const Frame& frame) {
      const int timber = timber_by_mark(frame, mark);
      if (timber < 0) return refused(say(Msg::kBookNoMark, voice_.language, mark));
      Book asked = book;
      if (args_.has("saw")) asked.saw = args_.text("saw");
      if (args_.has("saw") && saw_of(asked).name != asked.saw)
        return refused({ErrorCode::kUnknownOption, "--saw " + asked.saw, -1, 0}, voice_);
      return then(asked, frame, solve_sheet(frame, timber, saw_of(asked)));
    });
  }

  /// The four faces side by side, as they are rolled, each with its tape.
  std::string sheet_svg(const Frame& frame, const Sheet& sheet) {
    constexpr double kColumn = 400, kPiece = 112;  // px of the page
    const Timber& timber = frame.timbers[static_cast<std::size_t>(sheet.timber)];
    Voice voice = voice_;
    voice.marks = Marks::kScreen;
    std::vector<TapeColumn> columns;
    for (Face face = Face::kTop;; face = rolled(face)) {
      const FaceMarks marks = face_marks(timber, sheet, face);
      draw::TapeOptions options;
      options.width = kColumn;
      options.room = 1e6;
      options.side = kPiece;
      set_ticks(options, voice);
      auto pages =
          draw::lay_out_tape(face_strip(frame, timber, marks, voice), options,
                             [](std::string_view said, draw::TapeText size) { return tape_size_on_paper(said, size); });
      const std::string number = std::to_string(static_cast<int>(face));
      std::string head = timber.mark + " · " + say(Msg::kSheetFace, voice.language, number);
      if (const std::string_view unit = page_unit(voice); !unit.empty()) (head += " · ") += unit;
      std::string note(text(gauge_from(marks), voice.language));
      if (marks.reference) note = face_up_text(marks, voice.language) + " · " + note;
      columns.push_back({std::move(head), std::move(note), std::move(pages.front())});
      if (face == Face::kFar) break;
    }
    return write_tape_svg(columns, kColumn, timber.mark, language_tag(voice.language));
  }

  const Args& args_;
  const Files& files_;
  Voice voice_;
};

struct BookCommand {
  std::string_view name;
  CommandOutput (BookCall::*run)();
};
constexpr BookCommand kBookCommands[] = {
    {"new", &BookCall::make_new}, {"check", &BookCall::check},    {"members", &BookCall::members},
    {"sheet", &BookCall::sheet},  {"export", &BookCall::put_out}, {"import", &BookCall::take_in},
};

}  // namespace

CommandOutput book_command(std::span<const std::string_view> args, const Files& files) {
  const auto read = Args::read(args, kBookFlags, kBookOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kBookUsage)};
  if (read->words()[0] == "help") return said(std::string(kBookUsage));
  for (const BookCommand& command : kBookCommands)
    if (command.name == read->words()[0]) return (BookCall(*read, files).*command.run)();
  return {2, {}, "bentbook: book " + std::string(read->words()[0]) + "?\n" + std::string(kBookUsage)};
}

}  // namespace bentbook
