#include "command/log.h"

#include "book/book_file.h"
#include "command/args.h"
#include "command/json/shop_json.h"
#include "command/output.h"
#include "frame/sheet/sheet.h"
#include "model/shop_model.h"
#include "shop/log/conflicts.h"
#include "shop/log/writers.h"
#include "text/hex.h"
#include "text/invisible.h"
#include "words/frame_words.h"
#include "words/shop_words.h"
#include "words/steps/step_lines.h"

namespace bentbook {
namespace {

constexpr std::string_view kLogUsage =
    R"(usage: bentbook log merge A B … -o C
       bentbook log show FILE
       bentbook log verify FILE
       bentbook log writers FILE
       bentbook log without FILE [DEVICE …] [--who NAME] -o C
       bentbook steps BOOK MARK [--log FILE] [--saw NAME]
every command: [--json] [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";

constexpr std::string_view kLogOptions[] = {"out", "log", "saw", "who"};

class LogCall {
 public:
  LogCall(const Args& args, const Files& files) : args_(args), files_(files), voice_(args.voice()) {}

  CommandOutput merge() {
    if (args_.words().size() < 3) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    const std::string_view path = args_.text("out");
    if (path.empty()) return refused({ErrorCode::kMissing, "-o", -1, 0}, voice_);
    Log all;
    for (std::size_t i = 1; i < args_.words().size(); ++i) {
      const auto log = log_at(args_.words()[i]);
      if (!log) return refused(log.error());
      auto both = merged(all, *log);
      if (!both) return refused(text(Msg::kLogTwoBooks, voice_.language));
      all = *std::move(both);
    }
    return store(path, all);
  }

  /// Who wrote, on how many phones, from when to when; and the phones' numbers.
  CommandOutput writers() {
    const auto log = log_at(word(1));
    if (!log) return refused(log.error());
    const std::vector<Writer> writers = writers_of(*log);
    if (args_.json()) return said(writers_json(writers, voice_));
    std::string out;
    for (const Writer& writer : writers) {
      out += writer.who.empty() ? std::string(text(Msg::kShopNobody, voice_.language)) : made_visible(writer.who);
      out += ": " + say(Msg::kWritersRow, voice_.language,
                        {{"phones", std::to_string(writer.devices.size())},
                         {"events", std::to_string(writer.events)},
                         {"from", moment_text(writer.from, 0)},
                         {"to", moment_text(writer.to, 0)}});
      for (std::size_t i = 0; i < writer.devices.size() && i < kNamedSides; ++i) out += "  " + hex(writer.devices[i]);
      out += writer.devices.size() > kNamedSides ? "  …\n" : "\n";
    }
    return said(std::move(out));
  }

  CommandOutput leave_out() {
    const std::string_view path = args_.text("out");
    if (path.empty()) return refused({ErrorCode::kMissing, "-o", -1, 0}, voice_);
    const auto log = log_at(word(1));
    if (!log) return refused(log.error());
    Devices left_out;
    for (std::size_t i = 2; i < args_.words().size(); ++i) {
      const auto device = read_hex(args_.words()[i], 16);
      if (!device) return refused({ErrorCode::kSyntax, "DEVICE", -1, 0}, voice_);
      left_out.insert(*device);
    }
    if (args_.has("who"))
      for (const Writer& writer : writers_of(*log))
        if (writer.who == args_.text("who")) left_out.insert(writer.devices.begin(), writer.devices.end());
    return store(path, without(*log, left_out));
  }

  CommandOutput show() {
    const auto log = log_at(word(1));
    if (!log) return refused(log.error());
    const ShopState state = fold(*log);
    if (args_.json()) return said(log_json(*log, state, voice_));
    std::string out;
    for (const Event& e : log->events) {
      out += id_text(e.id()) + "  " + made_visible(e.timber) + "  " + made_visible(e.step) + "  ";
      out += did_text(e.action, voice_.language);
      for (const std::string* more : {&e.who, &e.value, &e.note})
        if (!more->empty()) out += "  " + made_visible(*more);
      out += "\n";
    }
    for (const Conflict& c : conflicts_of(state)) out += "! " + conflict_text(c, voice_) + "\n";
    return said(std::move(out));
  }

  CommandOutput verify() {
    const auto bytes = files_.read(word(1));
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, word(1)));
    const LogScan scan = scan_log(*bytes);
    const auto good = static_cast<std::int64_t>(scan.log.events.size());
    CommandOutput out;
    out.exit_code = scan.troubles.empty() ? 0 : 2;
    if (args_.json()) {
      out.out = log_check_json(scan, voice_);
      return out;
    }
    if (scan.troubles.empty()) return said(say_count(Msg::kLogWhole, voice_.language, good) + "\n");
    for (const LogTrouble& trouble : scan.troubles) out.err += "bentbook: " + log_trouble_text(trouble, voice_) + "\n";
    out.err += say_count(Msg::kLogLeft, voice_.language, good) + "\n";
    return out;
  }

  CommandOutput steps() {
    const std::string_view path = word(0);
    if (path.empty()) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    auto book = read_book(*bytes);
    if (!book) return refused(std::string(path) + ": " + frame_error_text(book.error(), voice_));
    if (!args_.has("unit") && !args_.has("division")) voice_.lengths = book->lengths;
    if (args_.has("saw")) {
      book->saw = args_.text("saw");
      if (saw_of(*book).name != book->saw)
        return refused({ErrorCode::kUnknownOption, "--saw " + book->saw, -1, 0}, voice_);
    }
    ShopState state;
    if (args_.has("log")) {
      const auto log = log_at(args_.text("log"));
      if (!log) return refused(log.error());
      state = fold(*log);
    }
    const BookModel model = solve(*book);
    if (!*model.frame) return refused(model.frame->error(), voice_);
    const auto work = timber_work(*book, model, state, word(1));
    if (!work) return refused(say(Msg::kBookNoMark, voice_.language, word(1)));
    const Timber& timber = (*model.frame)->timbers[static_cast<std::size_t>(work->timber)];
    return said(args_.json() ? steps_json(timber, *work, state, voice_) : steps_said(*book, **model.frame, *work));
  }

 private:
  static std::string hex(std::uint64_t device) {
    std::string out;
    put_hex(out, device, 16);
    return out;
  }

  CommandOutput store(std::string_view path, const Log& log) {
    if (!files_.write(path, write_log(log))) return refused(say(Msg::kBookUnwritable, voice_.language, path));
    const auto events = static_cast<std::int64_t>(log.events.size());
    return said(say_count(Msg::kLogWritten, voice_.language, events, {{"path", path}}) + "\n");
  }

  [[nodiscard]] std::string_view word(std::size_t index) const {
    return index < args_.words().size() ? args_.words()[index] : std::string_view{};
  }

  /// A log's file, or why there is none.
  [[nodiscard]] tl::expected<Log, std::string> log_at(std::string_view path) const {
    const auto bytes = files_.read(path);
    if (!bytes) return tl::unexpected(say(Msg::kBookUnreadable, voice_.language, path));
    LogScan scan = scan_log(*bytes);
    if (scan.troubles.empty()) return std::move(scan.log);
    return tl::unexpected(std::string(path) + ": " + log_trouble_text(scan.troubles.front(), voice_));
  }

  [[nodiscard]] std::string steps_said(const Book& book, const Frame& frame, const TimberWork& work) const {
    std::string out;
    const Saw saw = saw_of(book);
    const Sheet sheet = solve_sheet(frame, work.timber, saw);
    unsigned cautions = 0;
    for (std::size_t i = 0; i < work.steps.size(); ++i) {
      const WorkStep& step = work.steps[i];
      out += work.progress.done[i] ? "[x] " : "[ ] ";
      out += step_text(step, voice_.language) + "  (";
      out += workplace_text(step.place, voice_.language);
      out += ")\n";
      for (const StepLine& line : step_lines(step, sheet, saw, voice_)) {
        const bool pair = !line.name.empty() && !line.value.empty();
        out += "      " + (pair ? told(line.name, line.value) : line.name + line.value + "\n");
        if (!line.note.empty()) out += "        " + line.note + "\n";
      }
      cautions |= step.cautions;
    }
    for (const WorkCaution caution : {kKickback, kEyesEars, kCords, kWorkHeld})
      if ((cautions & caution) != 0) out += "! " + std::string(work_caution_text(caution, voice_.language)) + "\n";
    for (const StepFlag& flag : work.progress.flags) out += "! " + flag_text(flag, voice_) + "\n";
    return out;
  }

  const Args& args_;
  const Files& files_;
  Voice voice_;
};

/// -o is --out.
std::vector<std::string_view> long_options(std::span<const std::string_view> args) {
  std::vector<std::string_view> words(args.begin(), args.end());
  for (std::string_view& word : words)
    if (word == "-o") word = "--out";
  return words;
}

}  // namespace

CommandOutput log_command(std::span<const std::string_view> args, const Files& files) {
  const auto read = Args::read(long_options(args), {}, kLogOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kLogUsage)};
  const std::string_view what = read->words()[0];
  LogCall call(*read, files);
  if (what == "merge") return call.merge();
  if (what == "show") return call.show();
  if (what == "verify") return call.verify();
  if (what == "writers") return call.writers();
  if (what == "without") return call.leave_out();
  if (what == "help") return said(std::string(kLogUsage));
  return {2, {}, "bentbook: log " + std::string(what) + "?\n" + std::string(kLogUsage)};
}

CommandOutput steps_command(std::span<const std::string_view> args, const Files& files) {
  const auto read = Args::read(args, {}, kLogOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kLogUsage)};
  return LogCall(*read, files).steps();
}

}  // namespace bentbook
