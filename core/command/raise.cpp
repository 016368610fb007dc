#include "command/raise.h"

#include <array>

#include "book/book_file.h"
#include "command/args.h"
#include "command/json/raise_json.h"
#include "command/output.h"
#include "measure/expression.h"
#include "model/book_model.h"
#include "raising/order_csv.h"
#include "words/brief_text.h"
#include "words/frame_words.h"
#include "words/raise_text.h"

namespace bentbook {
namespace {

constexpr std::string_view kRaiseUsage =
    R"(usage: bentbook raise FILE [--seed N] [--seconds S] [--tries N] [--out FILE]
       bentbook raise check FILE [ORDER.csv]
       bentbook raise text FILE
       bentbook raise brief FILE
       bentbook raise order FILE [--out ORDER.csv]
every command: [--json] [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";

constexpr std::string_view kRaiseOptions[] = {"seed", "seconds", "tries", "out"};
constexpr std::int64_t kMostSeconds = 86'400, kMostTries = 100'000'000;
constexpr int kTriesInTime = 1'000'000'000;

class RaiseCall {
 public:
  RaiseCall(const Args& args, const Files& files, const Seconds& seconds)
      : args_(args), files_(files), seconds_(seconds), voice_(args.voice()) {}

  CommandOutput search() {
    return with_book(word(0), [&](Book book, const Frame& frame) -> CommandOutput {
      SearchOptions options;
      const auto seed = whole("seed", 1, 0, std::int64_t{1} << 53);
      const auto limit = whole("seconds", 0, 1, kMostSeconds);
      const auto tries = whole("tries", 0, 1, kMostTries);
      for (const auto* number : {&seed, &limit, &tries})
        if (!*number) return refused(number->error(), voice_);
      options.seed = static_cast<std::uint64_t>(*seed);
      if (*tries > 0)
        options.steps = options.improving = static_cast<int>(*tries);
      else if (*limit > 0)
        options.steps = options.improving = kTriesInTime;
      const double until = *limit > 0 ? seconds_() + static_cast<double>(*limit) : 0;
      const FoundOrder found = search_order(frame, book.raising, options,
                                            [&](const SearchProgress&) { return *limit == 0 || seconds_() < until; });
      book.raising = found.plan;
      return tell_found(found, book, frame);
    });
  }

  CommandOutput check() {
    return with_book(word(1), [&](Book book, const Frame& frame) -> CommandOutput {
      if (const std::string_view path = word(2); !path.empty()) {
        const auto bytes = files_.read(path);
        if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
        OrderCsv order = read_order_csv(*bytes);
        if (!order.troubles.empty()) return troubled(path, order.troubles);
        book.raising.steps = std::move(order.steps);
        if (order.later) book.raising.later = *std::move(order.later);
      }
      const OrderCheck check = check_order(frame, book.raising, StandingDepth::kExplain);
      CommandOutput out;
      if (!check.good()) out = refused(text(Msg::kRaiseWholeBad, voice_.language));
      out.out = args_.json() ? order_json(book, frame, check, voice_) : raising_text(book, frame, voice_, &check);
      return out;
    });
  }

  CommandOutput pin_up() {
    return with_book(word(1),
                     [&](const Book& book, const Frame& frame) { return said(raising_text(book, frame, voice_)); });
  }

  CommandOutput brief() {
    return with_book(word(1), [&](const Book& book, const Frame& frame) {
      const OrderCheck check = check_order(frame, book.raising);
      return said(raising_brief(book, frame, voice_, &check));
    });
  }

  CommandOutput order() {
    return with_book(word(1), [&](const Book& book, const Frame&) -> CommandOutput {
      std::string csv = write_order_csv(book.raising.steps, book.raising.later);
      if (!args_.has("out")) return said(std::move(csv));
      return stored(args_.text("out"), csv) ? said(written(args_.text("out"))) : unwritable(args_.text("out"));
    });
  }

 private:
  [[nodiscard]] std::string_view word(std::size_t index) const {
    return index < args_.words().size() ? args_.words()[index] : std::string_view{};
  }
  [[nodiscard]] bool stored(std::string_view path, std::string_view bytes) const { return files_.write(path, bytes); }
  [[nodiscard]] std::string written(std::string_view path) const {
    return say(Msg::kBookWritten, voice_.language, path) + "\n";
  }
  [[nodiscard]] CommandOutput unwritable(std::string_view path) const {
    return refused(say(Msg::kBookUnwritable, voice_.language, path));
  }

  /// A whole number of an option; `usual` where it is not given.
  [[nodiscard]] Result<std::int64_t> whole(std::string_view name, std::int64_t usual, std::int64_t low,
                                           std::int64_t high) const {
    if (!args_.has(name)) return usual;
    const std::string_view digits = args_.text(name);
    const std::string where = "--" + std::string(name);
    if (digits.empty()) return fail(ErrorCode::kMissing, where);
    std::int64_t n = 0;
    for (std::size_t i = 0; i < digits.size(); ++i) {
      if (digits[i] < '0' || digits[i] > '9') return fail(ErrorCode::kUnexpected, where, static_cast<int>(i));
      n = n * 10 + (digits[i] - '0');
      if (n > high) return fail(ErrorCode::kTooLarge, where);
    }
    if (n < low) return fail(ErrorCode::kTooSmall, where);
    return n;
  }

  template <class Then>
  CommandOutput with_book(std::string_view path, Then then) {
    if (path.empty()) return refused({ErrorCode::kMissing, "FILE", -1, 0}, voice_);
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    const auto book = read_book(*bytes);
    if (!book) return refused(std::string(path) + ": " + frame_error_text(book.error(), voice_));
    if (!args_.has("unit") && !args_.has("division")) voice_.lengths = book->lengths;
    const BookModel model = solve(*book);
    if (!*model.frame) return refused(model.frame->error(), voice_);
    return then(*book, **model.frame);
  }

  CommandOutput troubled(std::string_view path, const std::vector<OrderCsvTrouble>& troubles) const {
    CommandOutput out{2, {}, {}};
    for (const OrderCsvTrouble& trouble : troubles)
      out.err += "bentbook: " +
                 say(Msg::kOrderLine, voice_.language,
                     {{"path", path},
                      {"line", std::to_string(trouble.line)},
                      {"column", trouble.column},
                      {"reason", frame_error_text(trouble.error, voice_)}}) +
                 "\n";
    return out;
  }

  CommandOutput tell_found(const FoundOrder& found, const Book& book, const Frame& frame) {
    CommandOutput out;
    if (!found.found) out = refused(text(Msg::kRaiseNotFound, voice_.language));
    if (args_.has("out") && !stored(args_.text("out"), write_book(book))) return unwritable(args_.text("out"));
    // Verdicts alone: margins cost more than the search, and --seconds is what the user would wait.
    const OrderCheck check = check_order(frame, book.raising);
    if (args_.json())
      out.out = found_json(found, book, frame, check, voice_);
    else
      out.out = found_order_text(found, frame, voice_) + "\n" + raising_text(book, frame, voice_, &check);
    return out;
  }

  const Args& args_;
  const Files& files_;
  const Seconds& seconds_;
  Voice voice_;
};

}  // namespace

CommandOutput raise_command(std::span<const std::string_view> args, const Files& files, const Seconds& seconds) {
  const auto read = Args::read(args, {}, kRaiseOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty()) return {2, {}, std::string(kRaiseUsage)};
  const std::string_view what = read->words()[0];
  RaiseCall call(*read, files, seconds);
  if (what == "help") return said(std::string(kRaiseUsage));
  if (what == "check") return call.check();
  if (what == "text") return call.pin_up();
  if (what == "brief") return call.brief();
  if (what == "order") return call.order();
  return call.search();
}

}  // namespace bentbook
