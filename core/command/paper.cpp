#include "command/paper.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "book/book_file.h"
#include "command/args.h"
#include "command/output.h"
#include "frame/facts.h"
#include "printed/pages/list_csv.h"
#include "printed/pages/patterns.h"
#include "printed/printed.h"
#include "raising/check.h"

namespace bentbook {
namespace {

constexpr std::string_view kPaperUsage =
    R"(usage: bentbook paper FILE --what sheets|patterns|labels|lists|raising [--format pdf|csv|svg|dxf]
                      [--mark MARK,MARK] [--list cut,order,plan,hardware,settings] [--labels cut|2x4|3x8|2x5|3x10]
                      [--page a4|letter] [--saw NAME] [--day DAY] [--out FILE]
every command: [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";
constexpr std::string_view kPaperOptions[] = {"what", "format", "mark", "list", "labels", "page", "saw", "day", "out"};
constexpr std::string_view kPrintedWords[] = {"sheets", "patterns", "labels", "lists", "raising"};
constexpr std::string_view kPageWords[] = {"a4", "letter"};
constexpr std::string_view kListWords[] = {"cut", "order", "plan", "hardware", "settings"};
constexpr std::string_view kLabelWords[] = {"cut", "2x4", "3x8", "2x5", "3x10"};
enum class PaperFormat : std::uint8_t { kPdf, kCsv, kSvg, kDxf };
constexpr std::string_view kPaperFormatWords[] = {"pdf", "csv", "svg", "dxf"};

class PaperCall {
 public:
  PaperCall(const Args& args, const Files& files, const Printer& printer)
      : args_(args), files_(files), printer_(printer), voice_(args.voice()) {}

  CommandOutput run() {
    const std::string_view path = args_.words()[0];
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    auto book = read_book(*bytes);
    if (!book) return refused(std::string(path) + ": " + frame_error_text(book.error(), voice_));
    if (!args_.has("unit") && !args_.has("division")) voice_.lengths = book->lengths;
    voice_.marks = Marks::kScreen;
    if (args_.has("saw")) {
      book->saw = args_.text("saw");
      if (saw_of(*book).name != book->saw)
        return refused({ErrorCode::kUnknownOption, "--saw " + book->saw, -1, 0}, voice_);
    }
    auto options = asked();
    if (!options) return refused(options.error(), voice_);
    const auto format = args_.choice("format", kPaperFormatWords);
    if (!format) return refused(format.error(), voice_);
    const BookModel model = solve(*book);
    if (!*model.frame) return refused(model.frame->error(), voice_);
    for (const std::string& mark : options->marks)
      if (timber_by_mark(**model.frame, mark) < 0) return refused(say(Msg::kBookNoMark, voice_.language, mark));
    const auto form = static_cast<PaperFormat>(format->value_or(0));
    if (form == PaperFormat::kSvg || form == PaperFormat::kDxf)
      return each_pattern(*book, model, *options, form == PaperFormat::kDxf ? PatternForm::kDxf : PatternForm::kSvg);
    OrderCheck check;
    if (options->what == PrintedKind::kRaising && !book->raising.steps.empty()) {
      check = check_order(**model.frame, book->raising);
      options->check = &check;
    }
    const auto file = written(*book, model, *options, form);
    return file ? hand_over(*file) : refused(file.error(), voice_);
  }

 private:
  [[nodiscard]] Result<PrintOptions> asked() const {
    PrintOptions options;
    const auto what = args_.choice("what", kPrintedWords);
    if (!what) return tl::unexpected(what.error());
    if (!*what) return fail(ErrorCode::kMissing, "--what");
    options.what = static_cast<PrintedKind>(**what);
    // What would have no effect was meant for another kind.
    const bool timbers = options.what != PrintedKind::kLists && options.what != PrintedKind::kRaising;
    if (args_.has("mark") && !timbers) return fail(ErrorCode::kConflict, "--mark");
    if (args_.has("list") && options.what != PrintedKind::kLists) return fail(ErrorCode::kConflict, "--list");
    if (args_.has("labels") && options.what != PrintedKind::kLabels) return fail(ErrorCode::kConflict, "--labels");
    const auto page = args_.choice("page", kPageWords);
    if (!page) return tl::unexpected(page.error());
    // Letter where the book is in feet or inches, as the paper in the drawer is.
    options.page = *page                            ? static_cast<paper::PageSize>(**page)
                   : is_metric(voice_.lengths.form) ? paper::PageSize::kA4
                                                    : paper::PageSize::kLetter;
    const auto labels = args_.choice("labels", kLabelWords);
    if (!labels) return tl::unexpected(labels.error());
    if (labels->value_or(0) > 0) options.label_sheet = kLabelWords[static_cast<std::size_t>(**labels)];
    options.day = args_.has("day") ? std::string(args_.text("day")) : printer_.day;
    each("mark", [&](std::string_view mark) { options.marks.emplace_back(mark); });
    std::string_view unknown;
    each("list", [&](std::string_view word) {
      const auto* found = std::find(std::begin(kListWords), std::end(kListWords), word);
      if (found == std::end(kListWords))
        unknown = word;
      else
        options.lists.push_back(static_cast<PrintedList>(found - std::begin(kListWords)));
    });
    if (!unknown.empty()) return fail(ErrorCode::kUnknownOption, "--list " + std::string(unknown));
    return options;
  }

  /// A file a pattern, named after --out, the mark and a number.
  CommandOutput each_pattern(const Book& book, const BookModel& model, const PrintOptions& options, PatternForm form) {
    if (options.what != PrintedKind::kPatterns) return refused({ErrorCode::kConflict, "--format", -1, 0}, voice_);
    if (!args_.has("out")) return refused({ErrorCode::kMissing, "--out", -1, 0}, voice_);
    const auto made = pattern_files(book, model, options, form, voice_);
    if (!made) return refused(made.error(), voice_);
    std::string out;
    for (const PatternFile& file : *made) {
      const std::string path = std::string(args_.text("out")) + "-" + file.name;
      if (!files_.write(path, file.bytes)) return refused(say(Msg::kBookUnwritable, voice_.language, path));
      out += say(Msg::kBookWritten, voice_.language, path) + "\n";
    }
    return said(std::move(out));
  }

  /// Each of an option's words, parted by commas.
  template <class Do>
  void each(std::string_view option, Do act) const {
    const std::string_view all = args_.text(option);
    for (std::size_t from = 0; from < all.size();) {
      const std::size_t to = std::min(all.find(',', from), all.size());
      if (to > from) act(all.substr(from, to - from));
      from = to + 1;
    }
  }

  [[nodiscard]] Result<std::string> written(const Book& book, const BookModel& model, const PrintOptions& options,
                                            PaperFormat format) const {
    if (format == PaperFormat::kCsv) {
      if (options.what == PrintedKind::kLists) return list_csv(book, model, options, voice_);
      return fail(ErrorCode::kUnknownOption, "--format csv");
    }
    const auto document = print(book, model, options, voice_);
    if (!document) return tl::unexpected(document.error());
    return printer_.pdf(*document);
  }

  CommandOutput hand_over(std::string bytes) {
    if (!args_.has("out")) return said(std::move(bytes));
    const std::string_view path = args_.text("out");
    if (!files_.write(path, bytes)) return refused(say(Msg::kBookUnwritable, voice_.language, path));
    return said(say(Msg::kBookWritten, voice_.language, path) + "\n");
  }

  const Args& args_;
  const Files& files_;
  const Printer& printer_;
  Voice voice_;
};

}  // namespace

CommandOutput paper_command(std::span<const std::string_view> args, const Files& files, const Printer& printer) {
  const auto read = Args::read(args, {}, kPaperOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kPaperUsage)};
  if (read->words()[0] == "help") return said(std::string(kPaperUsage));
  return PaperCall(*read, files, printer).run();
}

}  // namespace bentbook
