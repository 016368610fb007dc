// Hips and valleys on their pages: what is drawn, tapped, kept and refused.
#include <catch_amalgamated.hpp>

#include "bed.h"
#include "drawn_phone.h"
#include "roof/corner/corner_drawing.h"
#include "words/roofs/corner_words.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

CornerInput random_corner(Random& random) {
  CornerInput input;
  input.kind = chance(random, 50) ? CornerKind::kHip : CornerKind::kValley;
  input.eave_angle = Angle::degrees(chance(random, 40) ? 90 : random.whole(40, 150));
  input.pitch = Slope::in_12(random_inches(random, 3, 18, 8));
  input.pitch_other = chance(random, 40) ? input.pitch : Slope::in_12(random_inches(random, 3, 18, 8));
  input.run = random_inches(random, 60, 240, 16);
  input.hip_breadth = random_inches(random, 1, 10, 2);
  input.hip_depth = random_inches(random, 6, 16, 2);
  input.backed = chance(random, 50);
  input.peak = chance(random, 70) ? CornerPeak::kRidge : CornerPeak::kBetween;
  input.seat = random_inches(random, 0, 3, 4);
  input.overhang = random_inches(random, 0, 24, 1);
  return input;
}

}  // namespace

TEST_CASE("every figure of a hip, a valley and their cuts stands whole on the page, clear of the others",
          "[drawings][corner]") {
  const float scale = GENERATE(1.0F, 2.0F);
  CAPTURE(scale);
  Phone phone(scale);
  Random random(11);
  for (int round = 0; round < 100;) {
    const CornerInput input = random_corner(random);
    const auto corner = solve_corner(input);
    if (!corner) continue;
    ++round;
    const Shown shown(random);
    CAPTURE(round, shown.small, static_cast<int>(shown.voice.lengths.form), input.eave_angle.deg(),
            input.pitch.rise.in(), input.pitch_other.rise.in(), static_cast<int>(input.kind));
    const Said said = without_unit(
        [&](std::string_view key) { return corner_figure(key, input, *corner, shown.voice); }, shown.voice);
    phone.draw(corner_plan_drawing(input, *corner), 320, shown.small, said);
    phone.draw(corner_along_drawing(input, *corner), 240, shown.small, said);
    phone.draw(corner_foot_drawing(input, *corner), 260, shown.small, said);
    phone.draw(corner_across_drawing(input, *corner), 280, shown.small, said);
    for (const CornerCut& cut : corner_cuts(input, *corner)) {
      CAPTURE(static_cast<int>(cut.name));
      const Said of_cut =
          without_unit([&](std::string_view key) { return corner_cut_figure(key, cut, shown.voice); }, shown.voice);
      phone.draw(corner_cut_drawing(cut), cut.section.depth > Length{} ? 340 : 200, shown.small, of_cut);
    }
  }
  CHECK(phone.drawn > 1000);
}

namespace {

constexpr const char* kCornerPages[] = {"corner.row.along", "corner.row.across", "corner.row.jacks", "corner.row.cuts"};

void to_corner(Bed& bed) {
  bed.tap("place.rafter");
  bed.tap("rafter.row.corner");
}

}  // namespace

TEST_CASE("the corner's pages are sound on every phone, in every language, in gloves and large type, by the millimetre",
          "[screens][corner]") {
  const auto size = GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844},
                             std::pair<float, float>{844, 390}, std::pair<float, float>{820, 1180});
  const std::string way = GENERATE("plain", "es", "fr-CA", "large", "glove", "mm");
  const float width = size.first, height = size.second;
  CAPTURE(width, height, way);
  Bed bed(width, height);
  if (way == "es" || way == "fr-CA") bed.speak(way, width, height);
  if (way == "large" || way == "glove" || way == "mm") {
    bed.tap("bar.menu");
    bed.tap("menu.settings");
    if (way == "large") bed.set_number("settings.text", 200);
    if (way == "glove") bed.tap("settings.glove");
    if (way == "mm") bed.tap("settings.form.3");
  }
  to_corner(bed);
  // Of the narrowest phone the bar's five places share what the back key leaves them, in gloves a little less than 48.
  const auto sound = [&] {
    CHECK_THAT(bed.unsound(way == "glove" && width < 390 ? 40 : 48), Catch::Matchers::IsEmpty());
  };
  for (const char* kind : {"corner.kind.1", "corner.kind.0"}) {
    bed.tap(kind);
    sound();
    for (const char* page : kCornerPages) {
      CAPTURE(kind, page);
      bed.tap(page);
      CHECK_FALSE(bed.shows("corner.refused"));
      sound();
      if (std::string_view(page) == "corner.row.cuts")
        for (const char* cut : {"corner.cut.0", "corner.cut.2", "corner.cut.5", "corner.cut.7"}) {
          bed.tap(cut);
          sound();
          bed.tap("bar.back");
        }
      bed.tap("bar.back");
    }
  }
}

TEST_CASE("a figure of the plan is typed, the corner follows, and it is taken back", "[screens][corner]") {
  Bed bed;
  to_corner(bed);
  const std::string before = bed.value("corner.answer.to_cut");
  bed.tap("corner.pitch_other");
  bed.tap_keypad({"digit.1", "digit.2", "done"});
  CHECK(bed.value("corner.pitch_other") == "12:12");
  CHECK(bed.value("corner.answer.to_cut") != before);
  CHECK(bed.platform.stored("places").find("pitch_other") != std::string::npos);
  bed.tap("bar.undo");
  CHECK(bed.value("corner.answer.to_cut") == before);
}

TEST_CASE("what gives no corner is refused, and the nearest value that would do is a tap away", "[screens][corner]") {
  Bed bed;
  to_corner(bed);
  bed.tap("corner.run");
  bed.tap_keypad({"digit.0", "done"});
  CHECK(bed.shows("corner.refused"));
  bed.tap("corner.run");
  bed.tap_keypad({"digit.1", "digit.2", "done"});
  CHECK_FALSE(bed.shows("corner.refused"));
  bed.tap("corner.row.along");
  bed.tap("corner.seat");
  bed.tap_keypad({"digit.9", "digit.9", "done"});
  CHECK(bed.item("corner.refused").name.find("at most") != std::string::npos);
  bed.tap("corner.use_limit");
  CHECK_FALSE(bed.shows("corner.refused"));
}

TEST_CASE("a cut that the saw cannot swing to is said, one that it can has both its settings", "[screens][corner]") {
  Bed bed;
  to_corner(bed);
  bed.tap("corner.row.cuts");
  bed.tap("corner.cut.2");  // the jacks
  CHECK(bed.value("corner.cut_first.first").find("39.8") != std::string::npos);
  CHECK(bed.value("corner.cut_first.side").find("33.7") != std::string::npos);
  CHECK(bed.shows("corner.cut_first.ride_side"));
  CHECK_FALSE(bed.shows("corner.cut_other.first"));  // alike on both roofs
  CHECK(bed.shows("corner.first_piece"));
}
