#include <catch_amalgamated.hpp>

#include "frame/joinery.h"
#include "model/book_model.h"
#include "printed/pages/raising_rows.h"
#include "printed/pages/stick_parts.h"
#include "stock/order.h"

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
    std::string all;
    for (const PagePart& part : parts) {
      const std::string said = texts_of(part.drawn);
      all += said + " ";
      const auto alike = said.find(" alike");
      counted += alike == std::string::npos
                     ? 1
                     : static_cast<std::size_t>(std::stoi(said.substr(said.rfind(' ', alike - 1) + 1)));
    }
    CHECK(counted == sticks);
    CHECK(parts.size() < sticks);
    CHECK(pieces == order.pieces.size());
    for (const StockPiece& piece : order.pieces) CHECK(all.find(piece.mark) != std::string::npos);
  }
}

TEST_CASE("steps whose names differ in marks or the bent alone are one row with their numbers", "[printed]") {
  const Book book = demo_book();
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  const auto one = [&](std::vector<std::string> names) { return names_as_one(frame, names).value_or("no"); };
  CHECK(one({"Common rafter C-A1 + C-E1", "Common rafter C-A2 + C-E2"}) == "Common rafter C-A1 + C-E1; C-A2 + C-E2");
  CHECK(one({"Bent 2 up, 4 girts caught", "Bent 3 up, 4 girts caught"}) == "Bent 2, 3 up, 4 girts caught");
  CHECK(one({"Post P-A1, 2 braces caught", "Post P-A2, 2 braces caught"}) == "Post P-A1, P-A2, 2 braces caught");
  CHECK(one({"Bent 2 up, 4 girts caught", "Bent 3 up, 2 girts caught"}) == "no");
  CHECK(one({"Common rafter C-A1", "Brace B-A1.1"}) == "no");
  CHECK(one({"Common rafter C-A1", "Common rafter C-A1 + C-E1"}) == "no");

  const std::vector<TableRow> rows =
      alike_as_one(frame, {{"1", "1", "Bent 1 up", "900 lb", "Crane", "+T1"},
                           {"2", "1", "Common rafter C-A1", "80 lb", "By hand", ""},
                           {"3", "1", "Common rafter C-A2", "80 lb", "By hand", ""},
                           {"4", "1", "Common rafter C-A3", "80 lb", "By hand", ""},
                           {"5", "2", "Common rafter C-A4", "80 lb", "By hand", ""},
                           {"6", "2", "Common rafter C-A5", "81 lb", "By hand", ""},
                           {"7", "2", "Common rafter C-A6\n! a fault", "81 lb", "By hand", ""}});
  REQUIRE(rows.size() == 5);
  CHECK(rows[1] == TableRow{"2–4", "1", "Common rafter C-A1, C-A2, C-A3", "3 × 80 lb", "By hand", ""});
  CHECK(rows[2][0] == "5");
  CHECK(rows[4][2] == "Common rafter C-A6\n! a fault");
}
