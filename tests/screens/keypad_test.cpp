#include "ui/keypad/keypad.h"

#include <catch_amalgamated.hpp>
#include <string_view>

using namespace bentbook;
using namespace bentbook::screens;

namespace {

using Kind = Stroke::Kind;

/// Digits and points as they stand; f, i: the first and second slot; ' ' nothing; others as operators.
void strokes(Keypad& k, std::string_view keys) {
  for (const char c : keys) {
    if (c >= '0' && c <= '9')
      k.press({Kind::kDigit, c - '0'});
    else if (c == '.')
      k.press({Kind::kPoint});
    else if (c == 'f')
      k.press({Kind::kSlot, 0});
    else if (c == 'i')
      k.press({Kind::kSlot, 1});
    else if (c == '<')
      k.press({Kind::kErase});
    else if (c != ' ')
      k.press({Kind::kOperator, c});
  }
}

void tick(Keypad& k, int n) { k.press({Kind::kTick, n}); }

void typed(Keypad& k, std::string_view ascii) {
  for (const char c : ascii) k.character(static_cast<std::uint32_t>(c));
}

Keypad feet_first() {
  Keypad k;
  k.open_length("span", "Span", Length::feet(24), {Length::inches(1), Length::feet(200), BareUnit::kFoot});
  return k;
}

}  // namespace

TEST_CASE("feet, inches and a tick make a measure", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "12 i7");
  tick(k, 6);
  REQUIRE(k.entry() == "12′ 7 3⁄8″");
  REQUIRE(k.echo() == "12′ 7 3⁄8″");
  k.press({Kind::kDone});
  REQUIRE_FALSE(k.is_open());
  REQUIRE_FALSE(k.take_length("other"));
  REQUIRE(k.take_length("span") == Length::inches(1211, 8));
  REQUIRE_FALSE(k.take_length("span"));
}

TEST_CASE("the first digit starts anew; a slot touched first keeps the others", "[keypad]") {
  Keypad k;
  k.open_length("a", "", Length::inches(101, 4), {{}, Length::feet(9), BareUnit::kFoot});
  REQUIRE(k.entry() == "2′ 1 1⁄4″");
  strokes(k, "3");
  REQUIRE(k.entry() == "3′");
  k.close();
  k.open_length("a", "", Length::inches(101, 4), {{}, Length::feet(9), BareUnit::kFoot});
  strokes(k, "i9");
  REQUIRE(k.entry() == "2′ 9 1⁄4″");
  k.close();
  k.open_length("a", "", Length::inches(101, 4), {{}, Length::feet(9), BareUnit::kFoot});
  tick(k, 8);
  REQUIRE(k.entry() == "2′ 1 1⁄2″");
}

TEST_CASE("done without a change hands out nothing, so a finer value stays exact", "[keypad]") {
  Keypad k;
  k.open_length("a", "", Length::inches(1, 3));
  REQUIRE(k.reading().length == Length::inches(1, 3));
  k.press({Kind::kDone});
  REQUIRE_FALSE(k.is_open());
  REQUIRE_FALSE(k.take_length("a"));
}

TEST_CASE("opening another figure finishes the first", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "30");
  k.open_length("other", "", Length::inches(4));
  REQUIRE(k.take_length("span") == Length::feet(30));
  k.close();
  k = feet_first();
  strokes(k, "0");  // below the least span: not taken
  k.open_length("other", "", Length::inches(4));
  REQUIRE_FALSE(k.take_length("span"));
}

TEST_CASE("cancel leaves everything as it was", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "9");
  k.press({Kind::kCancel});
  REQUIRE_FALSE(k.take_length("span"));
}

TEST_CASE("erase takes the last figure, then goes back through slots and sum", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "12 i7");
  strokes(k, "+ 3");
  REQUIRE(k.entry() == "12′ 7″ + 3′");
  strokes(k, "<");
  REQUIRE(k.entry() == "12′ 7″ + ");
  REQUIRE(k.reading().error);
  strokes(k, "<");
  REQUIRE(k.entry() == "12′ 7″");
  strokes(k, "<");
  REQUIRE(k.entry() == "12′");
  strokes(k, "<<");
  REQUIRE(k.entry().empty());
  REQUIRE(k.reading().error->code == ErrorCode::kEmpty);
}

TEST_CASE("erase on what was opened clears it", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "<");
  REQUIRE(k.entry().empty());
}

TEST_CASE("sums read as the parser reads them", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "12-i3");
  tick(k, 8);
  REQUIRE(k.entry() == "12′ − 3 1⁄2″");
  REQUIRE(k.reading().length == Length::inches(281, 2));
  k.close();
  k = feet_first();
  strokes(k, "(25-8)/2");
  REQUIRE(k.entry() == "(25′ − 8′) ÷ 2");
  REQUIRE(k.slot_count() == 1);
  REQUIRE(k.reading().length == Length::inches(102));
}

TEST_CASE("an operator that cannot stand is not typed", "[keypad]") {
  Keypad k = feet_first();
  strokes(k, "5)");
  REQUIRE(k.entry() == "5′");
  strokes(k, "+");
  strokes(k, "+*");
  REQUIRE(k.entry() == "5′ + ");
  strokes(k, "(2)3");
  REQUIRE(k.entry() == "5′ + (2′)");
}

TEST_CASE("typed text has the whole grammar and names the spot that is wrong", "[keypad]") {
  Keypad k;
  k.open_length("a", "", Length::inches(4));
  typed(k, "12' 7-3/8");
  REQUIRE(k.typing());
  REQUIRE(k.echo() == "12′ 7 3⁄8″");
  k.press({Kind::kErase});
  REQUIRE(k.entry() == "12' 7-3/");
  k.set_text("3 * 16\"");
  REQUIRE(k.echo() == "4′ 0″");
  k.set_text("12' 7 x?");
  const auto reading = k.reading();
  REQUIRE(reading.error);
  REQUIRE(reading.error->at >= 0);
  k.press({Kind::kDone});
  REQUIRE(k.is_open());
}

TEST_CASE("a number without a mark takes the unit beside the field", "[keypad]") {
  Keypad k = feet_first();
  k.set_text("30");
  REQUIRE(k.reading().length == Length::feet(30));
  k.open_length("depth", "", Length::inches(15, 2));
  k.set_text("9 1/2");
  REQUIRE(k.reading().length == Length::inches(19, 2));
  k.set_style({LengthForm::kMm});
  k.open_length("depth", "", Length::mm(200));
  k.set_text("240");
  REQUIRE(k.reading().length == Length::mm(240));
}

TEST_CASE("back from typed text to the slots when it reads well", "[keypad]") {
  Keypad k;
  k.open_length("a", "", Length::inches(4));
  k.set_text("12' 7 3/8");
  tick(k, 8);
  REQUIRE_FALSE(k.typing());
  REQUIRE(k.entry() == "12′ 7 1⁄2″");
}

TEST_CASE("limits are named with the nearest value accepted", "[keypad]") {
  Keypad k;
  k.open_length("seat", "", Length::inches(3), {Length::inches(1), Length::inches(6)});
  k.set_text("7");
  REQUIRE(k.reading().error->code == ErrorCode::kTooLarge);
  REQUIRE(k.reading().error->limit == Length::inches(6).count);
  k.set_text("1/2");
  REQUIRE(k.reading().error->code == ErrorCode::kTooSmall);
  k.set_text("6");
  REQUIRE(k.reading().good());
}

TEST_CASE("a slope is told in 12, in degrees, in percent or in mm a metre", "[keypad]") {
  Keypad k;
  k.open_slope("pitch", "Pitch", Slope::in_12(Length::inches(10)));
  REQUIRE(k.form() == BareSlope::kIn12);
  REQUIRE(k.has_tape());
  strokes(k, "8");
  tick(k, 8);
  REQUIRE(k.reading().slope == Slope::in_12(Length::inches(17, 2)));
  k.press({Kind::kForm, static_cast<int>(BareSlope::kDegrees)});
  k.set_text("39.8");
  REQUIRE(k.reading().slope->form == SlopeForm::kAngle);
  k.set_text("10/12");
  k.press({Kind::kDone});
  REQUIRE(k.take_slope("pitch")->form == SlopeForm::kRatio);
}

TEST_CASE("looking at a slope in another form does not change it", "[keypad]") {
  Keypad k;
  k.open_slope("pitch", "Pitch", Slope::in_12(Length::inches(10)));
  k.press({Kind::kForm, static_cast<int>(BareSlope::kDegrees)});
  REQUIRE(k.entry() == "39.806");
  REQUIRE(k.echo() == "10:12 = 39.81°");
  k.press({Kind::kDone});
  REQUIRE_FALSE(k.take_slope("pitch"));
}

TEST_CASE("a slope that was entered is the same slope in another unit, and is handed out as it was said", "[keypad]") {
  Keypad k;
  k.open_slope("pitch", "Pitch", Slope::in_12(Length::inches(10)));
  strokes(k, "8");
  tick(k, 6);
  k.press({Kind::kForm, static_cast<int>(BareSlope::kDegrees)});
  REQUIRE(k.entry() == "34.912");
  REQUIRE(k.preview_slope("pitch") == Slope::in_12(Length::inches(67, 8)));
  k.press({Kind::kForm, static_cast<int>(BareSlope::kPercent)});
  REQUIRE(k.entry() == "69.79");
  k.press({Kind::kForm, static_cast<int>(BareSlope::kIn12)});
  REQUIRE(k.entry() == "8 3⁄8″");
  k.press({Kind::kForm, static_cast<int>(BareSlope::kMmPerM)});
  k.press({Kind::kDone});
  REQUIRE(k.take_slope("pitch") == Slope::in_12(Length::inches(67, 8)));
  // The next digit starts anew, in the new unit.
  k.open_slope("pitch", "Pitch", Slope::in_12(Length::inches(10)));
  k.press({Kind::kForm, static_cast<int>(BareSlope::kDegrees)});
  strokes(k, "30");
  k.press({Kind::kDone});
  REQUIRE(k.take_slope("pitch") == Slope::of_angle(Angle::degrees(30)));
}

TEST_CASE("a slope past plumb is refused in degrees", "[keypad]") {
  Keypad k;
  k.open_slope("pitch", "Pitch", Slope::of_angle(Angle::degrees(30)));
  for (const char* steep : {"90", "897", "100000"}) {
    k.set_text(steep);
    REQUIRE(k.reading().error->code == ErrorCode::kSteep);
  }
  k.set_text("39° 70′");
  REQUIRE(k.limit_text(*k.reading().error).ends_with("°"));
}

TEST_CASE("the keypad knows what a number alone is read in", "[keypad]") {
  Keypad k = feet_first();
  REQUIRE(k.bare_kind() == Keypad::SlotKind::kFeet);
  strokes(k, "i");
  REQUIRE(k.bare_kind() == Keypad::SlotKind::kInches);
  k.set_text("30");
  REQUIRE(k.bare_kind() == Keypad::SlotKind::kFeet);
  k.set_style({LengthForm::kInchFraction});
  k.open_length("span", "Span", Length::feet(24), kOnBuilding);
  REQUIRE(k.bare_kind() == Keypad::SlotKind::kInches);
  k.set_text("30");
  REQUIRE(k.reading().length == Length::inches(30));
  REQUIRE(k.bare_kind() == Keypad::SlotKind::kInches);
  k.set_style({LengthForm::kMm});
  k.open_length("span", "Span", Length::feet(24), kOnBuilding);
  REQUIRE(k.bare_kind() == Keypad::SlotKind::kMm);
}

TEST_CASE("angles and counts, with their limits", "[keypad]") {
  Keypad k;
  k.open_angle("tilt", "", Angle::degrees(45), Angle{}, Angle::degrees(89));
  strokes(k, "60.5");
  REQUIRE(k.reading().angle == Angle::from_degrees(60.5));
  k.press({Kind::kDone});
  REQUIRE(k.take_angle("tilt"));
  k.open_count("load", "", 40, 0, 500);
  REQUIRE_FALSE(k.takes_point());
  strokes(k, "501");
  REQUIRE(k.reading().error->code == ErrorCode::kTooLarge);
  strokes(k, "<");
  REQUIRE(k.reading().count == 50);
}

TEST_CASE("a count of hundredths takes two decimals, and says its limit with them", "[keypad]") {
  Keypad k;
  k.open_count("load", "", 144, 0, 4788, {1, 2});
  REQUIRE(k.takes_point());
  REQUIRE(k.entry() == "1.44");
  strokes(k, "1.507");
  REQUIRE(k.entry() == "1.50");
  REQUIRE(k.reading().count == 150);
  REQUIRE(k.echo() == "1.5");
  k.set_text("48");
  REQUIRE(k.limit_text(*k.reading().error) == "47.88");
  k.set_text("999999");
  REQUIRE(k.limit_text(*k.reading().error) == "47.88");
}

TEST_CASE("the sign key is there where a value may be negative", "[keypad]") {
  Keypad k;
  k.open_length("gap", "", Length::inches(1, 16), {Length::inches(-1), Length::inches(1)});
  REQUIRE(k.takes_sign());
  k.press({Kind::kSign});
  REQUIRE(k.reading().length == Length::inches(-1, 16));
  k.open_length("span", "", Length::inches(1));
  REQUIRE_FALSE(k.takes_sign());
}

TEST_CASE("behind a changed sign the first digit begins a number of that sign", "[keypad]") {
  Keypad k;
  const LengthEntry site{Length::feet(-100), Length::feet(100), BareUnit::kFoot};
  k.open_length("x", "", Length::feet(-20), site);
  k.press({Kind::kSign});
  REQUIRE(k.reading().length == Length::feet(20));
  k.press({Kind::kSign});
  strokes(k, "30");
  REQUIRE(k.reading().length == Length::feet(-30));
  k.press({Kind::kSign});
  REQUIRE(k.reading().length == Length::feet(30));
  strokes(k, "<");
  REQUIRE(k.reading().length == Length::feet(3));
  k.open_length("x", "", Length::feet(20), site);
  k.press({Kind::kSign});
  strokes(k, "<");
  REQUIRE(k.reading().length == Length::feet(-2));
}

TEST_CASE("a preview follows each figure that reads well", "[keypad]") {
  Keypad k = feet_first();
  REQUIRE_FALSE(k.preview_length("span"));
  strokes(k, "2");
  REQUIRE(k.preview_length("span") == Length::feet(2));
  strokes(k, "6");
  REQUIRE(k.preview_length("span") == Length::feet(26));
  REQUIRE_FALSE(k.preview_length("other"));
}

TEST_CASE("the key for the next field finishes this one and leads on, done and the last field do not", "[keypad]") {
  Keypad k = feet_first();
  REQUIRE_FALSE(k.has_next());
  k.set_walk({"span", "plate"});
  REQUIRE(k.has_next());
  strokes(k, "0");
  k.press({Kind::kNext});  // refused: it stays
  REQUIRE(k.is_open("span"));
  strokes(k, "<30");
  k.press({Kind::kNext});
  REQUIRE_FALSE(k.is_open());
  REQUIRE(k.take_length("span") == Length::feet(30));
  REQUIRE_FALSE(k.take_next("span"));
  REQUIRE(k.take_next("plate"));
  REQUIRE_FALSE(k.take_next("plate"));
  k.open_length("plate", "", Length::feet(9));
  REQUIRE_FALSE(k.has_next());
  k.press({Kind::kDone});
  REQUIRE_FALSE(k.take_next("plate"));
}

TEST_CASE("a usual value is handed out by one tap, all of it", "[keypad]") {
  Keypad k;
  k.open_length("post.breadth", "", Length::inches(7));
  Keypad::Reading eight, ten;
  eight.length = Length::inches(8);
  ten.length = Length::inches(10);
  k.offer({{"8×10", {{"post.breadth", eight}, {"post.depth", ten}}}});
  k.press({Kind::kUsual, 1});
  REQUIRE(k.is_open());
  k.press({Kind::kUsual, 0});
  REQUIRE_FALSE(k.is_open());
  REQUIRE(k.offered().empty());
  REQUIRE(k.take_length("post.breadth") == Length::inches(8));
  REQUIRE(k.take_length("post.depth") == Length::inches(10));
  REQUIRE(k.entered().size() == 2);
}
