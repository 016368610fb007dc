// The Frame place and the shelf of books, by finger and through the mirror. Where a number is looked at it follows from
// plain arithmetic on what was entered, or from the source named beside it.
#include <catch_amalgamated.hpp>

#include "bed.h"
#include "book/book.h"
#include "book/book_file.h"
#include "book/book_shelf.h"
#include "words/strings.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

/// A first visit that stands in the Frame place, with the demo's frame.
struct FrameBed : Bed {
  explicit FrameBed(float width = 390, float height = 844) : Bed(width, height) { tap("place.frame"); }
  /// Enters a length of whole feet, or whole inches where the field counts in those.
  void enter(std::string_view key, std::initializer_list<std::string_view> keys) {
    tap(key);
    tap_keypad(keys);
    tap("keypad.done");
  }
  void open_sheet(std::string_view mark) {
    press("frame.row.timbers");
    set_text("list.search", mark);
    commit_text("list.search", mark);
    tap("list." + std::string(mark));
  }
  /// What the shell says when the user leaves a text field.
  [[nodiscard]] Book stored_book() const {
    const auto shelf = read_shelf(platform.stored("shelf"));
    REQUIRE(shelf);
    const auto book = read_book(platform.stored(shelf->open));
    REQUIRE(book);
    return *book;
  }
  /// Closed and opened again with what is stored.
  void reopen(FrameBed& next) const {
    next.platform.saves = platform.saves;
    next.app.load(platform.stored("kit"), platform.stored("places"));
    next.rest();
    next.tap("place.frame");
  }
};

/// 20 ft wide, 24 ft long, plates at 10 ft, 8 in 12.
void make_frame(FrameBed& bed) {
  bed.tap("frame.row.books");
  bed.tap("books.new");
  bed.enter("new.span", {"digit.2", "digit.0"});
  bed.enter("new.length", {"digit.2", "digit.4"});
  bed.enter("new.plate", {"digit.1", "digit.0"});
  bed.enter("new.pitch", {"digit.8"});
  bed.tap("new.make");
}

}  // namespace

TEST_CASE("the frame's pages: every key stands once, has a name and is large enough for a finger", "[screens][frame]") {
  const auto [width, height] = GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844},
                                        std::pair<float, float>{844, 390}, std::pair<float, float>{820, 1180});
  const std::string language(language_tag(static_cast<Language>(GENERATE(range<std::size_t>(0, kLanguageCount)))));
  CAPTURE(width, height, language);
  FrameBed bed(width, height);
  bed.speak(language, width, height);
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  for (const char* page : {"options", "bays", "sections", "joints", "view", "timbers", "hardware", "books"}) {
    bed.press("frame.row." + std::string(page));
    CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
    bed.press("bar.back");
  }
  bed.press("frame.row.timbers");
  bed.press("list.P-A1");
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  for (const char* page : {"sheet.species", "sheet.end.b", "sheet.defects"}) {
    bed.press(page);
    CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
    bed.press("bar.back");
  }
}

TEST_CASE("on its side a phone keeps the key to any timber beside undo", "[screens][frame]") {
  FrameBed bed(844, 390);
  make_frame(bed);
  bed.press("frame.row.joints");
  bed.press("joinery.plates");
  CHECK(bed.shows("bar.undo"));
  CHECK(bed.shows("bar.find"));
  CHECK_THAT(bed.unsound(48), Catch::Matchers::IsEmpty());
}

TEST_CASE("a frame just made is looked at from its top, however far down the books were", "[screens][frame]") {
  FrameBed bed(320, 568);
  bed.see("frame.row.books");
  REQUIRE(bed.app.registry().scroll_areas().front().offset > 0);
  make_frame(bed);
  CHECK(bed.app.registry().scroll_areas().front().offset == 0);
}

TEST_CASE("four numbers make a frame, which is stored at once", "[screens][frame]") {
  FrameBed bed;
  make_frame(bed);
  REQUIRE(bed.value("frame.bent.span") == "20′ 0″");
  REQUIRE(bed.value("frame.bent.plate_left") == "10′ 0″");
  REQUIRE(bed.value("frame.bent.pitch_left") == "8:12");
  // Middle to middle of the end bents, whose posts are 8 in wide: 24 ft less twice 4 in.
  REQUIRE(bed.value("frame.wall.length") == "24′ 0″");
  // Defaults are never engineered sections, and the screen says so.
  REQUIRE(bed.item("frame.finding.0").name.find("not engineered") != std::string::npos);
  const Book book = bed.stored_book();
  REQUIRE(book.frame.span == Length::feet(20));
  REQUIRE(book.frame.plate_left == Length::feet(10));
  REQUIRE(book.frame.pitch_left == Slope::in_12(Length::inches(8)));

  bed.open_sheet("P-A1");
  // Under an 8 in plate whose top is at 10 ft, with a 4 in tenon: 120 − 8 + 4.
  REQUIRE(bed.value("sheet.length") == "9′ 7″ (8″ × 8″)");
  // 8 × 8 × 10 ft / 12: board feet on nominal size (US Army subcourse EN5155).
  REQUIRE(bed.value("sheet.volume") == "53 board feet");
  REQUIRE(bed.value("sheet.stock") == "10′ 0″");
}

TEST_CASE("a measure on the drawing is changed by tapping it; undo and redo go step by step", "[screens][frame]") {
  FrameBed bed;
  const std::string before = bed.value("frame.bent.span");
  REQUIRE_FALSE(bed.shows("bar.undo"));
  bed.tap("frame.bent.span");
  bed.tap_keypad({"digit.1", "digit.8"});
  // While it is typed the drawing follows; nothing is stored yet.
  const auto saves = bed.platform.saves.size();
  bed.tap("keypad.done");
  REQUIRE(bed.value("frame.bent.span") == "18′ 0″");
  REQUIRE(bed.platform.saves.size() > saves);
  REQUIRE(bed.stored_book().frame.span == Length::feet(18));
  bed.tap("bar.undo");
  REQUIRE(bed.value("frame.bent.span") == before);
  REQUIRE(bed.stored_book().frame.span == Length::feet(14));
  bed.tap("bar.redo");
  REQUIRE(bed.value("frame.bent.span") == "18′ 0″");
}

TEST_CASE("a plan that gives no frame says why, and what would do", "[screens][frame]") {
  FrameBed bed;
  bed.press("frame.row.options");
  bed.enter("options.bent.pitch_left", {"digit.9", "digit.9", "digit.9"});
  bed.press("bar.back");
  REQUIRE(bed.shows("frame.refused"));
  REQUIRE(bed.shows("frame.pitch_left"));
  bed.tap("bar.undo");
  REQUIRE_FALSE(bed.shows("frame.refused"));
}

TEST_CASE("hipped ends are chosen for a frame, with dragon ties, and every page has its place for them",
          "[screens][frame][hipframe]") {
  const auto [width, height] = GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{820, 1180});
  const std::string language(language_tag(static_cast<Language>(GENERATE(range<std::size_t>(0, kLanguageCount)))));
  CAPTURE(width, height, language);
  FrameBed bed(width, height);
  bed.speak(language, width, height);
  bed.press("frame.row.options");
  bed.press("frame.form.2");
  REQUIRE(bed.stored_book().frame.form == RoofForm::kHip);
  // The ends begin with the sides' pitch.
  CHECK(bed.stored_book().frame.hips.pitch == bed.stored_book().frame.pitch_left);
  bed.see("frame.hips.pitch");
  CHECK_FALSE(bed.shows("frame.gable_overhang"));
  bed.press("frame.hips.dragon_ties");
  CHECK(bed.stored_book().frame.hips.dragon_ties);
  bed.see("frame.hips.dragon_leg");
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  bed.press("bar.back");
  for (const char* page : {"options", "bays", "sections", "joints", "view", "timbers", "hardware"}) {
    bed.press("frame.row." + std::string(page));
    CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
    bed.press("bar.back");
  }
  for (const char* mark : {"HR-A1", "JR-A1.2", "DT-A1", "L-1"}) {
    CAPTURE(mark);
    bed.open_sheet(mark);
    CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
    bed.press("bar.back");
    bed.press("bar.back");
  }
  for (const char* place : {"place.rafter", "place.shop", "place.raising", "place.frame"}) {
    bed.tap(place);
    CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  }
}

TEST_CASE("an override is said wherever the timber is shown, and undo takes it back", "[screens][frame]") {
  FrameBed bed;
  make_frame(bed);
  bed.open_sheet("P-A1");
  REQUIRE_FALSE(bed.shows("sheet.overridden"));
  bed.enter("frame.overrides.@P-A1.section.breadth", {"digit.1", "digit.0"});
  REQUIRE(bed.shows("sheet.overridden"));
  REQUIRE(bed.value("sheet.length").find("10″ × 8″") != std::string::npos);
  REQUIRE(bed.stored_book().frame.overrides.size() == 1);
  bed.press("bar.back");
  REQUIRE(bed.value("list.P-A1").find("Set apart") != std::string::npos);
  bed.press("bar.back");
  bed.press("frame.row.view");
  bed.press("view.kind.2");  // seen along the ridge the first bent's posts stand in front
  const Rect picture = bed.item("view.picture").rect;
  for (float y = picture.y + picture.h * 0.9F; y > picture.y && bed.value("view.picture") != "P-A1"; y -= 24)
    for (float x = picture.x + 6; x < picture.x + picture.w / 2 && bed.value("view.picture") != "P-A1"; x += 6)
      bed.tap_at(x, y);
  REQUIRE(bed.value("view.picture") == "P-A1");
  REQUIRE(bed.item("view.overridden").name.starts_with("Set apart"));
  bed.tap("view.sheet");
  REQUIRE(bed.item("sheet.heading").name.starts_with("P-A1"));
  REQUIRE(bed.shows("sheet.overridden"));
  bed.tap("bar.undo");
  REQUIRE_FALSE(bed.shows("sheet.overridden"));
  REQUIRE(bed.stored_book().frame.overrides.empty());
}

TEST_CASE("a timber has its own species, end joint and defects, and goes back to the plan", "[screens][frame]") {
  FrameBed bed;
  make_frame(bed);
  bed.open_sheet("P-A2");
  const std::string weight = bed.value("sheet.weight"), length = bed.value("sheet.length");
  bed.tap("sheet.species");
  bed.tap("species.2");  // white oak, green 62.7 lb/ft³ against Douglas-fir's 38 (USDA FIA REF_SPECIES)
  bed.tap("bar.back");
  REQUIRE(std::stoi(bed.value("sheet.weight")) > std::stoi(weight) * 5 / 4);

  bed.tap("sheet.end.b");
  bed.tap("joint.kind.housed_butt");
  bed.enter("joint.side.housing", {"digit.2"});
  REQUIRE(bed.value("joint.side.housing") == "2″");
  bed.tap("bar.back");
  // No tenon now, let in 2 in: 120 − 8 + 2.
  REQUIRE(bed.value("sheet.length").starts_with("9′ 6″"));

  bed.tap("sheet.defects");
  bed.tap("defects.add");
  bed.tap("defect.kind.0.3");
  bed.tap("defect.face.0.1");
  bed.enter("frame.overrides.@P-A2.defects.0.to", {"digit.9"});
  bed.tap("bar.back");
  const Override now = bed.stored_book().frame.overrides.at(0);
  REQUIRE(now.has_species);
  REQUIRE(now.species.name == "White oak");
  REQUIRE(now.has_joint_b);
  REQUIRE(now.defects.size() == 1);
  REQUIRE(now.defects[0].kind == DefectKind::kHeart);
  REQUIRE(now.defects[0].face == Face::kNear);

  bed.tap("sheet.as_planned");
  REQUIRE(bed.stored_book().frame.overrides.empty());
  REQUIRE(bed.value("sheet.weight") == weight);
  REQUIRE(bed.value("sheet.length") == length);
}

TEST_CASE("a timber that was taken out comes back by undo", "[screens][frame]") {
  FrameBed bed;
  bed.open_sheet("B-A1.1");
  bed.tap("sheet.take_out");
  REQUIRE_FALSE(bed.shows("list.B-A1.1"));
  REQUIRE(bed.shows("toast.undo"));
  bed.tap("toast.undo");
  REQUIRE(bed.shows("list.B-A1.1"));
}

TEST_CASE("what goes with a post that is taken out is named", "[screens][frame]") {
  FrameBed bed;
  bed.open_sheet("P-A1");
  bed.tap("sheet.take_out");
  const std::string said = bed.item("toast").name;
  CHECK(said.find("P-A1") != std::string::npos);
  CHECK(said.find("B-A1.1") != std::string::npos);
}

TEST_CASE("the list is searched and put in another order; headings follow the language", "[screens][frame]") {
  FrameBed bed;
  bed.press("frame.row.timbers");
  REQUIRE(bed.value("list.count") == "68");
  REQUIRE(bed.item("list.heading.0").name == "Post · 6");
  bed.commit_text("list.search", "brace");
  REQUIRE(bed.item("list.heading.0").name.starts_with("Brace · "));
  REQUIRE_FALSE(bed.shows("list.P-A1"));
  bed.commit_text("list.search", "p-a");
  REQUIRE(bed.value("list.count") == "3");
  bed.commit_text("list.search", "");
  bed.tap("list.order.3");
  REQUIRE(bed.item("list.heading.0").name.starts_with("Bent 1 · "));
  bed.tap("list.order.0");
  Viewport v;
  v.language = "es";
  bed.view(v);
  REQUIRE(bed.item("list.heading.0").name == "Poste · 6");
}

TEST_CASE("ten thousand timbers: only the rows in sight are made", "[screens][frame]") {
  FrameBed bed;
  Book book =
      new_book("Long shed", Length::feet(24), Length::feet(24), Length::feet(10), Slope::in_12(Length::inches(8)));
  book.framed = false;
  for (int i = 1; i <= 10000; ++i) {
    HandTimber timber;
    timber.mark = "X-" + std::to_string(i);
    book.frame.added.push_back(timber);
  }
  bed.app.on({EventKind::kFileOpened, "shed.json", write_book(book), 0});
  bed.rest();
  bed.tap("import.take_book");
  bed.press("frame.row.timbers");
  REQUIRE(bed.value("list.count") == "10000");
  REQUIRE(bed.app.registry().items().size() < 60);
  REQUIRE(bed.shows("list.X-1"));
  bed.drag(195, 700, 195, 100);
  REQUIRE_FALSE(bed.shows("list.X-1"));
  REQUIRE(bed.app.registry().items().size() < 60);
}

TEST_CASE("the round view turns under a finger, steps through the bents and ghosts the rest", "[screens][frame]") {
  FrameBed bed;
  bed.press("frame.row.view");
  REQUIRE_FALSE(bed.shows("view.fit"));
  bed.drag(100, 300, 220, 320);
  REQUIRE(bed.shows("view.fit"));
  REQUIRE(bed.value("view.picture").empty());  // a drag lights nothing
  bed.tap("view.fit");
  REQUIRE_FALSE(bed.shows("view.fit"));
  REQUIRE(bed.item("view.bent").name == "All bents");
  bed.tap("view.on");
  REQUIRE(bed.item("view.bent").name == "Bent 1");
  bed.tap("view.on");
  bed.tap("view.on");
  REQUIRE(bed.item("view.bent").name == "Bent 3");
  REQUIRE_FALSE(bed.item("view.on").enabled);
  bed.tap("view.kind.1");
  REQUIRE(bed.item("view.kind.1").checked);
}

TEST_CASE("books: made, copied, renamed, deleted when asked twice, brought back", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  bed.press("frame.row.books");
  REQUIRE(bed.item("books.book2").checked);
  bed.tap("books.book2.edit");
  bed.commit_text("book.title", "Sugar house");
  REQUIRE(bed.stored_book().title == "Sugar house");
  bed.tap("book.copy");
  REQUIRE(bed.item("books.book3").name == "Sugar house 2");
  REQUIRE(bed.item("books.book3").checked);

  bed.tap("books.book3.edit");
  bed.tap("book.delete");
  REQUIRE(read_shelf(bed.platform.stored("shelf"))->books[2].deleted_at == 0);
  bed.tap("book.keep");
  REQUIRE_FALSE(bed.shows("book.delete_now"));
  bed.tap("book.delete");
  bed.tap("book.delete_now");
  REQUIRE_FALSE(bed.shows("books.book3"));
  REQUIRE(bed.platform.erased.empty());

  bed.tap("books.deleted");
  REQUIRE(bed.value("deleted.book3") == "Kept 30 more days");
  bed.tap("deleted.book3.restore");
  bed.tap("bar.back");
  REQUIRE(bed.shows("books.book3"));
  REQUIRE(bed.stored_book().frame.span == Length::feet(20));
}

TEST_CASE("a new name is not undone with an edit of the plan", "[screens][books]") {
  FrameBed bed;
  bed.enter("frame.bent.span", {"digit.1", "digit.8"});
  bed.press("frame.row.books");
  bed.tap("books.book1.edit");
  bed.commit_text("book.title", "Bath house");
  bed.tap("bar.undo");
  REQUIRE(bed.item("book.title").value == "Bath house");
  const Book book = bed.stored_book();
  REQUIRE(book.title == "Bath house");
  REQUIRE(book.frame.span == Length::feet(14));
}

TEST_CASE("thirty days after it was deleted a book is gone for good, and its log with it", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  const std::string identity = bed.stored_book().identity;
  REQUIRE_FALSE(identity.empty());
  bed.press("frame.row.books");
  bed.tap("books.book2.edit");
  bed.tap("book.delete");
  bed.tap("book.delete_now");
  FrameBed ahead;
  ahead.platform.wall_clock += 400 * kDayMs;
  bed.reopen(ahead);
  REQUIRE(ahead.platform.erased.empty());
  Shelf shelf = *read_shelf(bed.platform.stored("shelf"));
  shelf.books[1].days_seen = kKeptDays - 1;
  bed.platform.saves.push_back({"shelf", 99, write_shelf(shelf)});
  FrameBed later;
  later.platform.wall_clock += kKeptDeleted + 1;
  bed.reopen(later);
  REQUIRE(later.platform.erased == std::vector<std::string>{"book2", identity + ".shop", identity + ".out"});
  REQUIRE(later.platform.erased_logs == std::vector<std::string>{identity});
  later.press("frame.row.books");
  REQUIRE_FALSE(later.shows("books.deleted"));
}

TEST_CASE("what was entered is there after closing", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  bed.enter("frame.bent.eave_overhang", {"digit.2"});
  FrameBed next;
  bed.reopen(next);
  REQUIRE(next.value("frame.bent.span") == "20′ 0″");
  REQUIRE(next.value("frame.bent.eave_overhang") == bed.value("frame.bent.eave_overhang"));
}

TEST_CASE("a book goes out by the share sheet and comes in again", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  bed.press("frame.row.books");
  bed.tap("books.book2.edit");
  bed.tap("book.share");
  REQUIRE(bed.platform.shared == std::vector<std::string>{"New building.json"});
  const std::string bytes = bed.platform.shared_bytes;
  FrameBed other;
  other.app.on({EventKind::kFileOpened, "New building.json", bytes, 0});
  other.rest();
  REQUIRE(other.value("import.title") == "New building");
  other.tap("import.take_book");
  REQUIRE(other.value("frame.bent.span") == "20′ 0″");
  REQUIRE(write_book(other.stored_book()) == bytes);
}

TEST_CASE("a damaged or newer book file is refused with its spot; the stored books stay", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  const auto saves = bed.platform.saves.size();
  const auto take_in = [&](std::string bytes) {
    bed.app.on({EventKind::kFileOpened, "barn.json", std::move(bytes), 0});
    bed.rest();
    return bed.item("import.refused").name;
  };
  std::string whole = write_book(demo_book());
  REQUIRE_FALSE(take_in(whole.substr(0, whole.size() / 2)).empty());
  REQUIRE(bed.shows("import.left"));
  REQUIRE_FALSE(bed.shows("import.take_book"));
  const auto version = whole.find("\"version\":");
  REQUIRE(version != std::string::npos);
  std::string newer = whole;
  newer.insert(newer.find_first_of("0123456789", version), "9");
  REQUIRE(take_in(newer).find("newer") != std::string::npos);
  REQUIRE(bed.platform.saves.size() == saves);
}

TEST_CASE("stored bytes of a book that cannot be read are left alone; another book can be opened", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  FrameBed next;
  next.platform.saves = bed.platform.saves;
  next.platform.saves.push_back({"book2", 99, "{\"file\": \"bentbook book\", "});
  next.app.load(bed.platform.stored("kit"), bed.platform.stored("places"));
  next.rest();
  next.tap("place.frame");
  REQUIRE(next.shows("book.unreadable"));
  next.tap("book.to_books");
  next.tap("books.book1");
  next.press("bar.back");
  REQUIRE(next.value("frame.bent.span") == "14′ 0″");
  REQUIRE(next.platform.stored("book2") == "{\"file\": \"bentbook book\", ");
}

TEST_CASE("a list of timbers comes in with its bad lines told by number, and goes out again", "[screens][books]") {
  FrameBed bed;
  bed.app.on({EventKind::kFileOpened, "list.csv",
              "mark,breadth,depth,length\nS-1,8,8,12'\nS-2,8,eight,10'\nS-3,6,8,9' 6\"\n", 0});
  bed.rest();
  REQUIRE(bed.value("import.timbers") == "2");
  REQUIRE(bed.item("import.trouble.0").name.find('3') != std::string::npos);
  REQUIRE(bed.platform.stored("book1").empty());
  bed.tap("import.take_timbers");
  REQUIRE(bed.stored_book().frame.added.size() == 2);
  bed.press("frame.row.timbers");
  bed.tap("list.share");
  REQUIRE(bed.platform.shared.back() == "Wash house.csv");
  REQUIRE(bed.platform.shared_bytes.find("S-3") != std::string::npos);
}

TEST_CASE("a timber by hand: made, measured, cut into, taken out", "[screens][frame]") {
  FrameBed bed;
  bed.press("frame.row.timbers");
  bed.tap("list.add");
  bed.tap("hand.make");
  bed.enter("hand.timber.length", {"digit.1", "digit.2"});
  bed.press("hand.section.wood.nominal.depth");
  bed.tap_keypad({"digit.1", "digit.0", "done"});
  bed.press("hand.add.mortise");
  REQUIRE(bed.item("hand.remove.0").rect.h > 0);  // what was added is in sight
  CHECK(bed.value("hand.cut.0.station") == "6′ 0″");
  bed.press("hand.cut.0.depth");
  bed.tap_keypad({"digit.3", "done"});
  const HandTimber timber = bed.stored_book().frame.added.at(0);
  REQUIRE(timber.length == Length::feet(12));
  REQUIRE(timber.wood.nominal.depth == Length::inches(10));
  REQUIRE(timber.features.at(0).depth == Length::inches(3));
  REQUIRE(timber.mark == "X-1");
  REQUIRE(timber.features.size() == 1);
  bed.press("bar.back");
  bed.commit_text("list.search", "X-1");
  REQUIRE(bed.value("list.X-1").find("Entered by hand") != std::string::npos);
  bed.tap("list.X-1");
  REQUIRE(bed.shows("sheet.overridden"));
  bed.tap("sheet.edit_hand");
  bed.press("hand.delete");
  REQUIRE(bed.stored_book().frame.added.empty());
}

TEST_CASE("a book whose identity is none comes in under a fresh one, and that is said", "[screens][books]") {
  Book book = demo_book();
  book.identity = "../../x";
  FrameBed bed;
  bed.app.on({EventKind::kFileOpened, "barn.json", write_book(book), 0});
  bed.rest();
  REQUIRE(bed.item("import.identity").name.find("fresh") != std::string::npos);
  bed.tap("import.take_book");
  const Book taken = bed.stored_book();
  REQUIRE(is_key(taken.identity));
  // Stored under such a one long ago.
  FrameBed next;
  next.platform.saves = bed.platform.saves;
  next.platform.saves.push_back({"book2", 99, write_book(book)});
  next.app.load(bed.platform.stored("kit"), bed.platform.stored("places"));
  next.rest();
  REQUIRE(next.item("toast").name.find("fresh") != std::string::npos);
  REQUIRE(is_key(next.stored_book().identity));
  for (const std::string& key : next.platform.loads) REQUIRE(is_key(key));
}

TEST_CASE("a name with a character that does not show is refused in its field, the character named",
          "[screens][books]") {
  FrameBed bed;
  bed.press("frame.row.books");
  bed.tap("books.book1.edit");
  const std::string before = bed.item("book.title").value;
  bed.press("book.title");
  bed.commit_text("book.title", "Barn\u202enraB");
  CHECK(bed.item("book.title").value == before);
  CHECK(bed.item("book.title.refused").name.find("U+202E") != std::string::npos);
  bed.commit_text("book.title", "Barn");
  CHECK(bed.item("book.title").value == "Barn");
  CHECK_FALSE(bed.shows("book.title.refused"));
}

TEST_CASE("a book that could not be stored is not forgotten when another one is opened", "[screens][books]") {
  FrameBed bed;
  make_frame(bed);
  bed.press("frame.row.books");
  bed.tap("books.book2.edit");
  bed.commit_text("book.title", "Sugar house");
  const std::string newest = bed.platform.stored("book2");
  const auto saves = std::exchange(bed.platform.saves, {});
  for (const auto& s : saves)
    bed.app.on({s.key == "book2" ? EventKind::kSaveFailed : EventKind::kSaved, s.key, "quota", s.revision});
  bed.rest();
  REQUIRE(bed.shows("notice.save_failed"));
  bed.platform.saves = {saves.begin(), saves.begin() + 1};  // what stands on the disk
  for (const auto& s : saves)
    if (s.key != "book2") bed.platform.saves.push_back(s);
  bed.press("bar.back");
  bed.press("books.book1");
  REQUIRE(bed.shows("notice.save_failed"));
  bed.press("notice.save_again");
  REQUIRE(bed.platform.stored("book2") == newest);
  bed.app.on({EventKind::kSaved, "book2", {}, bed.platform.saves.back().revision});
  bed.rest();
  REQUIRE_FALSE(bed.shows("notice.save_failed"));
}

TEST_CASE("on a large page rows stand two abreast and a drawing has its whole width; on a phone neither", "[screens]") {
  FrameBed phone, tablet(820, 1180);
  const auto below = [](const Bed& bed, std::string_view first, std::string_view second) {
    return bed.item(second).rect.y > bed.item(first).rect.y;
  };
  phone.tap("place.raising");
  CHECK(below(phone, "raising.order", "raising.tap"));
  CHECK_FALSE(below(tablet, "frame.row.view", "frame.row.timbers"));
  CHECK(tablet.item("frame.row.timbers").rect.x > tablet.item("frame.row.view").rect.x + 300);
  CHECK(below(tablet, "frame.row.timbers", "frame.row.hardware"));
  CHECK(tablet.item("frame.bent").rect.w > 700);
  CHECK(below(tablet, "frame.bent", "frame.wall"));
}
