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
