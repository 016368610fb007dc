// One timber on its pages: its faces turned through, its cards, what is said with them once and what is read aloud.
#include <algorithm>
#include <catch_amalgamated.hpp>

#include "bed.h"
#include "words/strings.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct TimberBed : Bed {
  explicit TimberBed(float width = 390, float height = 844) : Bed(width, height) { tap("place.shop"); }
  void open_post() {
    tap("shop.all");
    tap("shop.timber.P-A1");
  }
};

/// How many pages lead from the first face to the cuts, each of them sound.
int faces_turned(Bed& bed) {
  for (const char* key : {"place.shop", "shop.all", "shop.timber.P-A2", "shop.sheet"}) bed.press(key);
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  bed.press("sheet.mark");
  int pages = 0;
  while (bed.shows("face.on") && pages < 40) {
    ++pages;
    CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
    bed.press("face.on");
  }
  CHECK(bed.shows("shop.step.title"));
  return pages;
}

}  // namespace

TEST_CASE("a timber's faces are turned through to its cuts on every phone", "[screens][timber]") {
  const auto size = GENERATE(std::pair{390.0F, 844.0F}, std::pair{320.0F, 568.0F}, std::pair{844.0F, 390.0F});
  const bool large = GENERATE(false, true);
  CAPTURE(size.first, large);
  Bed bed(size.first, size.second);
  if (large) {
    bed.tap("bar.menu");
    bed.tap("menu.settings");
    bed.set_number("settings.text", 200);
  }
  CHECK(faces_turned(bed) >= 4);
}

TEST_CASE("a low and wide page shows the parts of a face side by side", "[screens][timber]") {
  Bed upright(390, 560), wide(844, 390), narrow(420, 390);
  const int turned = faces_turned(wide);
  CHECK(turned < faces_turned(narrow));
  CHECK(turned <= faces_turned(upright));
}

TEST_CASE("a card is read aloud where the device has a voice of its own and it is wanted", "[screens][timber]") {
  TimberBed bed;
  const auto voices = [&](const char* tags) {
    bed.app.on({EventKind::kVoices, {}, tags, 0});
    bed.rest();
  };
  const auto to_settings = [&] {
    bed.tap("bar.menu");
    bed.tap("menu.settings");
  };
  to_settings();
  CHECK_FALSE(bed.shows("settings.aloud"));
  voices("de es");
  CHECK_FALSE(bed.shows("settings.aloud"));
  voices("en es");
  bed.tap("bar.back");
  bed.tap("bar.back");
  bed.open_post();
  CHECK_FALSE(bed.shows("shop.aloud"));
  to_settings();
  bed.tap("settings.aloud");
  CHECK(bed.platform.ready_for_speech);
  bed.tap("bar.back");
  bed.tap("bar.back");

  bed.tap("shop.aloud");
  REQUIRE(bed.platform.spoken.size() == 1);
  CHECK(bed.platform.spoken.back() == "en: P A 1, Post. Next: Lay out. Tip to tip: seven feet, seven inches.");
  CHECK(bed.item("shop.aloud").name == "Stop reading");
  SECTION("pressed again it is silent") {
    bed.tap("shop.aloud");
    CHECK(bed.platform.spoken.back().empty());
    CHECK(bed.item("shop.aloud").name == "Read aloud");
  }
  SECTION("when the page turns it is silent") {
    bed.tap("shop.next.open");
    CHECK(bed.platform.spoken.back().empty());
    CHECK(bed.item("shop.step.aloud").name == "Read aloud");
    bed.tap("shop.step.aloud");
    CHECK(bed.platform.spoken.back().starts_with("en: Lay out. P A 1, one of "));
  }
  SECTION("when all is said the key is as it was; an older end changes nothing") {
    bed.app.on({EventKind::kSpoken, {}, {}, bed.platform.speech - 1});
    bed.rest();
    CHECK(bed.item("shop.aloud").name == "Stop reading");
    bed.app.on({EventKind::kSpoken, {}, {}, bed.platform.speech});
    bed.rest();
    CHECK(bed.item("shop.aloud").name == "Read aloud");
  }
}

TEST_CASE("what is to be minded at every tool stands once, what a blade adds stands on its cards",
          "[screens][timber]") {
  TimberBed bed;
  bed.open_post();
  const std::string line = bed.item("shop.cautions").name;
  CHECK(line == "Caution: Eyes and ears covered. Work held fast.");
  bed.tap("shop.cautions");
  CHECK(bed.item("shop.cautions.saw").name ==
        "Caution: Saw: Kickback: stand out of the blade’s line, let nothing pinch it. Cords clear of the blade.");
  CHECK_FALSE(bed.shows("shop.cautions.layout"));
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  bed.tap("shop.cautions");
  bed.tap("shop.next.open");
  CHECK_FALSE(bed.shows("shop.cautions"));
  CHECK_FALSE(bed.shows("shop.step.caution"));
  bed.tap("shop.step.after");
  CHECK(bed.item("shop.step.caution").name ==
        "Caution: Kickback: stand out of the blade’s line, let nothing pinch it. Cords clear of the blade.");
}

TEST_CASE("a card that one comes to first says what is to be minded at every tool", "[screens][timber]") {
  TimberBed bed;
  bed.tap("shop.place.saw");
  bed.press("shop.later");
  const auto row = [&](std::string_view what) {
    for (const Item& i : bed.app.registry().items())
      if (i.key.starts_with("shop.setting.") && i.key.find(what) != std::string::npos) return std::string(i.key);
    FAIL("no row of " << what);
    return std::string{};
  };
  bed.press(row(".alike."));
  bed.press(row("-"));
  CHECK(bed.shows("shop.cautions"));
  CHECK(bed.shows("shop.step.caution"));
  bed.tap("shop.step.after");
  CHECK_FALSE(bed.shows("shop.cautions"));
  bed.tap("shop.step.before");
  CHECK(bed.shows("shop.cautions"));
}
