#include "command/stock/stock.h"

#include <algorithm>
#include <utility>

#include "book/book_file.h"
#include "command/args.h"
#include "command/json/json_out.h"
#include "command/output.h"
#include "model/book_model.h"
#include "numeric/index.h"
#include "stock/pieces_csv.h"
#include "stock/stock_csv.h"
#include "words/stock_words.h"

namespace bentbook {
namespace {

constexpr std::string_view kStockUsage =
    R"(usage: bentbook stock FILE [--objective sticks|waste|cost] [--csv order|plan]
       bentbook stock --pieces PIECES.csv [--lengths "8',12',16'"] [--prices "31.50,47,63"]
                      [--kerf 1/8] [--trim 1] [--objective sticks|waste|cost] [--csv order|plan]
every command: [--json] [--unit in|ft|mm|m] [--division 8|16|32|64] [--lang TAG]
)";
constexpr std::string_view kStockOptions[] = {"objective", "pieces", "lengths", "prices", "kerf", "trim", "csv"};

/// "8',12'": parted at semicolons where there is one, else at commas.
std::vector<std::string_view> parted(std::string_view list) {
  const char mark = list.find(';') != std::string_view::npos ? ';' : ',';
  std::vector<std::string_view> parts;
  for (std::size_t from = 0; from <= list.size();) {
    const std::size_t to = std::min(list.find(mark, from), list.size());
    parts.push_back(list.substr(from, to - from));
    from = to + 1;
  }
  return parts;
}

class StockCall {
 public:
  StockCall(const Args& args, const Files& files) : args_(args), files_(files), voice_(args.voice()) {}

  CommandOutput run() { return args_.has("pieces") ? from_list() : from_book(); }

 private:
  CommandOutput from_book() {
    const std::string_view path = args_.words().empty() ? std::string_view{} : args_.words()[0];
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    const auto book = read_book(*bytes);
    if (!book) return refused(std::string(path) + ": " + frame_error_text(book.error(), voice_));
    if (!args_.has("unit") && !args_.has("division")) voice_.lengths = book->lengths;
    const BookModel model = solve(*book);
    if (!*model.frame) return refused(model.frame->error(), voice_);
    truck_ = book->raising.truck;
    return planned(pieces_of(**model.frame), book->stock);
  }

  CommandOutput from_list() {
    const std::string_view path = args_.text("pieces");
    const auto bytes = files_.read(path);
    if (!bytes) return refused(say(Msg::kBookUnreadable, voice_.language, path));
    PiecesCsv list = read_pieces_csv(*bytes, args_.bare());
    CommandOutput out{2, {}, {}};
    for (const PieceTrouble& trouble : list.troubles)
      out.err += "bentbook: " +
                 say(Msg::kOrderLine, voice_.language,
                     {{"path", path},
                      {"line", std::to_string(trouble.line)},
                      {"column", trouble.column},
                      {"reason", frame_error_text(trouble.error, voice_)}}) +
                 "\n";
    if (!out.err.empty()) return out;
    const bool metric = is_metric(voice_.lengths.form);
    StockPlan plan = metric ? metric_stock() : StockPlan{};
    plan.longer = false;  // a list of lengths is all that there is
    return planned(std::move(list.pieces), plan);
  }

  /// What the options say, put into the plan; the first trouble.
  Result<void> take_options(const std::vector<StockPiece>& pieces, StockPlan& plan) const {
    const auto aim = args_.choice("objective", kStockAimWords);
    if (!aim) return tl::unexpected(aim.error());
    if (*aim) plan.aim = static_cast<StockAim>(**aim);
    for (const auto& [name, member] : {std::pair{"kerf", &StockPlan::kerf}, std::pair{"trim", &StockPlan::trim}}) {
      const auto length = args_.length(name);
      if (!length) return tl::unexpected(length.error());
      if (*length) plan.*member = **length;
    }
    if (args_.has("lengths")) {
      plan.lengths.clear();
      for (const std::string_view part : parted(args_.text("lengths"))) {
        const auto length = parse_length(part, args_.bare());
        if (!length) return fail(length.error().code, "--lengths " + std::string(part));
        plan.lengths.push_back(*length);
      }
    }
    if (!args_.has("prices")) return {};
    const std::vector<std::string_view> prices = parted(args_.text("prices"));
    if (prices.size() != plan.lengths.size()) return fail(ErrorCode::kConflict, "--prices");
    for (std::size_t i = 0; i < prices.size(); ++i) {
      const auto price = parse_decimal(prices[i], 2);
      if (!price) return fail(price.error().code, "--prices " + std::string(prices[i]));
      for (const StockPiece& piece : pieces) {
        const StockPrice one{piece.section, {}, plan.lengths[i], static_cast<int>(*price)};
        if (std::find(plan.prices.begin(), plan.prices.end(), one) == plan.prices.end()) plan.prices.push_back(one);
      }
    }
    return {};
  }

  CommandOutput planned(std::vector<StockPiece> pieces, StockPlan plan) {
    if (auto ok = take_options(pieces, plan); !ok) return refused(ok.error(), voice_);
    constexpr std::string_view kLists[] = {"order", "plan"};
    const auto list = args_.choice("csv", kLists);
    if (!list) return refused(list.error(), voice_);
    const StockOrder order = plan_stock(std::move(pieces), plan);
    if (order.trouble) return refused(stock_trouble_text(*order.trouble, voice_));
    for (const StockGroup& group : order.groups)
      if (group.trouble) return refused(stock_trouble_text(*group.trouble, voice_));
    if (*list) return said(**list == 0 ? write_order_rows(order) : write_cutting_plan(order));
    return said(args_.json() ? as_json(order, plan) : as_text(order, plan.aim));
  }

  /// In the unit that the aim counts in.
  static double as_counted(std::int64_t n, StockAim aim) {
    if (aim == StockAim::kSticks) return static_cast<double>(n);
    return aim == StockAim::kWaste ? Length{n}.in() : static_cast<double>(n) / 100;
  }

  [[nodiscard]] std::string as_json(const StockOrder& order, const StockPlan& plan) const {
    const StockTotals totals = totals_of(order);
    JsonOut out(voice_);
    out.count("sticks", totals.sticks);
    out.count("bought", totals.bought);
    out.text("objective", kStockAimWords[static_cast<std::size_t>(plan.aim)]);
    out.number("counted", as_counted(totals.counted, plan.aim), 6);
    out.number("bound", as_counted(totals.bound, plan.aim), 6);
    out.flag("proven", totals.proven);
    out.number("waste_in", totals.waste.in());
    out.number("kept_in", totals.kept.in());
    if (totals.priced) out.number("cost", static_cast<double>(totals.price) / 100, 2);
    out.number("board_feet", totals.board_feet, 3);
    out.number("weight_lb", totals.weight_lb, 3);
    if (truck_) out.count("trips", trips_for(order, truck_->length, truck_->carries.lb()).loads);
    out.texts("gone", order.gone);
    out.open_list("order");
    for (const OrderRow& row : order_rows(order)) {
      out.open_item();
      wood(out, row.section, row.species);
      out.number("length_in", row.length.in());
      out.flag("to_order", row.to_order);
      out.count("count", row.count);
      out.close();
    }
    out.close_list();
    out.open_list("plan");
    for (const StockGroup& group : order.groups)
      for (const PlannedStick& stick : group.sticks) stick_json(out, order, group, stick);
    out.close_list();
    return out.finish();
  }
  static void wood(JsonOut& out, const Section& section, const std::string& species) {
    const double sides[] = {section.breadth.in(), section.depth.in()};
    out.numbers("section", sides);
    out.text("species", species);
  }
  static void stick_json(JsonOut& out, const StockOrder& order, const StockGroup& group, const PlannedStick& stick) {
    out.open_item();
    out.count("stick", stick.number);
    wood(out, group.section, group.species);
    out.number("length_in", stick.length.in());
    if (!stick.yard.empty()) out.text("yard", stick.yard);
    out.flag("used", stick.used);
    out.open_list("pieces");
    for (const StickPiece& piece : stick.pieces) {
      out.open_item();
      out.text("mark", order.pieces[at(piece.piece)].mark);
      out.number("from_in", piece.from.in());
      out.number("length_in", piece.length.in());
      out.flag("held", piece.held);
      out.close();
    }
    out.close_list();
    out.open_list("offcuts");
    for (const Offcut& offcut : stick.offcuts) {
      out.open_item();
      out.number("from_in", offcut.from.in());
      out.number("length_in", offcut.length.in());
      out.flag("kept", offcut.kept);
      out.close();
    }
    out.close_list();
    out.close();
  }

  [[nodiscard]] std::string as_text(const StockOrder& order, StockAim aim) const {
    const StockTotals totals = totals_of(order);
    const Language language = voice_.language;
    std::string out = say_count(Msg::kStockSticks, language, totals.bought) + "\n";
    for (const OrderRow& row : order_rows(order))
      out += "  " + std::to_string(row.count) + " x " + say_length(row.length, voice_) + "  " +
             order_row_text(row, voice_) + "\n";
    out += told(text(Msg::kStockProvenName, language),
                totals.proven ? std::string(text(Msg::kStockProven, language)) : bound_text(totals, aim, voice_));
    if (totals.bought > 0 && totals.priced) out += told(text(Msg::kStockCost, language), money_text(totals.price));
    out += told(text(Msg::kStockWaste, language), say_length(totals.waste, voice_));
    for (const StockGroup& group : order.groups) {
      out += "\n" + wood_text(group.section, group.species, voice_) + "\n";
      for (const PlannedStick& stick : group.sticks) {
        out += "  " + std::to_string(stick.number) + "  " + say_length(stick.length, voice_) +
               (stick.yard.empty() ? std::string{} : " (" + stick.yard + ")") + ":";
        for (const StickPiece& piece : stick.pieces) out += " " + order.pieces[at(piece.piece)].mark;
        out += "\n";
      }
    }
    return out;
  }

  const Args& args_;
  const Files& files_;
  Voice voice_;
  std::optional<Truck> truck_;
};

}  // namespace

CommandOutput stock_command(std::span<const std::string_view> args, const Files& files) {
  const auto read = Args::read(args, {}, kStockOptions);
  if (!read) return refused(read.error(), Voice{Language::kEn, {}, Marks::kAscii});
  if (read->words().empty() && !read->has("pieces")) return {2, {}, std::string(kStockUsage)};
  if (!read->words().empty() && read->words()[0] == "help") return said(std::string(kStockUsage));
  return StockCall(*read, files).run();
}

}  // namespace bentbook
