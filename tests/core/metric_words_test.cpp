// What a crew that works in millimetres reads: no pounds and no square or cubic inches anywhere.

#include <array>
#include <catch_amalgamated.hpp>
#include <string_view>

#include "book/book.h"
#include "model/book_model.h"
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

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A figure in a unit of the inch or the pound: a digit, perhaps a space, the unit, and no letter after it.
bool has_pounds_or_inches(std::string_view said) {
  constexpr std::array<std::string_view, 5> kUnits = {"lb", "in", "ft", "″", "′"};
  for (size_t i = 0; i < said.size(); ++i) {
    if (!is_digit(said[i])) continue;
    std::string_view rest = said.substr(i + 1);
    if (!rest.empty() && rest.front() == ' ') rest.remove_prefix(1);
    for (const std::string_view unit : kUnits) {
      if (!rest.starts_with(unit)) continue;
      const std::string_view after = rest.substr(unit.size());
      if (after.empty() || after.front() < 'a' || after.front() > 'z') return true;
    }
  }
  return false;
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
  for (const char* bad : {"151 lb", "with 151 lb.", "12 in³", "3⁄8″, 7″"}) CHECK(has_pounds_or_inches(bad));
  for (const char* good : {"68 kg", "196.6 cm³", "3200 mm", "2 libres"}) CHECK(!has_pounds_or_inches(good));
}

TEST_CASE("sheets, totals and the raising plan speak metric to a metric crew", "[words]") {
  const Book book = pushing_book();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  const Frame& frame = **model.frame;
  for (const Language language : {Language::kEn, Language::kEs}) {
    const Voice voice = metric(language);
    CHECK(!has_pounds_or_inches(totals_text(totals_of(frame), voice)));
    CHECK(!has_pounds_or_inches(members_text(frame, voice)));
    CHECK(!has_pounds_or_inches(check_text(book, frame, voice)));
    CHECK(!has_pounds_or_inches(raising_text(book, frame, voice, nullptr)));
    for (int t = 0; t < static_cast<int>(frame.timbers.size()); ++t)
      CHECK(!has_pounds_or_inches(sheet_text(book, frame, solve_sheet(frame, t, saw_of(book)), voice)));
  }
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
