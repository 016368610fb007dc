// What is ordered for a frame and what is cut out of which stick, against printed examples and a checker of its own.
#include <algorithm>
#include <catch_amalgamated.hpp>
#include <map>
#include <random>

#include "book/book_file.h"
#include "model/book_model.h"
#include "stock/cutting.h"
#include "stock/held.h"
#include "stock/order.h"
#include "stock/pattern.h"
#include "stock/pieces_csv.h"
#include "stock/relaxation.h"
#include "stock/stick_drawing.h"
#include "stock/stock_csv.h"

using namespace bentbook;

namespace {

CuttingProblem one_length(std::int64_t room, std::vector<CutRow> rows) {
  std::sort(rows.begin(), rows.end(), [](const CutRow& a, const CutRow& b) { return a.size > b.size; });
  return {rows, {{room, 1, -1}}};
}

/// The plan keeps every rule, by counting alone.
void check_cutting(const CuttingProblem& problem, const Cutting& cutting) {
  std::vector<int> cut(problem.rows.size(), 0), used(problem.kinds.size(), 0);
  std::int64_t cost = 0;
  for (const CutStick& stick : cutting.sticks) {
    std::int64_t taken = 0;
    for (const RowCount& p : stick.pieces) {
      REQUIRE(p.count > 0);
      taken += p.count * problem.rows[static_cast<std::size_t>(p.row)].size;
      cut[static_cast<std::size_t>(p.row)] += p.count;
    }
    const StickKind& kind = problem.kinds[static_cast<std::size_t>(stick.kind)];
    REQUIRE(taken <= kind.room);
    ++used[static_cast<std::size_t>(stick.kind)];
    cost += kind.cost;
  }
  for (std::size_t i = 0; i < cut.size(); ++i) REQUIRE(cut[i] == problem.rows[i].count);
  for (std::size_t k = 0; k < used.size(); ++k)
    REQUIRE((problem.kinds[k].most < 0 || used[k] <= problem.kinds[k].most));
  REQUIRE(cost == cutting.cost);
  REQUIRE(cutting.bound <= cutting.cost);
}

StockPiece piece(std::string mark, Length length, Section section = {Length::inches(8), Length::inches(8)}) {
  return {std::move(mark), section, "Douglas-fir", length, 40};
}

/// No plan breaks a length, loses or doubles a piece, uses what is not there, cuts into a defect.
void check_order(const StockOrder& order, const StockPlan& plan) {
  std::map<int, int> times;
  std::map<std::string, int> from_yard;
  std::vector<int> numbers;
  for (const StockGroup& group : order.groups) {
    if (group.trouble) continue;
    for (const PlannedStick& stick : group.sticks) {
      numbers.push_back(stick.number);
      if (!stick.yard.empty()) ++from_yard[stick.yard];
      std::vector<std::pair<Length, Length>> spans;
      for (const StickPiece& p : stick.pieces) {
        ++times[p.piece];
        const StockPiece& asked = order.pieces[static_cast<std::size_t>(p.piece)];
        REQUIRE(p.length == asked.length + plan.allowance);
        REQUIRE(asked.species == group.species);
        REQUIRE(asked.section.breadth + asked.section.depth == group.section.breadth + group.section.depth);
        REQUIRE(p.from >= plan.trim);
        REQUIRE(p.from + p.length <= stick.length - plan.trim);
        for (const StickDefect& d : stick.defects) REQUIRE((p.from >= d.to || p.from + p.length <= d.from));
        spans.emplace_back(p.from, p.from + p.length);
      }
      for (const Offcut& o : stick.offcuts) {
        spans.emplace_back(o.from, o.from + o.length);
        REQUIRE(o.kept == (o.length >= plan.keep));
      }
      std::sort(spans.begin(), spans.end());
      for (std::size_t i = 1; i < spans.size(); ++i) REQUIRE(spans[i].first - spans[i - 1].second >= plan.kerf);
      if (!spans.empty()) REQUIRE(spans.back().second <= stick.length - plan.trim);
    }
  }
  std::size_t troubled = 0;
  for (const StockGroup& group : order.groups)
    if (group.trouble)
      for (const StockPiece& p : order.pieces)
        if (p.species == group.species &&
            p.section.breadth + p.section.depth == group.section.breadth + group.section.depth)
          ++troubled;
  REQUIRE(times.size() + troubled == order.pieces.size());
  for (const auto& [index, n] : times) REQUIRE(n == 1);
  std::sort(numbers.begin(), numbers.end());
  REQUIRE(std::adjacent_find(numbers.begin(), numbers.end()) == numbers.end());
  for (const auto& [name, n] : from_yard) {
    int lying = 0;
    for (const YardStick& y : plan.yard)
      if (y.name == name) lying += y.count;
    REQUIRE(n <= lying);
  }
}

}  // namespace

TEST_CASE("six pieces go into three sticks, as the bin packing model that GLPK ships says", "[stock]") {
  // GLPK, examples/bpp.mod: items 50 60 30 70 50 40 in bins of 100.
  const CuttingProblem problem = one_length(100, {{50, 2}, {60, 1}, {30, 1}, {70, 1}, {40, 1}});
  const auto cutting = solve_cutting(problem);
  REQUIRE(cutting);
  check_cutting(problem, *cutting);
  CHECK(cutting->cost == 3);
  CHECK(cutting->proven());
}

TEST_CASE("thirteen widths come out of 73 rolls, as the encyclopaedia's example says", "[stock]") {
  // The worked example of the article "Cutting stock problem": 5600 mm rolls, 73 is the bound.
  const CuttingProblem problem = one_length(5600, {{1380, 22},
                                                   {1520, 25},
                                                   {1560, 12},
                                                   {1710, 14},
                                                   {1820, 18},
                                                   {1880, 18},
                                                   {1930, 20},
                                                   {2000, 10},
                                                   {2050, 12},
                                                   {2100, 14},
                                                   {2140, 16},
                                                   {2150, 18},
                                                   {2200, 20}});
  const auto cutting = solve_cutting(problem);
  REQUIRE(cutting);
  check_cutting(problem, *cutting);
  CHECK(cutting->cost == 73);
  CHECK(cutting->proven());
}

TEST_CASE("120 pieces of 20 to 100 in 150 are never more than one stick over the bound", "[stock]") {
  // As E. Falkenauer's uniform bin packing instances are made (OR-Library, binpack1).
  for (unsigned seed = 1; seed <= 20; ++seed) {
    std::mt19937 rng(seed);
    std::map<std::int64_t, int> count;
    std::int64_t all = 0;
    for (int i = 0; i < 120; ++i) {
      const std::int64_t size = 20 + static_cast<std::int64_t>(rng() % 81);
      ++count[size];
      all += size;
    }
    std::vector<CutRow> rows;
    rows.reserve(count.size());
    for (const auto& [size, n] : count) rows.push_back({size, n});
    const CuttingProblem problem = one_length(150, rows);
    const auto cutting = solve_cutting(problem);
    REQUIRE(cutting);
    check_cutting(problem, *cutting);
    CHECK(cutting->cost <= cutting->bound + 1);
    CHECK(cutting->bound >= (all + 149) / 150);
  }
}

TEST_CASE("of few lengths in great number no pattern is looked for twice", "[stock]") {
  const CuttingProblem problem = one_length(240, {{97, 400}, {61, 48}, {43, 36}, {29, 24}});
  std::vector<CutStick> pool;
  WorkLeft work{1'000'000};
  const Relaxation relaxed = relax(problem, {{400, 48, 36, 24}, {-1}}, pool, work);
  CHECK(relaxed.bound >= (97 * 400 + 61 * 48 + 43 * 36 + 29 * 24 + 239) / 240);
  CHECK(pool.size() >= 3);
  for (std::size_t i = 0; i < pool.size(); ++i) CHECK(std::count(pool.begin(), pool.end(), pool[i]) == 1);
}

TEST_CASE("120 pieces that were three to a full stick come out of 40 sticks or 41, and no bound is above 40",
          "[stock]") {
  // As E. Falkenauer's triplets are made (OR-Library, binpack5): the least is known from how they come about.
  for (unsigned seed = 0; seed < 20; ++seed) {
    std::mt19937 rng(seed);
    std::map<std::int64_t, int> count;
    for (int i = 0; i < 40; ++i) {
      const std::int64_t first = 380 + static_cast<std::int64_t>(rng() % 111);
      const std::int64_t second =
          250 + static_cast<std::int64_t>(rng() % static_cast<unsigned>((1000 - first) / 2 - 249));
      ++count[first];
      ++count[second];
      ++count[1000 - first - second];
    }
    std::vector<CutRow> rows;
    rows.reserve(count.size());
    for (const auto& [size, n] : count) rows.push_back({size, n});
    const CuttingProblem problem = one_length(1000, rows);
    const auto cutting = solve_cutting(problem);
    REQUIRE(cutting);
    check_cutting(problem, *cutting);
    CHECK(cutting->bound <= 40);
    CHECK(cutting->cost <= 41);
  }
}

TEST_CASE("200 pieces all unlike come within one stick of the bound, whether sticks or their length are counted",
          "[stock]") {
  for (unsigned job = 0; job < 8; ++job) {
    std::mt19937 rng(job);
    std::vector<StockPiece> pieces;
    pieces.reserve(200);
    for (int i = 0; i < 200; ++i)
      pieces.push_back(piece(std::to_string(i), Length::inches(30 * 64 + static_cast<int>(rng() % (200U * 64)), 64)));
    StockPlan plan;
    plan.aim = job % 2 == 0 ? StockAim::kSticks : StockAim::kWaste;
    const StockOrder order = plan_stock(pieces, plan);
    check_order(order, plan);
    const StockGroup& group = order.groups[0];
    CHECK(group.counted - group.bound <= (plan.aim == StockAim::kSticks ? 1 : Length::feet(20).count));
  }
}

TEST_CASE("the most valuable pieces for a stick are worth what trying all of them finds", "[stock]") {
  for (unsigned seed = 0; seed < 400; ++seed) {
    std::mt19937 rng(seed);
    const auto pick = [&](int low, int high) {
      return low + static_cast<int>(rng() % static_cast<unsigned>(high - low + 1));
    };
    const int room = pick(20, 120);
    std::vector<CutRow> rows;
    std::vector<int> count;
    std::vector<std::int64_t> value;
    for (int size = pick(40, 90); size > 4 && rows.size() < 9; size -= pick(1, 12)) {
      rows.push_back({size, pick(1, 4)});
      count.push_back(rows.back().count);
      value.push_back(size * 10 + pick(-20, 20));
    }
    // What a room is worth, by one piece more at a time.
    std::vector<std::int64_t> worth(static_cast<std::size_t>(room) + 1, 0);
    for (std::size_t i = 0; i < rows.size(); ++i)
      for (int n = 0; n < count[i]; ++n)
        for (auto r = static_cast<std::size_t>(room); r >= static_cast<std::size_t>(rows[i].size); --r)
          worth[r] = std::max(worth[r], worth[r - static_cast<std::size_t>(rows[i].size)] + value[i]);
    WorkLeft work{1'000'000};
    const PatternSearch::Found found = PatternSearch(rows, count, value).best(room, 0, work);
    CHECK(found.value == worth.back());
    CHECK(found.most == found.value);
  }
}

TEST_CASE("a piece that no stick gives is named, and so is one too many for what there is", "[stock]") {
  const auto too_long = solve_cutting(one_length(100, {{40, 2}, {101, 1}}));
  REQUIRE(!too_long);
  CHECK(too_long.error().code == ErrorCode::kTooLarge);
  CHECK(too_long.error().at == 0);
  CHECK(too_long.error().limit == 100);
  const auto too_many = solve_cutting({{{60, 3}}, {{100, 1, 2}}});
  REQUIRE(!too_many);
  CHECK(too_many.error().code == ErrorCode::kImpossible);
  CHECK(solve_cutting({{{60, 3}}, {{100, 1, 3}}}));
}

TEST_CASE("eight sticks of 1 by 4 by 14 feet are 37 1/3 board feet", "[stock]") {
  // US Army engineer subcourse EN5155.
  CHECK(8 * board_feet_of({Length::inches(1), Length::inches(4)}, Length::feet(14)) == Catch::Approx(37 + 1.0 / 3));
}

TEST_CASE("n pieces take n less one kerfs, and trim at both ends", "[stock]") {
  // Two pieces of 47 15/16 in and one kerf of 1/8 are 96 in.
  StockPlan plan;
  plan.trim = {};
  const Length half = Length::inches(767, 16);
  StockOrder order = plan_stock({piece("a", half), piece("b", half)}, plan);
  check_order(order, plan);
  REQUIRE(order.groups.size() == 1);
  CHECK(order.groups[0].sticks.size() == 1);
  CHECK(order.groups[0].sticks[0].length == Length::feet(8));
  CHECK(order.groups[0].sticks[0].offcuts.empty());
  plan.trim = Length::inches(1, 16);
  order = plan_stock({piece("a", half), piece("b", half)}, plan);
  check_order(order, plan);
  CHECK(order.groups[0].sticks[0].length == Length::feet(10));
  plan.kerf = {};
  plan.trim = {};
  order = plan_stock({piece("a", Length::feet(4)), piece("b", Length::feet(4))}, plan);
  check_order(order, plan);
  CHECK(order.groups[0].sticks[0].length == Length::feet(8));
}

TEST_CASE("what lies in the yard is used first, round its defects, and is not bought", "[stock]") {
  StockPlan plan;
  plan.yard = {{"Y1",
                {Length::inches(8), Length::inches(8)},
                "Douglas-fir",
                Length::feet(16),
                1,
                {{Length::feet(7), Length::feet(8)}}}};
  const StockOrder order =
      plan_stock({piece("a", Length::inches(80)), piece("b", Length::inches(80)), piece("c", Length::feet(15))}, plan);
  check_order(order, plan);
  const PlannedStick* a = stick_of(order, "a");
  REQUIRE(a != nullptr);
  CHECK(a->yard == "Y1");
  CHECK(stick_of(order, "b") == a);
  CHECK(stick_of(order, "c")->yard.empty());
  CHECK(totals_of(order).bought == 1);
}

TEST_CASE("held pieces stay with their stick, and a used one gives nothing more", "[stock]") {
  StockPlan plan;
  std::vector<StockPiece> pieces;
  pieces.reserve(6);
  for (int i = 0; i < 6; ++i) pieces.push_back(piece("p" + std::to_string(i), Length::feet(5)));
  plan.held = {{7, {Length::inches(8), Length::inches(8)}, "Douglas-fir", Length::feet(12), "", false, {"p5"}},
               {3, {Length::inches(8), Length::inches(8)}, "Douglas-fir", Length::feet(20), "", true, {"p0"}}};
  const StockOrder order = plan_stock(pieces, plan);
  check_order(order, plan);
  CHECK(stick_of(order, "p5")->number == 7);
  CHECK(stick_of(order, "p5")->pieces.size() == 2);
  CHECK(stick_of(order, "p0")->number == 3);
  CHECK(stick_of(order, "p0")->pieces.size() == 1);
  CHECK(order.gone.empty());
  plan.held[0].marks.emplace_back("nobody");
  CHECK(plan_stock(pieces, plan).gone == std::vector<std::string>{"nobody"});
}

TEST_CASE("what is said wrongly about stock is named and nothing is planned", "[stock]") {
  const auto where = [](const StockPlan& plan) {
    const StockOrder order = plan_stock({piece("a", Length::feet(5))}, plan);
    if (order.trouble) return order.trouble->error.where;
    return order.groups[0].trouble ? order.groups[0].trouble->error.where : std::string{};
  };
  StockPlan plan;
  CHECK(where(plan).empty());
  plan.kerf = Length::inches(-1);
  CHECK(where(plan) == "stock_kerf");
  plan = {};
  plan.longest = Length::feet(6);
  CHECK(where(plan) == "stock_longest");
  plan = {};
  plan.step = {};
  CHECK(where(plan) == "stock_step");
  plan = {};
  plan.aim = StockAim::kCost;
  CHECK(where(plan) == "stock_price");
  plan.price = 250;
  CHECK(where(plan).empty());
  plan = {};
  plan.longer = false;
  const StockOrder order = plan_stock({piece("long", Length::feet(21))}, plan);
  REQUIRE(order.groups[0].trouble);
  CHECK(order.groups[0].trouble->mark == "long");
  // 20 ft less an inch at each end.
  CHECK(order.groups[0].trouble->error.limit == Length::inches(238).count);
}

TEST_CASE("random jobs keep every rule, whatever the aim, and no aim is better served by another's plan", "[stock]") {
  for (unsigned seed = 0; seed < 25; ++seed) {
    std::mt19937 rng(seed);
    const auto pick = [&](int low, int high) {
      return low + static_cast<int>(rng() % static_cast<unsigned>(high - low + 1));
    };
    std::vector<StockPiece> pieces;
    for (int i = pick(1, 40); i > 0; --i)
      pieces.push_back(piece("t" + std::to_string(i), Length::inches(pick(24 * 16, 230 * 16), 16),
                             {Length::inches(6), Length::inches(pick(0, 1) == 0 ? 6 : 8)}));
    StockPlan plan;
    plan.price = pick(100, 400);
    plan.allowance = Length::inches(pick(0, 2), 2);
    for (int i = pick(0, 3); i > 0; --i)
      plan.yard.push_back({"Y" + std::to_string(i),
                           {Length::inches(8), Length::inches(6)},
                           "Douglas-fir",
                           Length::inches(pick(60, 240)),
                           pick(1, 3),
                           pick(0, 1) == 0
                               ? std::vector<StickDefect>{}
                               : std::vector<StickDefect>{{Length::inches(30), Length::inches(pick(31, 40))}}});
    std::int64_t bought[3], price[3];
    for (int aim = 0; aim < 3; ++aim) {
      plan.aim = static_cast<StockAim>(aim);
      const StockOrder order = plan_stock(pieces, plan);
      check_order(order, plan);
      const StockTotals totals = totals_of(order);
      bought[aim] = totals.bought;
      price[aim] = totals.price;
      CHECK(totals.counted >= totals.bound);
      if (!totals.proven) bought[aim] = price[aim] = -1;
    }
    if (bought[0] >= 0) CHECK((bought[0] <= bought[1] || bought[1] < 0));
    if (price[2] >= 0) CHECK((price[2] <= price[0] || price[0] < 0));
  }
}

TEST_CASE("a frame's book keeps what is said about stock, and one without it has the usual yard", "[stock]") {
  Book book = demo_book();
  CHECK(read_book(write_book(book))->stock == StockPlan{});
  CHECK(write_book(book).find("\"stock\"") == std::string::npos);
  book.stock.aim = StockAim::kWaste;
  book.stock.price = 310;
  book.stock.lengths = {Length::feet(9), Length::feet(17)};
  book.stock.yard = {{"Y1", {}, "White oak", Length::feet(11), 2, {{Length::feet(1), Length::feet(2)}}}};
  book.stock.held = {{4, {}, "White oak", Length::feet(11), "Y1", true, {"P-A1", "P-E1"}}};
  book.stock.prices = {{{}, "White oak", Length::feet(9), 9000}};
  const auto again = read_book(write_book(book));
  REQUIRE(again);
  CHECK(again->stock == book.stock);
}

TEST_CASE("the demo's timbers all come out of sticks of their own section, and the lists say each once", "[stock]") {
  const Book book = demo_book();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  const StockOrder order = plan_stock(pieces_of(**model.frame), book.stock);
  check_order(order, book.stock);
  const std::string plan = write_cutting_plan(order);
  int lines = 0;
  for (std::size_t at = 0; (at = plan.find(",piece,", at)) != std::string::npos; ++at) ++lines;
  CHECK(lines == static_cast<int>((**model.frame).timbers.size()));
  int count = 0;
  for (const OrderRow& row : order_rows(order)) count += row.count;
  CHECK(count == totals_of(order).bought);
  CHECK(trips_for(order, Length::feet(24), 10'000).loads >= 1);
  CHECK(trips_for(order, Length::feet(24), 10'000).over == 0);
}

TEST_CASE("a list of pieces is read, and a bad line is named", "[stock]") {
  const PiecesCsv good =
      read_pieces_csv("mark,length,count,breadth,depth\nA,12' 6\",2,8,8\nB,90,,6,8\n", BareUnit::kInch);
  CHECK(good.troubles.empty());
  REQUIRE(good.pieces.size() == 3);
  CHECK(good.pieces[0].length == Length::inches(150));
  CHECK(good.pieces[2].mark == "B");
  for (const char* bad :
       {"mark\nA\n", "length\n-3\n", "length,count\n3,x\n", "length,length\n1,2\n", "length\n\"3\n", ""})
    CHECK(read_pieces_csv(bad, BareUnit::kInch).troubles.size() == 1);
}

TEST_CASE("a piece is held to its stick and let go, a stick is marked used and unmarked", "[stock]") {
  std::vector<StockPiece> pieces;
  pieces.reserve(9);
  for (int i = 0; i < 9; ++i) pieces.push_back(piece("p" + std::to_string(i), Length::inches(50 + i)));
  StockPlan plan;
  StockOrder order = plan_stock(pieces, plan);
  const int number = stick_of(order, "p4")->number;
  plan = with_piece_held(plan, order, number, "p4", true);
  REQUIRE(plan.held.size() == 1);
  order = plan_stock(pieces, plan);
  check_order(order, plan);
  CHECK(stick_of(order, "p4")->number == number);
  CHECK(with_piece_held(plan, order, number, "p4", false).held.empty());
  plan = with_stick_used(plan, order, number, true);
  const std::size_t out = stick_of(order, "p4")->pieces.size();
  order = plan_stock(pieces, plan);
  check_order(order, plan);
  CHECK(stick_of(order, "p4")->used);
  CHECK(stick_of(order, "p4")->pieces.size() == out);
  CHECK(with_stick_used(plan, order, number, false) == StockPlan{});
  // A figure for each piece, inside the stick.
  const PlannedStick& stick = *stick_of(order, "p4");
  const draw::Drawing drawn = stick_drawing(order.groups[0].section, stick, plan.trim);
  CHECK(std::count_if(drawn.notes.begin(), drawn.notes.end(), [](const draw::Note& n) {
          return n.key.starts_with("piece:");
        }) == static_cast<std::ptrdiff_t>(out));
}

TEST_CASE("a price that is missing for every section is one trouble, and such a plan is not called the best",
          "[stock]") {
  StockPlan plan;
  plan.aim = StockAim::kCost;
  std::vector<StockPiece> pieces{piece("a", Length::feet(5)), piece("b", Length::feet(7))};
  pieces[1].section = {Length::inches(6), Length::inches(6)};
  const StockOrder order = plan_stock(pieces, plan);
  REQUIRE(order.groups.size() == 2);
  CHECK(troubles_of(order).size() == 1);
  CHECK_FALSE(totals_of(order).proven);
  plan.price = 90;
  CHECK(troubles_of(plan_stock(pieces, plan)).empty());
}

TEST_CASE("a timber longer than any stick gets one sawn to order, and what is left of it is cut like any other",
          "[stock]") {
  StockPlan plan;  // up to 20 ft by 2 ft, an inch off each end, 1/8 in kerf
  std::vector<StockPiece> pieces = {piece("T-1", Length::feet(24)), piece("T-2", Length::feet(24)),
                                    piece("B", Length::inches(21)), piece("P", Length::inches(238))};
  StockOrder order = plan_stock(pieces, plan);
  check_order(order, plan);
  REQUIRE(!order.groups[0].trouble);
  const PlannedStick* tie = stick_of(order, "T-1");
  REQUIRE(tie != nullptr);
  CHECK(tie->length == Length::feet(26));  // 24 ft and twice an inch do not come out of 24 ft
  CHECK(tie->to_order);
  CHECK(stick_of(order, "B")->to_order);  // 21 in fit beside it: no stick is bought for them
  CHECK(!stick_of(order, "P")->to_order);
  // Held, it is still one that nobody sells.
  const StockPlan held = with_piece_held(plan, order, stick_of(order, "T-1")->number, "T-1", true);
  CHECK(stick_of(plan_stock(pieces, held), "T-1")->to_order);
  CHECK(order.groups[0].sticks.size() == 3);
  CHECK(order.groups[0].counted == 3);
  CHECK(order.groups[0].proven());
  const std::vector<OrderRow> rows = order_rows(order);
  REQUIRE(rows.size() == 2);
  CHECK(rows[1].to_order);
  CHECK(rows[1].count == 2);
  plan.longer = false;
  order = plan_stock(pieces, plan);
  REQUIRE(order.groups[0].trouble);
  CHECK(order.groups[0].trouble->mark == "T-1");
}

TEST_CASE("nobody saws a timber of 2 km to order: it is told as too long", "[stock]") {
  const StockOrder order = plan_stock({piece("T-1", Length::mm(2'000'000)), piece("B", Length::feet(7))}, {});
  REQUIRE(order.groups[0].trouble);
  CHECK(order.groups[0].trouble->mark == "T-1");
  CHECK(order.groups[0].trouble->error.code == ErrorCode::kTooLarge);
}

TEST_CASE("the limit that a timber is too long for can be had, a sixty-fourth more cannot, whoever stands beside it",
          "[stock]") {
  for (const bool neighbour : {false, true}) {
    std::vector<StockPiece> pieces{piece("T-1", Length::feet(200))};
    if (neighbour) pieces.push_back(piece("T-2", Length::feet(70)));
    const StockOrder refused = plan_stock(pieces, {});
    REQUIRE(refused.groups[0].trouble);
    const Length most{refused.groups[0].trouble->error.limit};
    CHECK(most > Length::feet(98));
    pieces[0].length = most;
    CHECK_FALSE(plan_stock(pieces, {}).groups[0].trouble);
    pieces[0].length = most + Length::inches(1, 64);
    CHECK(plan_stock(pieces, {}).groups[0].trouble);
  }
}

TEST_CASE("one long stick in the yard gives one long timber; the others are sawn to order", "[stock]") {
  StockPlan plan;
  plan.yard = {{"Y1", {Length::inches(8), Length::inches(8)}, piece("", {}).species, Length::feet(26), 1, {}}};
  std::vector<StockPiece> pieces;
  for (const char* mark : {"T-1", "T-2", "T-3", "T-4", "T-5"}) pieces.push_back(piece(mark, Length::inches(281)));
  const StockOrder order = plan_stock(pieces, plan);
  check_order(order, plan);
  REQUIRE(!order.groups[0].trouble);
  CHECK(order.groups[0].counted == 4);
  CHECK(order.groups[0].proven());
  const auto of_yard = std::count_if(order.groups[0].sticks.begin(), order.groups[0].sticks.end(),
                                     [](const PlannedStick& stick) { return stick.yard == "Y1"; });
  CHECK(of_yard == 1);
  for (const PlannedStick& stick : order.groups[0].sticks) CHECK(stick.to_order == stick.yard.empty());
}

TEST_CASE("a price that is missing for a stick sawn to order names the timber that wants it", "[stock]") {
  StockPlan plan;  // 8 ft to 20 ft by 2 ft
  plan.aim = StockAim::kCost;
  for (const Length length : lengths_sold(plan))
    plan.prices.push_back({{Length::inches(8), Length::inches(8)}, "", length, 5000});
  const std::vector<StockPiece> pieces{piece("B-1", Length::feet(3)), piece("P-1", Length::feet(9)),
                                       piece("T-1", Length::feet(23)), piece("T-2", Length::feet(27))};
  const auto named = [&] {
    const StockOrder order = plan_stock(pieces, plan);
    return order.groups[0].trouble ? order.groups[0].trouble->mark : std::string{};
  };
  CHECK(named() == "T-1");
  plan.prices.push_back({{Length::inches(8), Length::inches(8)}, "", Length::feet(24), 9000});
  CHECK(named() == "T-2");
  plan.prices.push_back({{Length::inches(8), Length::inches(8)}, "", Length::feet(28), 9900});
  CHECK(named().empty());
  // Where what is sold has none, it is the wood's first.
  plan.prices.clear();
  CHECK(named() == "B-1");
}
