// What a crew that works in millimetres reads: no pounds, inches, miles or board feet anywhere.

#include <catch_amalgamated.hpp>
#include <cmath>

#include "book/book.h"
#include "inch_units.h"
#include "model/book_model.h"
#include "stock/plan.h"
#include "words/frame_text.h"
#include "words/frame_words.h"
#include "words/raise_text.h"
#include "words/raising_words.h"

using namespace bentbook;

namespace {

Voice metric(Language language) {
  Voice voice;
  voice.language = language;
  voice.lengths = {LengthForm::kMm, 16, 1};
  return voice;
}

/// Loose feet: the roof pushes outward.
Book pushing_book() {
  Book book =
      new_book("Cart shed", Length::feet(12), Length::feet(10), Length::feet(8), Slope::in_12(Length::inches(8)));
  book.raising.crew.people = 30;
  return book;
}

}  // namespace

TEST_CASE("the check itself finds units of the inch", "[words]") {
  for (const char* bad : {"151 lb", "with 151 lb.", "12 in³", "3⁄8″, 7″", "30 lb/ft²", "at 25 mph of", "812 board feet",
                          "30 lb/pi²", "25 mi/h", "812 pieds-planche"})
    CHECK(has_inch_units(bad));
  for (const char* good : {"68 kg", "196.6 cm³", "3200 mm", "2 libres"}) CHECK(!has_inch_units(good));
}

TEST_CASE("sheets, totals and the raising plan speak metric to a metric crew", "[words]") {
  const Book book = pushing_book();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  const Frame& frame = **model.frame;
  for (std::size_t i = 0; i < kLanguageCount; ++i) {
    const Voice voice = metric(static_cast<Language>(i));
    CHECK(!has_inch_units(totals_text(totals_of(frame), voice)));
    CHECK(!has_inch_units(members_text(frame, voice)));
    CHECK(!has_inch_units(check_text(book, frame, voice)));
    CHECK(!has_inch_units(raising_text(book, frame, voice, nullptr)));
    for (int t = 0; t < static_cast<int>(frame.timbers.size()); ++t)
      CHECK(!has_inch_units(sheet_text(book, frame, solve_sheet(frame, t, saw_of(book)), voice)));
  }
}

TEST_CASE("loads, wind and volumes are said in the unit that goes with the lengths", "[words]") {
  const Voice voice = metric(Language::kEn);
  CHECK(say_kept(30, KeptIn::kPsf, voice) == "1.44 kPa");
  CHECK(say_kept(30, KeptIn::kPsf, {}) == "30 lb/ft²");
  // 25 × 1.609344 = 40.2 km/h, 25 × 0.44704 = 11.2 m/s.
  CHECK(say_kept(25, KeptIn::kMph, voice) == "11 m/s (40 km/h)");
  CHECK(say_kept(25, KeptIn::kMph, {}) == "25 mph");
  CHECK(say_kept(19, KeptIn::kPlain, voice) == "19");
  // NIST SP 811, appendix B: a board foot is 2.359 737 × 10⁻³ m³.
  CHECK(say_wood(1000, voice) == "2.360 m³");
  CHECK(say_wood(1000, {}) == "1000 board feet");
}

TEST_CASE("weights and forces are whole kilograms, said by one function", "[words]") {
  const Voice voice = metric(Language::kEn);
  // NIST SP 811, appendix B: 1 lb = 0.453 592 37 kg, 1 in = 2.54 cm, exactly.
  CHECK(say_weight(1000, voice) == "454 kg");
  CHECK(say_weight(1000, {}) == "1000 lb");
  Finding push;
  push.id = FindingId::kThrust;
  push.value = 1000;
  CHECK(finding_text(push, voice).find(" 454 kg.") != std::string::npos);
  CHECK(finding_text(push, {}).find(" 1000 lb.") != std::string::npos);
  Finding clash;
  clash.id = FindingId::kClash;
  clash.value = 12;
  CHECK(finding_text(clash, voice).find("(197 cm³)") != std::string::npos);
  CHECK(finding_text(clash, {}).find("(12 in³)") != std::string::npos);
  TimberWarning cut;
  cut.id = WarningId::kContactCut;
  cut.value = 2;
  CHECK(warning_text(cut, voice).find("12.9 cm²") != std::string::npos);
  CHECK(warning_text(cut, {}).find("2.00 in²") != std::string::npos);
  RafterInput input;
  input.feet = Feet::kLoose;
  RafterPair pair;
  pair.thrust_lb = 1000;
  Caution thrust;
  thrust.id = CautionId::kThrust;
  CHECK(caution_text(thrust, pair, voice).find(" 454 kg.") != std::string::npos);
}

TEST_CASE("in a new book neither machines nor stack stand in the building", "[book]") {
  for (const int feet : {12, 24, 30, 60, 100}) {
    const Book book =
        new_book("Barn", Length::feet(feet), Length::feet(36), Length::feet(10), Slope::in_12(Length::inches(9)));
    INFO(feet);
    const RaisingPlan& plan = book.raising;
    for (const Length x : {plan.crane.x, plan.crane_two.x, plan.telehandler.x, plan.stack_x}) {
      CHECK(std::abs(x.in()) >= feet * 6 + 96);
      CHECK(x.count % Length::feet(1).count == 0);
    }
  }
}

TEST_CASE("a book by the millimetre has its yard in whole metric figures", "[book]") {
  const Book book = new_book("Barn", Length::mm(7200), Length::mm(11000), Length::mm(3000),
                             Slope::in_12(Length::inches(9)), SizedBy::kMillimetres);
  CHECK(book.raising.truck.length == Length::mm(7200));
  CHECK(book.raising.truck.carries == Weight::kilograms(4500));
  CHECK(book.raising.stack_x == Length::mm(-6000));
}

TEST_CASE("a bent that lies as one before says so in a line", "[words]") {
  Book book = new_book("Barn", Length::feet(20), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  for (const char* n : {"1", "2", "3"}) {
    RaisingStep step;
    for (const char* mark : {"P-A", "P-E", "T-"}) step.marks.push_back(std::string(mark) + n);
    book.raising.steps.push_back(step);
  }
  const BookModel model = solve(book);
  const std::string said = raising_text(book, **model.frame, Voice{}, nullptr);
  const auto times = [&](const std::string& words) {
    int count = 0;
    for (std::size_t i = said.find(words); i != std::string::npos; i = said.find(words, i + 1)) ++count;
    return count;
  };
  CHECK(times("diagonal from the foot of P-A1 to the top of P-E1") == 1);
  CHECK(times("diagonal from the foot") == 2);
  CHECK(times("as in step 1") == 2);
}

TEST_CASE("stock to order is rounded up to what a metric yard sells where lengths are metric, else to two feet",
          "[words]") {
  const Book book = pushing_book();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  CHECK(stock_step({}) == Length::feet(2));
  CHECK(stock_step(metric(Language::kEn)) == metric_stock().step);
  double board_feet = 0;
  for (const Timber& timber : (*model.frame)->timbers) {
    const Length feet = facts_of(timber).stock, mm = facts_of(timber, metric_stock().step).stock;
    CHECK(feet.count % Length::feet(2).count == 0);
    CHECK(mm.count % Length::mm(600).count == 0);
    CHECK(mm.in() >= timber.length + 2 - 1e-3);
    CHECK((mm - Length::mm(600)).in() < timber.length + 2);
    const int t = timber_by_mark(**model.frame, timber.mark);
    const std::string sheet =
        sheet_text(book, **model.frame, solve_sheet(**model.frame, t, saw_of(book)), metric(Language::kEn));
    CHECK(sheet.find("Stock to order: " + say_length(mm, metric(Language::kEn))) != std::string::npos);
    board_feet += facts_of(timber, metric_stock().step).board_feet;
  }
  CHECK(totals_of(**model.frame, metric_stock().step).board_feet == Catch::Approx(board_feet));
}
