#include "printed/pages/lists.h"

#include <algorithm>
#include <utility>

#include "frame/facts.h"
#include "frame/list/hardware.h"
#include "model/shop_model.h"
#include "numeric/index.h"
#include "paper/letters.h"
#include "paper/page_part.h"
#include "printed/flow.h"
#include "printed/pages/list_rows.h"
#include "printed/pages/stick_parts.h"
#include "words/frame_text.h"
#include "words/frame_words.h"
#include "words/shop_words.h"
#include "words/steps/saw_scale.h"
#include "words/stock_words.h"

namespace bentbook {
namespace {

using paper::Align;

class Lists {
 public:
  Lists(const Book& book, const BookModel& model, const PrintOptions& options, const Voice& voice)
      : book_(book),
        model_(model),
        frame_(**model.frame),
        voice_(voice),
        flow_(options, caution_foot({Msg::kFindingNotEngineered}, voice.language, room_of(options.page).width())) {}

  void add(PrintedList list) {
    switch (list) {
      case PrintedList::kCut:
        return cut_list();
      case PrintedList::kOrder:
        return order_list();
      case PrintedList::kPlan:
        return cutting_plan();
      case PrintedList::kHardware:
        return hardware();
      case PrintedList::kSettings:
        return settings();
    }
  }
  paper::Document finished() { return flow_.finished(); }

 private:
  [[nodiscard]] std::string said(Msg msg) const { return std::string(text(msg, voice_.language)); }
  [[nodiscard]] const std::string& mark_of(int timber) const { return frame_.timbers[at(timber)].mark; }

  /// Each list begins a page: it goes to another hand.
  void begin(Msg title) {
    if (begun_) flow_.turn();
    begun_ = true;
    flow_.title(said(title));
  }

  void cut_list() {
    if (frame_.timbers.empty()) return;
    begin(Msg::kPaperCutList);
    std::vector<TableRow> rows;
    for (const CutRow& row : cut_rows(frame_)) {
      const Timber& timber = frame_.timbers[at(row.timber)];
      const TimberFacts facts = facts_of(timber, stock_step(voice_));
      std::string marks;
      for (const int t : row.timbers) marks += (marks.empty() ? "" : ", ") + mark_of(t);
      rows.push_back({std::to_string(row.timbers.size()), std::move(marks),
                      std::string(kind_name(timber.kind, voice_.language)), section_text(timber.wood.nominal, voice_),
                      say_inches(timber.length, voice_), say_weight(facts.weight_lb, voice_),
                      say_length(facts.stock, voice_)});
    }
    flow_.table({{said(Msg::kStockCount), Align::kRight, false, true},
                 {said(Msg::kPaperMarks), Align::kLeft, true, true},
                 {said(Msg::kPaperKind)},
                 {said(Msg::kSheetSection), Align::kRight},
                 {said(Msg::kSheetLength), Align::kRight, false, true},
                 {said(Msg::kPaperWeightEach), Align::kRight},
                 {said(Msg::kSheetStock), Align::kRight}},
                rows);
    const FrameTotals totals = totals_of(frame_, stock_step(voice_));
    flow_.gap(2);
    flow_.words(totals_text(totals, voice_), true);
    flow_.words(totals_wood_text(totals, voice_));
  }

  const StockOrder& order() {
    if (!order_) order_ = plan_stock(pieces_of(frame_), book_.stock);
    return *order_;
  }
  [[nodiscard]] std::string species(const std::string& name) const {
    return std::string(shown_name(name, voice_.language));
  }
  /// What keeps sticks from being planned stands on the list in their place.
  bool troubles() {
    if (order().trouble) {
      flow_.words(stock_trouble_text(*order().trouble, voice_), true);
      return true;
    }
    for (const StockTrouble& trouble : troubles_of(order())) flow_.words(stock_trouble_text(trouble, voice_), true);
    return false;
  }

  void order_list() {
    if (frame_.timbers.empty()) return;
    begin(Msg::kPaperOrder);
    const StockTotals totals = totals_of(order());
    if (troubles() || !totals.planned) return;
    std::vector<TableRow> rows;
    const bool priced = totals.bought > 0 && totals.priced;
    for (const OrderRow& row : order_rows(order())) {
      rows.push_back({std::to_string(row.count), section_text(row.section, voice_), say_length(row.length, voice_),
                      species(row.species) + (row.to_order ? " · " + said(Msg::kStockToOrder) : std::string{}),
                      say_wood(row.board_feet, voice_)});
      if (priced) rows.back().push_back(money_text(row.price));
    }
    std::vector<TableColumn> columns{{said(Msg::kStockCount), Align::kRight, false, true},
                                     {said(Msg::kSheetSection), Align::kRight, false, true},
                                     {said(Msg::kPaperLength), Align::kRight, false, true},
                                     {said(Msg::kFieldSpecies), Align::kLeft, true},
                                     {said(Msg::kSheetVolume), Align::kRight}};
    if (priced) columns.push_back({said(Msg::kStockCost), Align::kRight});
    flow_.table(columns, rows);
    flow_.gap(2);
    const auto fact = [&](Msg name, const std::string& value) { flow_.words(said(name) + ": " + value); };
    flow_.words(say_count(Msg::kStockSticks, voice_.language, totals.bought), true);
    fact(Msg::kStockWood, say_wood(totals.board_feet, voice_));
    if (totals.weight_lb > 0) fact(Msg::kStockLoad, say_weight(totals.weight_lb, voice_));
    if (priced) fact(Msg::kStockCost, money_text(totals.price));
    fact(Msg::kStockWaste, say_length(totals.waste, voice_));
    if (totals.kept > Length{}) fact(Msg::kStockKept, say_length(totals.kept, voice_));
    const Trips trips = trips_for(order(), book_.raising.truck.length, book_.raising.truck.carries.lb());
    fact(Msg::kStockTrips, std::to_string(trips.loads));
    if (trips.over > 0) flow_.words(say_count(Msg::kStockOver, voice_.language, trips.over), true);
    flow_.words(totals.proven ? said(Msg::kStockProven) : bound_text(totals, book_.stock.aim, voice_));
  }

  void cutting_plan() {
    if (frame_.timbers.empty()) return;
    begin(Msg::kPaperPlan);
    if (troubles()) return;
    for (PagePart& part : stick_parts(order(), flow_.width(), voice_)) flow_.add(std::move(part));
  }

  void hardware() {
    const std::vector<HardwareRow> rows = hardware_of(frame_);
    if (rows.empty()) return;
    begin(Msg::kHardware);
    const auto table = [&](const std::string& heading, std::span<const HardwareRow> of) {
      flow_.heading(heading);
      std::vector<TableRow> said_rows;
      said_rows.reserve(of.size());
      for (const HardwareRow& row : of) said_rows.push_back({std::to_string(row.count), hardware_text(row, voice_)});
      flow_.table({{said(Msg::kStockCount), Align::kRight, false, true}, {said(Msg::kPaperKind), Align::kLeft, true}},
                  said_rows);
    };
    table(said(Msg::kHardwareAll), hardware_in_all(rows));
    const std::span<const HardwareRow> all(rows);
    for (std::size_t i = 0; i < rows.size();) {
      std::size_t end = i;
      while (end < rows.size() && rows[end].bent == rows[i].bent) ++end;
      table(rows[i].bent < 0 ? said(Msg::kListNoBent)
                             : say(Msg::kViewBent, voice_.language, std::to_string(rows[i].bent)),
            all.subspan(i, end - i));
      i = end;
    }
  }

  /// For each kind of cut a line: what is cut, then a box with each mark, as many on a line as there is room for.
  void boxes(const SettingRow& row, std::span<const TimberWork> work) {
    std::vector<std::pair<std::string, std::vector<std::string>>> cuts;
    for (const WaitingCut& cut : row.cuts) {
      const TimberWork& on = work[at(cut.work)];
      std::string step = step_text(on.steps[at(cut.step)], voice_.language);
      auto found = std::find_if(cuts.begin(), cuts.end(), [&](const auto& c) { return c.first == step; });
      if (found == cuts.end()) found = cuts.emplace(cuts.end(), std::move(step), std::vector<std::string>{});
      found->second.push_back(mark_of(on.timber));
    }
    box_lines(cuts);
  }
  /// What has few marks stands beside what is before it, where all of it has room on that line.
  void box_lines(const std::vector<std::pair<std::string, std::vector<std::string>>>& cuts) {
    constexpr double kSide = 3.6, kToMark = 1.2, kBehind = 3.5, kLine = 5.4, kIndent = 5;
    PagePart line;
    line.height = kLine;
    double x = 0;
    const auto down = [&](double to) {
      flow_.add(std::exchange(line, {{}, kLine}));
      x = to;
    };
    const auto width_of = [&](const std::string& mark) {
      return kSide + kToMark + paper::text_width(mark, kSmallLetters, true);
    };
    for (const auto& cut : cuts) {
      const std::string step = paper::shortened(cut.first, kSmallLetters, false, flow_.width() / 2);
      double all = paper::text_width(step, kSmallLetters, false);
      for (const std::string& mark : cut.second) all += kBehind + width_of(mark);
      if (x > 0 && x + kBehind + all > flow_.width()) down(0);
      if (x > 0) x += kBehind;
      x += paper::put_words(line.drawn, {x, 0.2}, step, {kSmallLetters, false}) + kBehind;
      for (const std::string& mark : cut.second) {
        if (x > kIndent && x + width_of(mark) > flow_.width()) down(kIndent);
        line.drawn.polygons.push_back({{{x, 0.1}, {x + kSide, 0.1}, {x + kSide, 0.1 + kSide}, {x, 0.1 + kSide}},
                                       draw::Fill::kNone,
                                       true,
                                       draw::Stroke::kThin});
        paper::put_words(line.drawn, {x + kSide + kToMark, 0.2}, mark, {kSmallLetters, true});
        x += width_of(mark) + kBehind;
      }
    }
    if (x > 0) down(0);
  }

  [[nodiscard]] std::string setting_text(const SettingRow& row) const {
    if (row.place != Workplace::kSaw) return row.said;
    const SawSetup& setup = row.saw.setup;
    const Saw& saw = saw_of(book_);
    std::string out;
    const auto also = [&](const std::string& words) { out += (out.empty() ? "" : " · ") + words; };
    if (row.saw.along) return said(Msg::kShopAlong);
    if (setup.table == 0 && setup.tilt == 0) also(said(Msg::kCardSquare));
    if (setup.table != 0) also(said(swing_name(saw.kind)) + " " + scale_text(saw, setup.table, voice_));
    if (setup.tilt != 0) also(said(Msg::kStepNumberTilt) + " " + scale_text(saw, setup.tilt, voice_));
    if (setup.stop != 0)
      also(said(Msg::kStepNumberStop) + " " + say_inches(static_cast<double>(setup.stop) / 64, voice_));
    return out;
  }

  void settings() {
    const auto work = work_of(book_, model_, {});
    if (!work || work->empty()) return;
    const std::vector<SettingRow> rows = setting_rows(*work, voice_);
    if (rows.empty()) return;
    begin(Msg::kPaperSettings);
    std::optional<Workplace> place;
    for (const SettingRow& row : rows) {
      if (place != row.place) {
        std::string heading(workplace_text(row.place, voice_.language));
        if (row.place == Workplace::kSaw)
          heading += ": " + std::string(shown_name(saw_of(book_).name, voice_.language));
        flow_.heading(heading);
      }
      place = row.place;
      PagePart head;
      head.height = 2 + paper::put_lines(head.drawn, {0, 2}, setting_text(row), {kStrongLetters, true}, flow_.width());
      head.kept = true;
      flow_.add(std::move(head));
      boxes(row, *work);
    }
  }

  const Book& book_;
  const BookModel& model_;
  const Frame& frame_;
  const Voice& voice_;
  PageFlow flow_;
  bool begun_ = false;
  std::optional<StockOrder> order_;
};

}  // namespace

Result<paper::Document> print_lists(const Book& book, const BookModel& model, const PrintOptions& options,
                                    const Voice& voice) {
  if (!*model.frame) return tl::unexpected(model.frame->error());
  Lists lists(book, model, options, voice);
  for (const PrintedList list :
       {PrintedList::kCut, PrintedList::kOrder, PrintedList::kPlan, PrintedList::kHardware, PrintedList::kSettings})
    if (options.lists.empty() || std::count(options.lists.begin(), options.lists.end(), list) > 0) lists.add(list);
  paper::Document document = lists.finished();
  if (document.pages.empty()) return fail(ErrorCode::kEmpty, "paper");
  return document;
}

}  // namespace bentbook
