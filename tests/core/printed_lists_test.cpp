#include <algorithm>
#include <catch_amalgamated.hpp>
#include <set>

#include "frame/joinery.h"
#include "model/book_model.h"
#include "printed/pages/raising_rows.h"
#include "printed/pages/stick_parts.h"
#include "stock/order.h"
#include "words/step_words.h"

using namespace bentbook;

namespace {

std::vector<Book> books() {
  std::vector<Book> all{demo_book()};
  for (const SizedBy by : {SizedBy::kInches, SizedBy::kMillimetres})
    all.push_back(
        new_book("Barn", Length::feet(24), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)), by));
  all.push_back(all[1]);
  all.back().frame = with_joinery(all.back().frame, Joinery::kPlates);
  return all;
}

std::string texts_of(const paper::Page& page) {
  std::string out;
  for (const paper::PageText& text : page.texts) out += text.text + "\n";
  return out;
}

}  // namespace

TEST_CASE("alike sticks of the cutting plan are one row that counts them; no stick and no mark is left out",
          "[printed]") {
  for (const Book& book : books()) {
    const BookModel model = solve(book);
    const StockOrder order = plan_stock(pieces_of(**model.frame), book.stock);
    std::size_t sticks = 0, pieces = 0;
    for (const StockGroup& group : order.groups) {
      sticks += group.sticks.size();
      for (const PlannedStick& stick : group.sticks) pieces += stick.pieces.size();
    }
    const auto parts = stick_parts(order, 186, {});
    std::size_t counted = 0;
    std::set<std::string> words;
    for (const PagePart& part : parts) {
      const std::string said = texts_of(part.drawn);
      for (std::size_t from = 0; from < said.size();) {
        const std::size_t to = std::min(said.find_first_of(" ,;:\n", from), said.size());
        words.insert(said.substr(from, to - from));
        from = to + 1;
      }
      const auto alike = said.find(" alike");
      counted += alike == std::string::npos
                     ? 1
                     : static_cast<std::size_t>(std::stoi(said.substr(said.rfind(' ', alike - 1) + 1)));
    }
    CHECK(counted == sticks);
    CHECK(parts.size() < sticks);
    CHECK(pieces == order.pieces.size());
    for (const StockPiece& piece : order.pieces) CHECK(words.count(piece.mark) == 1);
  }
}

TEST_CASE("steps whose names differ in marks or the bent alone are one row that finds each step", "[printed]") {
  const Book book = demo_book();
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  const auto bent = [&](int number) {
    std::vector<std::string> marks;
    for (const Timber& timber : frame.timbers)
      if (timber.place.bent == number && timber.kind == TimberKind::kPost) marks.push_back(timber.mark);
    return marks;
  };
  const auto step = [](std::vector<std::string> marks, std::vector<std::string> caught = {}) {
    RaisingStep out;
    out.marks = std::move(marks);
    for (std::string& mark : caught) out.set_first.push_back({std::move(mark)});
    return out;
  };
  const auto named = [&](const std::vector<RaisingStep>& steps, Language language = Language::kEn) {
    std::vector<TableRow> rows;
    rows.reserve(steps.size());
    for (std::size_t s = 0; s < steps.size(); ++s)
      rows.push_back({std::to_string(s + 1), "1", step_name(steps[s], frame, language), "80 lb", "By hand", ""});
    std::vector<std::string> out;
    for (const TableRow& row : alike_as_one(frame, steps, rows, language)) out.push_back(row[2]);
    return out;
  };
  using Names = std::vector<std::string>;
  CHECK(named({step({"C-A1"}, {"C-E1"}), step({"C-A2"}, {"C-E2"})}) ==
        Names{"Common rafter\n1:\u00A0C-E1+C-A1, 2:\u00A0C-E2+C-A2"});
  CHECK(named({step(bent(2)), step(bent(3))}) == Names{"Bent 2, 3 up"});
  CHECK(named({step({"P-A2"}, {"B-A2.1", "B-A2.2"}), step({"P-E2"}, {"B-E2.1", "B-E2.2"})}) ==
        Names{"Post, 2 braces caught each step\n1:\u00A0P-A2, 2:\u00A0P-E2"});
  CHECK(named({step({"C-A1", "B-A2.1"}), step({"C-A2", "B-A2.2"})}) ==
        Names{"1:\u00A0C-A1+B-A2.1, 2:\u00A0C-A2+B-A2.2"});
  // How many are caught is no name.
  CHECK(named({step({"P-A2"}, {"B-A2.1", "B-A2.2"}), step({"P-E2"}, {"B-E2.1"})}).size() == 2);
  CHECK(named({step({"C-A1"}), step({"B-A1.1"})}).size() == 2);
  CHECK(named({step({"C-A1"}), step({"C-A1", "C-E1"})}).size() == 2);
  CHECK(named({step(bent(2)), step({"C-A1"})}).size() == 2);
  // What is counted, not named, stays alone, as do temporary braces.
  const std::vector<std::string> many{"C-A1", "C-A2", "C-A3", "C-A4"}, others{"C-E1", "C-E2", "C-E3", "C-E4"};
  for (const Language language : {Language::kEn, Language::kFrCa, Language::kEs}) {
    CHECK(named({step(many), step(others)}, language).size() == 2);
    CHECK(named({step({}), step({})}, language).size() == 2);
    CHECK(named({step(bent(2)), step(bent(3))}, language).size() == 1);
  }
  std::vector<RaisingStep> row;
  for (const Timber& timber : frame.timbers)
    if (timber.kind == TimberKind::kCommonRafter) row.push_back(step({timber.mark}));
  REQUIRE(row.size() > 16);
  CHECK(named(row).size() == (row.size() + 7) / 8);
  const std::string last = named(row).back();
  CHECK(last.ends_with(std::to_string(row.size()) + ":\u00A0" + row.back().marks[0]));

  const std::vector<RaisingStep> steps{step(bent(1)),  step({"C-A1"}), step({"C-A2"}), step({"C-A3"}),
                                       step({"C-A4"}), step({"C-A5"}), step({"C-A6"})};
  const std::vector<TableRow> rows = alike_as_one(frame, steps,
                                                  {{"1", "1", "Bent 1 up", "900 lb", "Crane", "+T1"},
                                                   {"2", "1", "Common rafter C-A1", "80 lb", "By hand", ""},
                                                   {"3", "1", "Common rafter C-A2", "80 lb", "By hand", ""},
                                                   {"4", "1", "Common rafter C-A3", "80 lb", "By hand", ""},
                                                   {"5", "2", "Common rafter C-A4", "80 lb", "By hand", ""},
                                                   {"6", "2", "Common rafter C-A5", "81 lb", "By hand", ""},
                                                   {"7", "2", "Common rafter C-A6\n! a fault", "81 lb", "By hand", ""}},
                                                  Language::kEn);
  REQUIRE(rows.size() == 5);
  CHECK(rows[1] ==
        TableRow{"2–4", "1", "Common rafter\n2:\u00A0C-A1, 3:\u00A0C-A2, 4:\u00A0C-A3", "80 lb each", "By hand", ""});
  CHECK(rows[2][0] == "5");
  CHECK(rows[4][2] == "Common rafter C-A6\n! a fault");
}
