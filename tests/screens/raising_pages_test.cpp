// The raising's pages as a phone shows them: nothing that is read is cut, the tick is in reach, the page scrolls under
// the finger, no message lies over what is pressed.
#include <catch_amalgamated.hpp>

#include "cut_words.h"
#include "raising_bed.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

/// A bed whose building has an order that was looked for.
struct FoundBed : RaisingBed {
  explicit FoundBed(float width = 390, float height = 844) : RaisingBed(width, height) {
    go("raising.search");
    go("search.go");
    go("search.take");
  }
  void large_type(double percent) {
    tap("place.angles");
    tap("bar.menu");
    tap("menu.settings");
    set_number("settings.text", percent);
    tap("place.raising");
    work();
  }
  [[nodiscard]] bool overlap(const Rect& a, const Rect& b) const {
    return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
  }
  /// What can be pressed and lies under the message; "" where there is nothing.
  [[nodiscard]] std::string under_message() const {
    const Rect message = item("toast").rect;
    std::string out;
    for (const Item& i : app.registry().items())
      if (i.touch != Touch::kNone && i.role != Role::kImage && i.key != "toast.undo" && i.rect.w > 0 && i.rect.h > 0 &&
          overlap(i.rect, message))
        out += i.key + " ";
    return out;
  }
};

}  // namespace

TEST_CASE("on the page of a step nothing is cut, in each language, on small phones, in large type",
          "[screens][raising]") {
  FoundBed bed;
  const std::size_t steps = bed.stored().steps.size();
  const auto whole = [&](double percent, float width, std::string_view language) {
    INFO(language << " " << width << " " << percent);
    bed.speak(language, width, width < 390 ? 568 : 844);
    bed.press("raising.order");
    CHECK_THAT(cut_words(bed), Catch::Matchers::IsEmpty());
    bed.go("order.step.0");
    for (std::size_t i = 0; i < steps; ++i) {
      INFO("step " << i + 1);
      // The head, then the verdict, each where it can be seen.
      CHECK_THAT(cut_words(bed), Catch::Matchers::IsEmpty());
      bed.see("step.verdict");
      CHECK_THAT(cut_words(bed), Catch::Matchers::IsEmpty());
      if (i + 1 < steps) bed.go("step.next");
    }
    bed.press("bar.back");
    bed.press("bar.back");
  };
  bed.press("bar.back");
  for (const double percent : {100.0, 200.0}) {
    bed.large_type(percent);
    for (const float width : {320.0F, 390.0F})
      for (std::size_t l = 0; l < kLanguageCount; ++l) whole(percent, width, language_tag(static_cast<Language>(l)));
  }
}

TEST_CASE("a finger along the picture of a step scrolls its page, one across it turns the building",
          "[screens][raising]") {
  FoundBed bed;
  bed.go("order.step.3");
  const Rect picture = bed.item("step.picture").rect;
  const float x = picture.x + picture.w / 2, y = picture.y + picture.h / 2;
  bed.drag(x, y, x + 120, y + 6);
  CHECK(bed.item("step.picture").rect.y == picture.y);
  REQUIRE(bed.shows("step.fit"));  // turned
  bed.press("step.fit");
  CHECK_FALSE(bed.shows("step.fit"));
  bed.drag(x, y, x + 6, y - 120);
  CHECK(bed.item("step.picture").rect.y < picture.y);
  CHECK_FALSE(bed.shows("step.fit"));
  // By keys too.
  bed.press("step.turn_left");
  CHECK(bed.shows("step.fit"));
  bed.press("step.turn_right");
  CHECK_FALSE(bed.shows("step.fit"));
}

TEST_CASE("held on its side a phone shows a step's picture beside the words, and the tick", "[screens][raising]") {
  FoundBed bed(844, 390);
  bed.go("order.step.3");
  const Rect picture = bed.item("step.picture").rect, name = bed.item("step.name").rect,
             tick = bed.item("step.done").rect;
  CHECK(picture.h > 240);
  CHECK(picture.w > 240);
  CHECK(picture.x + picture.w <= name.x);
  CHECK(tick.h >= 48);
  CHECK(tick.y + tick.h <= 390);
  CHECK(tick.x >= name.x - 1);
  CHECK_THAT(cut_words(bed), Catch::Matchers::IsEmpty());
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
}

TEST_CASE("from a step the one before and the next are a key away, apart from the key back", "[screens][raising]") {
  FoundBed bed;
  bed.go("order.step.0");
  CHECK_FALSE(bed.shows("step.before"));
  bed.go("step.next");
  REQUIRE(bed.shows("step.before"));
  CHECK(bed.item("step.before").name.starts_with("Step 1 of "));
  bed.go("step.before");
  CHECK_FALSE(bed.shows("step.before"));
  CHECK(bed.item("bar.back").name != bed.item("step.next").name);
}

TEST_CASE("a message lies over nothing that is pressed, and what it took the room of can be scrolled to",
          "[screens][raising]") {
  const auto [width, height] =
      GENERATE(std::pair{390.0F, 844.0F}, std::pair{320.0F, 568.0F}, std::pair{844.0F, 390.0F});
  FoundBed bed(width, height);
  REQUIRE(bed.shows("toast"));
  CHECK_THAT(bed.under_message(), Catch::Matchers::IsEmpty());
  const Rect row = bed.item("order.step.0").rect;
  bed.see("order.clear");
  CHECK_FALSE(bed.overlap(bed.item("order.clear").rect, bed.item("toast").rect));
  CHECK(bed.item("order.clear").rect.h >= 44);
  bed.see("order.step.0");
  CHECK(bed.item("order.step.0").rect == row);
  bed.frame(10'000);
  bed.rest();
  REQUIRE_FALSE(bed.shows("toast"));
  CHECK(bed.item("order.step.0").rect == row);  // nothing moved under a finger
}

TEST_CASE("a day is said where the raising has more than one", "[screens][raising]") {
  FoundBed bed;
  CHECK_FALSE(bed.shows("order.day.0"));
  bed.go("order.step.1");
  CHECK(bed.item("step.title").name.find("day") == std::string::npos);
  bed.go("step.more");
  bed.press("raising.steps.1.day");
  bed.tap_keypad({"digit.2", "done"});
  bed.work();
  bed.go("bar.back");
  CHECK(bed.item("step.title").name.ends_with("day 2"));
  bed.go("bar.back");
  CHECK(bed.shows("order.day.0"));
  CHECK(bed.shows("order.day.1"));
}
