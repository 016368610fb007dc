// Books: their file, edits, the shelf.

#include "book/book_file.h"

#include <catch_amalgamated.hpp>
#include <cstdio>
#include <string>

#include "book/book.h"
#include "book/book_edit.h"
#include "book/book_shelf.h"
#include "book/history.h"
#include "frame/joints/joint_table.h"
#include "model/book_model.h"
#include "random.h"

using namespace bentbook;

namespace {

std::string with(std::string bytes, std::string_view what, std::string_view by) {
  const std::size_t at = bytes.find(what);
  REQUIRE(at != std::string::npos);
  return bytes.replace(at, what.size(), by);
}

/// From the project's root, where the suites run.
std::string corpus(const std::string& name) {
  std::FILE* file = std::fopen(("tests/corpus/book/" + name).c_str(), "rb");
  INFO(name);
  REQUIRE(file != nullptr);
  std::string bytes(100'000, '\0');
  bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file));
  std::fclose(file);
  return bytes;
}

Book full_book() {
  Book book = demo_book();
  book.title = "Casa \"de agua\" ½";
  book.lengths = {LengthForm::kMm, 64, 1};
  Override rough;
  rough.mark = "P-A1";
  rough.has_wood = true;
  rough.wood.bow = Length::inches(1, 4);
  rough.defects = {{DefectKind::kCheck, Face::kFar, Length::inches(10), Length::inches(14)}};
  rough.pier_level = Length::inches(-3, 2);
  book = with_override(book, rough);
  HandTimber hand;
  hand.mark = "X-1";
  hand.features = {
      {FeatureKind::kHole, Face::kNear, Length::feet(2), Length::inches(4), {}, {}, {}, Length::inches(1)}};
  book = with_added(book, hand);
  book = with_note(book, "P-A1", "check on the far face");
  book.frame.joints[static_cast<std::size_t>(Meeting::kCollarRafter)] = HalfLap{};
  book.frame.pitch_right = Slope::of_angle(Angle::from_degrees(39.8));
  return book;
}

}  // namespace

TEST_CASE("a book comes back as it was, and its file does not change by being read", "[book]") {
  for (const Book& book : {full_book(), demo_book(), Book{}}) {
    const std::string bytes = write_book(book);
    auto again = read_book(bytes);
    REQUIRE(again);
    CHECK(write_book(*again) == bytes);
    again->kept.clear();
    CHECK(*again == book);
  }
}

TEST_CASE("a raising taken back to nothing does not come back from what is kept", "[book]") {
  auto book = read_book(corpus("v1_raising.json"));
  REQUIRE(book);
  book->raising = {};
  const auto again = read_book(write_book(*book));
  REQUIRE(again);
  CHECK(again->raising == RaisingPlan{});
  CHECK(read_book(corpus("v1_demo.json"))->raising == RaisingPlan{});
}

TEST_CASE("members of a later edition stay with their timber, bay and joint", "[book]") {
  std::string bytes = write_book(full_book());
  bytes = with(bytes, "{\"file\"", "{\"later\":[1,{\"deep\":null}],\"file\"");
  bytes = with(bytes, "\"mark\":\"X-1\"", "\"seasoned\":true,\"mark\":\"X-1\"");
  bytes = with(bytes, "{\"width\":21945600000", "{\"floor\":\"brick\",\"width\":670560000");
  bytes = with(bytes, "\"collar_rafter\":{", "\"collar_rafter\":{\"dovetail\":12,");
  auto book = read_book(bytes);
  REQUIRE(book);
  // Another timber goes before, a bay is put in: what is kept follows its mark and label.
  HandTimber other;
  other.mark = "X-0";
  book->frame.added.insert(book->frame.added.begin(), other);
  const std::string again = write_book(with_bay(*book, -1, Length::feet(10)));
  CHECK(again.find("\"later\":[1,{\"deep\":null}]") != std::string::npos);
  CHECK(again.find("\"seasoned\":true") > again.find("\"mark\":\"X-1\""));
  CHECK(again.find("\"dovetail\":12") != std::string::npos);
  CHECK(again.find("\"label\":2,\"floor\":\"brick\"") != std::string::npos);
  const auto settled = read_book(again);
  REQUIRE(settled);
  CHECK(write_book(*settled) == again);
  // A joint of another type starts anew.
  Book changed = *book;
  changed.frame.joints[static_cast<std::size_t>(Meeting::kCollarRafter)] = HousedButt{};
  CHECK(write_book(changed).find("dovetail") == std::string::npos);
}

TEST_CASE("books of every version are read, and settle when they are saved", "[book]") {
  for (int version = 1; version <= kBookVersion; ++version) {
    for (const char* name : {"_demo.json", "_list.json", "_least.json"}) {
      const auto book = read_book(corpus("v" + std::to_string(version) + name));
      REQUIRE(book);
      const std::string saved = write_book(*book);
      const auto again = read_book(saved);
      REQUIRE(again);
      CHECK(write_book(*again) == saved);
      CHECK(*solve(*book).frame);
    }
  }
  CHECK(read_book(corpus("v1_list.json"))->timber_notes.at(0).mark == "P-A1");
  const Book raised = read_book(corpus("v1_raising.json")).value();
  CHECK(raised.raising.steps.at(0).marks == std::vector<std::string>{"P-A1", "P-E1", "T-1"});
  CHECK(raised.raising.temporaries.at(0).rated == Weight::pounds(500));
  CHECK(raised.raising.crane.chart.at(0).capacity == Weight::pounds(2000));
}

TEST_CASE("damage names its spot, a newer book is refused", "[book]") {
  const std::string good = write_book(full_book());
  CHECK(read_book(with(good, "\"version\":1", "\"version\":2")).error().code == ErrorCode::kNewerVersion);
  CHECK(read_book(with(good, "\"file\":\"book\"", "\"file\":\"kit\"")).error().where == "file");
  CHECK(read_book(with(good, "\"label\":3", "\"label\":\"three\"")).error().where == "frame.bays.1.label");
  CHECK(read_book(with(good, "\"type\":\"half_lap\"", "\"type\":\"glue\"")).error().where ==
        "frame.joints.sill_corner.type");
  CHECK(read_book(with(good, "\"moisture\":30.0", "\"moisture\":-4")).error().where == "frame.moisture");
  const auto cut = read_book(std::string_view(good).substr(0, good.size() / 2));
  CHECK(cut.error().code == ErrorCode::kSyntax);
  CHECK(cut.error().at >= 0);
  CHECK(read_book("").error().code == ErrorCode::kSyntax);
}

TEST_CASE("edits by mark: put in, changed, taken out, and nothing said takes the override away", "[book]") {
  Book book = demo_book();
  const Book before = book;
  Override gone;
  gone.mark = "K-C1";
  gone.removed = true;
  History<Book> history(book);
  history.commit(with_override(history.now(), gone));
  CHECK(override_of(history.now(), "K-C1").removed);
  gone.removed = false;
  CHECK(with_override(history.now(), gone) == before);
  history.undo();
  CHECK(history.now() == before);
  history.redo();
  CHECK(history.now().frame.overrides.size() == 1);
  CHECK(note_of(with_note(book, "P-A1", "x"), "P-A1") == "x");
  CHECK(with_note(with_note(book, "P-A1", "x"), "P-A1", "") == before);
  CHECK(with_joint(book, Meeting::kRafterPlate, Scarf{}) == before);
  CHECK(without_bay(with_bay(book, -1, Length::feet(9)), 0).frame.bays.size() == before.frame.bays.size());
}

TEST_CASE("solving again touches only what was edited", "[book]") {
  const Book book = demo_book();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  Book renamed = book;
  renamed.title = "Other";
  CHECK(solve_again(renamed, book, model).frame == model.frame);
  Book wider = book;
  wider.frame.span = Length::feet(16);
  const BookModel again = solve_again(wider, book, model);
  CHECK(again.frame != model.frame);
  CHECK(again.rafter == model.rafter);
}

TEST_CASE("a list without a plan holds its timbers alone", "[book]") {
  Book book = full_book();
  book.framed = false;
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  REQUIRE((*model.frame)->timbers.size() == 1);
  CHECK((*model.frame)->timbers[0].mark == "X-1");
  const auto sheet = sheet_of(book, model, "X-1");
  REQUIRE(sheet);
  CHECK(sheet->steps.size() == 3);
  CHECK(sheet_of(book, model, "P-A1").error().where == "mark");
}

TEST_CASE("every joint of a new book is one that its meeting can take", "[book]") {
  const Book book = demo_book();
  for (int i = 0; i < kMeetings; ++i)
    CHECK(fits(static_cast<Meeting>(i), kind_of(book.frame.joints[static_cast<std::size_t>(i)])));
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  for (const Finding& f : (*model.frame)->findings) CHECK(f.id == FindingId::kNotEngineered);
}

TEST_CASE("the shelf keeps what was deleted for thirty days", "[book]") {
  constexpr std::int64_t kDay = 24 * 60 * 60 * 1000;
  Shelf shelf = with_book({}, "Barn", 1000 * kDay);
  shelf = with_book(shelf, "Barn", 1001 * kDay);
  CHECK(shelf.books[1].title == "Barn 2");
  CHECK(shelf.open == shelf.books[1].id);
  const std::string id = shelf.books[0].id;
  shelf = with_deleted(shelf, id, 1002 * kDay);
  CHECK(overdue(seen_on(shelf, 9000 * kDay), 9000 * kDay).empty());  // a clock far ahead for once
  for (std::int64_t day = 1003; day <= 1032; ++day) {
    CHECK(overdue(shelf, 1032 * kDay + 1).empty());
    shelf = seen_on(seen_on(shelf, day * kDay), day * kDay + kDay / 2);  // twice on that day
  }
  CHECK(overdue(shelf, 1032 * kDay).empty());
  CHECK(overdue(shelf, 1032 * kDay + 1) == std::vector<std::string>{id});
  CHECK(overdue(shelf, 3 * kDay).empty());  // a clock set back
  const auto reread = read_shelf(write_shelf(with_restored(*read_shelf(write_shelf(shelf)), id)));
  CHECK(find_book(*reread, id)->days_seen == 0);
  CHECK(find_book(with_restored(shelf, id), id)->deleted_at == 0);
  auto again = read_shelf(write_shelf(shelf));
  REQUIRE(again);
  CHECK(write_shelf(*again) == write_shelf(shelf));
  shelf = without(shelf, {id});
  CHECK(find_book(shelf, id) == nullptr);
  shelf = with_book(shelf, "Barn", 0);
  CHECK(shelf.books.back().id != id);
}

namespace {

/// 200 identities that a book's file may bring: some that the app could have given, the others not.
std::vector<std::string> odd_identities() {
  std::vector<std::string> all = {"",
                                  "demo",
                                  "00000000000000b1b",
                                  "../../x",
                                  "..",
                                  ".",
                                  "/etc/passwd",
                                  "a/b",
                                  "shelf.json",
                                  "kit.shop",
                                  "Shelf",
                                  "KIT",
                                  " demo",
                                  "demo ",
                                  "a\nb",
                                  "a\tb",
                                  "\u202edemo",
                                  "d\u200bemo",
                                  "\xc3\xa9",
                                  "con:",
                                  "a\\b",
                                  std::string("demo\0", 5),
                                  std::string("\0", 1),
                                  std::string(64, 'a'),
                                  std::string(65, 'a'),
                                  std::string(100'000, 'a')};
  Random random(1201);
  while (all.size() < 200) {
    std::string text;
    for (std::int64_t n = random.whole(1, 20); n > 0; --n) text += static_cast<char>(random.whole(1, 126));
    all.push_back(std::move(text));
  }
  return all;
}

bool app_could_give(std::string_view identity) {
  return identity.size() <= 64 &&
         identity.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789") == std::string_view::npos;
}

}  // namespace

TEST_CASE("an identity that the app would not give is not taken, and named", "[book]") {
  for (const std::string& identity : odd_identities()) {
    Book book = demo_book();
    book.identity = identity;
    std::string refused;
    const auto read = read_book(write_book(book), &refused);
    INFO(identity);
    REQUIRE(read);
    const bool good = app_could_give(identity);
    CHECK(read->identity == (good ? identity : ""));
    CHECK(refused == (good ? "" : identity));
    // Written again it is gone for good.
    refused.clear();
    const std::string again = write_book(*read);
    const auto second = read_book(again, &refused);
    REQUIRE(second);
    CHECK(refused.empty());
    CHECK(second->identity == read->identity);
    CHECK(write_book(*second) == again);
  }
}

TEST_CASE("a shelf names its books' own values and no other key", "[book]") {
  Shelf shelf = with_book({}, "Barn", 1000);
  shelf = with_identity(shelf, shelf.open, "../../x");
  const auto read = read_shelf(write_shelf(shelf));
  REQUIRE(read);
  CHECK(read->books[0].identity.empty());
  CHECK(write_shelf(*read).find("../x") == std::string::npos);
  for (const char* id :
       {"kit", "shelf", "device", "../book1", "book", "book1.shop", "book-1", "", "book99999999999999999"}) {
    shelf.books[0].id = id;
    const auto wrong = read_shelf(write_shelf(shelf));
    INFO(id);
    REQUIRE_FALSE(wrong);
    CHECK(wrong.error().where == "books.0.name");
  }
  shelf = with_book(with_book({}, "Barn", 1000), "Shed", 1000);
  shelf.books[1].id = shelf.books[0].id;
  const auto twice = read_shelf(write_shelf(shelf));
  REQUIRE_FALSE(twice);
  CHECK(twice.error().code == ErrorCode::kConflict);
}
