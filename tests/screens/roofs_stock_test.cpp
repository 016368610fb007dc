// A roof of any plan and the cutting plan on their pages: sound on every phone, what is missing told once, what is set
// kept.
#include <catch_amalgamated.hpp>

#include "bed.h"
#include "book/book_file.h"
#include "book/book_shelf.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

Book book_kept(const Bed& bed) {
  const auto shelf = read_shelf(bed.platform.stored("shelf"));
  REQUIRE(shelf);
  const auto book = read_book(bed.platform.stored(shelf->open));
  REQUIRE(book);
  return *book;
}

int items_under(const Bed& bed, std::string_view prefix) {
  int count = 0;
  for (const Item& item : bed.app.registry().items()) count += item.key.starts_with(prefix) ? 1 : 0;
  return count;
}

struct WayBed : Bed {
  WayBed(std::pair<float, float> size, const std::string& way) : Bed(size.first, size.second) {
    if (way == "es" || way == "fr-CA") speak(way, size.first, size.second);
    if (way == "plain" || way == "es" || way == "fr-CA") return;
    tap("bar.menu");
    tap("menu.settings");
    if (way == "large") set_number("settings.text", 200);
    if (way == "glove") tap("settings.glove");
    if (way == "mm") tap("settings.form.3");
  }
};

}  // namespace

TEST_CASE(
    "the pages of a roof of any plan and of stock are sound on every phone, in every language, in gloves and large "
    "type, by the millimetre",
    "[screens][roofs_page]") {
  const auto size = GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844},
                             std::pair<float, float>{844, 390}, std::pair<float, float>{820, 1180});
  const std::string way = GENERATE("plain", "es", "fr-CA", "large", "glove", "mm");
  CAPTURE(size.first, size.second, way);
  WayBed bed(size, way);
  // Of the narrowest phone the bar's five places share what the back key leaves them, in gloves a little less than 48.
  const auto sound = [&] {
    CHECK_THAT(bed.unsound(way == "glove" && size.first < 390 ? 40 : 48), Catch::Matchers::IsEmpty());
  };
  bed.press("place.frame");
  bed.press("frame.row.roofs");
  sound();
  for (const int shape : {1, 4}) {
    bed.press("roofs.shape." + std::to_string(shape));
    sound();
    bed.press("roofs.side.1");
    sound();
    bed.press("bar.back");
    bed.press("roofs.all");
    sound();
    bed.press("bar.back");
    bed.press("roofs.timbers");
    sound();
    bed.press("bar.back");
    bed.press("roofs.over");
  }
  bed.press("place.shop");
  bed.press("shop.stock");
  sound();
  bed.press("stock.to_yard");
  bed.press("yard.add");
  bed.press("stock.yard.0.defect");
  sound();
  bed.press("bar.back");
  bed.press("stock.row_of.1");
  sound();
}

TEST_CASE("a wall of a roof is typed and the roof follows; a side becomes a gable; all is taken back",
          "[screens][roofs_page]") {
  Bed bed;
  bed.press("place.frame");
  bed.press("frame.row.roofs");
  bed.press("roofs.shape.0");
  const std::string area = bed.value("roofs.area");
  bed.press("roofs.length.0");
  bed.tap_keypad({"digit.4", "digit.0", "done"});
  CHECK(bed.value("roofs.length.0") == "40′ 0″");
  CHECK(bed.value("roofs.area") != area);
  bed.press("roofs.side.1");
  bed.press("roof_plan.sides.1.kind.1");
  CHECK(book_kept(bed).roof.sides.at(1).kind == SideKind::kGable);
  CHECK_FALSE(bed.shows("roof_plan.sides.1.pitch"));
  bed.press("bar.back");
  bed.press("bar.undo");
  bed.press("bar.undo");
  CHECK(bed.value("roofs.area") == area);
  // What gives no roof is told, and the plan stays.
  bed.press("roofs.length.0");
  bed.tap_keypad({"digit.0", "done"});
  CHECK(bed.value("roofs.area") == area);
}

TEST_CASE("a timber of a roof leads to its sheet once the roof is the book's frame", "[screens][roofs_page]") {
  Bed bed;
  bed.press("place.frame");
  bed.press("frame.row.roofs");
  bed.press("roofs.shape.1");
  bed.press("roofs.timbers");
  bed.press("roofs.timbers.HR-1");
  CHECK(bed.shows("roofs.timber.length"));
  bed.press("roofs.timber.sheet");
  CHECK_FALSE(book_kept(bed).framed);
  CHECK_FALSE(bed.shows("roofs.timber.length"));
  CHECK(bed.shows("sheet.face.1"));
}

TEST_CASE("a price that is missing is asked for once, and nothing is called the best before it is there",
          "[screens][roofs_page]") {
  Bed bed;
  bed.press("place.shop");
  bed.press("shop.stock");
  CHECK(bed.shows("stock.proven"));
  bed.press("stock.aim.2");
  CHECK(items_under(bed, "stock.trouble.") == 1);
  CHECK_FALSE(bed.shows("stock.proven"));
  CHECK_FALSE(bed.shows("stock.wood"));
  bed.press("stock.price");
  bed.tap_keypad({"digit.9", "digit.0", "done"});
  CHECK(items_under(bed, "stock.trouble.") == 0);
  CHECK(bed.shows("stock.proven"));
  CHECK(bed.shows("stock.cost"));
}

TEST_CASE("a used stick keeps its pieces; what cannot be changed there is no switch", "[screens][roofs_page]") {
  Bed bed;
  bed.press("place.shop");
  bed.press("shop.stock");
  bed.press("stock.row_of.1");
  CHECK(items_under(bed, "stick.hold.") > 0);
  bed.press("stick.used");
  REQUIRE(book_kept(bed).stock.held.size() == 1);
  CHECK(book_kept(bed).stock.held[0].used);
  CHECK(items_under(bed, "stick.hold.") == 0);
  CHECK(items_under(bed, "stick.piece.") > 0);
}
