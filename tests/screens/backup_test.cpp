// A lost or new phone: a copy of everything made on one, taken in on another, by finger; what is stored, and what is
// not.
#include "book/backup/backup.h"

#include <catch_amalgamated.hpp>

#include "bed.h"
#include "book/book_file.h"
#include "book/book_shelf.h"
#include "book/kit.h"
#include "shop/log/log_file.h"
#include "words/strings.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct BackupBed : Bed {
  explicit BackupBed(float width = 390, float height = 844) : Bed(width, height) {
    tap("place.frame");
    answer_saves();
  }
  std::size_t answered = 0;
  /// The disk has what was handed over; or, with a reason, it has not.
  void answer_saves(std::string_view why = {}) {
    for (; answered < platform.saves.size(); ++answered) {
      const auto s = platform.saves[answered];
      app.on({why.empty() ? EventKind::kSaved : EventKind::kSaveFailed, s.key, std::string(why), s.revision});
    }
    rest();
  }
  void open_books() {
    tap("place.frame");
    if (shows("bar.back")) tap("place.frame");
    press("frame.row.books");
  }
  void make_frame(std::string_view title) {
    open_books();
    tap("books.new");
    tap("new.make");
    answer_saves();
    open_books();
    press("books." + shelf().open + ".edit");
    commit_text("book.title", title);
    answer_saves();
  }
  void tick() {
    tap("place.shop");
    tap("place.shop");
    press("shop.all");
    press("shop.timber.P-A1");
    hold_by_name("shop.next.tick");
    answer_saves();
  }
  void look_at_copy() {
    open_books();
    press("books.copy");
  }
  /// The copy that went out.
  std::string copy() {
    look_at_copy();
    tap("copy.share");
    app.on({EventKind::kShared, platform.shared.back(), {}, 0});
    answer_saves();
    return platform.shared_bytes;
  }
  void open_file(std::string_view bytes) {
    app.on({EventKind::kFileOpened, "copy.json", std::string(bytes), 0});
    rest();
  }
  void take(std::string_view bytes) {
    open_file(bytes);
    tap("take.all");
    while (answered < platform.saves.size()) answer_saves();
  }
  [[nodiscard]] Shelf shelf() const {
    const auto read = read_shelf(platform.stored("shelf"));
    REQUIRE(read);
    return *read;
  }
  [[nodiscard]] std::string bytes_of(std::string_view title) const {
    for (const ShelvedBook& book : shelf().books)
      if (book.title == title) return platform.stored(book.id);
    return {};
  }
  [[nodiscard]] std::vector<std::string> titles() const {
    std::vector<std::string> out;
    for (const ShelvedBook& book : shelf().books) out.push_back(book.title);
    return out;
  }
  [[nodiscard]] std::set<std::string> ticks() const {
    std::set<std::string> out;
    for (const auto& a : platform.on_disk)
      for (const LogRecord& r : a.records) out.insert(a.log + " " + r.bytes);
    return out;
  }
  [[nodiscard]] std::string note_of_copy() {
    open_books();
    see("books.copy");
    return item("books.copy").value;
  }
};

}  // namespace

TEST_CASE("a copy is made in two taps, and the row says when and what has changed since", "[screens][backup]") {
  BackupBed bed;
  CHECK(bed.note_of_copy() == "none yet");
  bed.make_frame("Barn");
  const std::string bytes = bed.copy();
  CHECK(bed.platform.shared.back() == "Bentbook 2023-11-14.json");
  CHECK(bed.item("toast").name.find("went out") != std::string::npos);
  CHECK(bed.note_of_copy() == "Last one 14 Nov");
  const auto backup = read_backup(bytes);
  REQUIRE(backup);
  CHECK(is_complete(*backup));
  CHECK(backup->books.size() == 2);
  CHECK(bytes.find("device") == std::string::npos);
  bed.tick();
  CHECK(bed.note_of_copy() == "Last one 14 Nov, 1 book since changed");
  const auto shelves = [&] {
    return std::count_if(bed.platform.saves.begin(), bed.platform.saves.end(),
                         [](const FakePlatform::Save& s) { return s.key == "shelf"; });
  };
  const auto before = shelves();
  bed.tick();
  CHECK(shelves() == before);  // noted once
}

TEST_CASE("what was called off or failed is no copy", "[screens][backup]") {
  BackupBed bed;
  bed.make_frame("Barn");
  for (const std::string_view why : {"cancelled", "other"}) {
    bed.look_at_copy();
    bed.tap("copy.share");
    bed.app.on({EventKind::kShared, bed.platform.shared.back(), std::string(why), 0});
    bed.rest();
    CHECK(bed.shows("toast") == (why == "other"));
    CHECK(bed.note_of_copy() == "none yet");
  }
}

TEST_CASE("a new phone takes everything in: equal books and logs, and only once", "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  old.tick();
  old.make_frame("Shed");
  old.tick();
  old.tick();
  REQUIRE(old.ticks().size() == 3);
  const std::string bytes = old.copy();
  fresh.platform.randoms = 0x500;  // another phone
  fresh.open_file(bytes);
  CHECK(fresh.value("take.made") == "14 Nov");
  CHECK_THAT(fresh.unsound(), Catch::Matchers::IsEmpty());
  fresh.take(bytes);
  CHECK(fresh.shows("toast"));
  CHECK(fresh.titles() == old.titles());
  for (const char* title : {"Barn", "Shed"}) {
    CHECK_FALSE(fresh.bytes_of(title).empty());
    CHECK(fresh.bytes_of(title) == old.bytes_of(title));
  }
  CHECK(fresh.ticks() == old.ticks());
  CHECK(fresh.platform.stored("device") != old.platform.stored("device"));

  const auto saves = fresh.platform.saves.size();
  fresh.open_file(bytes);
  CHECK(fresh.shows("take.nothing"));
  CHECK_FALSE(fresh.shows("take.all"));
  CHECK(fresh.platform.saves.size() == saves);
  // The book that came is opened and ticked on.
  fresh.open_books();
  fresh.press("books." + fresh.shelf().books[1].id);
  fresh.tick();
  CHECK(fresh.ticks().size() == 4);
}

TEST_CASE("a building that was worked on here too comes beside, with the day in its title", "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  const std::string first = old.copy();
  fresh.take(first);
  old.tap("place.frame");
  old.tap("frame.bent.span");
  old.tap_keypad({"digit.3", "digit.0", "done"});
  old.answer_saves();
  const std::string second = old.copy();
  fresh.open_file(second);
  CHECK(fresh.value("take.book.1") == "differs: comes beside yours");
  fresh.take(second);
  CHECK(fresh.titles().back() == "Barn (14 Nov)");
  CHECK(fresh.bytes_of("Barn (14 Nov)") == old.bytes_of("Barn"));
  fresh.open_file(second);
  CHECK(fresh.shows("take.nothing"));
}

TEST_CASE("a book that cannot be stored is said, tried again, and not on the shelf before", "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  old.tick();
  const std::string bytes = old.copy();
  fresh.open_file(bytes);
  fresh.tap("take.all");
  CHECK(fresh.shows("take.storing"));
  fresh.answer_saves("quota");
  CHECK(fresh.shows("notice.save_failed"));
  CHECK(fresh.platform.stored("shelf").find("Barn") == std::string::npos);
  fresh.tap("notice.save_again");
  while (fresh.answered < fresh.platform.saves.size()) fresh.answer_saves();
  while (fresh.shows("notice.save_failed")) {
    fresh.tap("notice.save_again");
    fresh.answer_saves();
  }
  CHECK(fresh.titles() == old.titles());
  CHECK(fresh.shows("take.nothing"));
}

TEST_CASE("a phone set back to an older copy takes another number for what it ticks on", "[screens][backup]") {
  BackupBed phone;
  phone.make_frame("Barn");
  phone.tick();
  const std::string first = phone.platform.stored("device"), bytes = phone.copy();
  BackupBed back;  // the same phone, its storage as it was before the tick
  back.platform.saves = phone.platform.saves;
  back.answered = back.platform.saves.size();
  back.app.load(back.platform.stored("kit"), back.platform.stored("places"));
  back.rest();
  back.tap("place.shop");
  REQUIRE(back.platform.stored("device") == first);
  back.take(bytes);
  CHECK(back.platform.stored("device") != first);
  CHECK(back.ticks() == phone.ticks());
}

TEST_CASE("a log is read whole for the copy while the shop opens it", "[screens][backup]") {
  BackupBed bed;
  bed.make_frame("Barn");
  bed.tick();
  bed.look_at_copy();
  bed.tap("place.shop");  // the shop looks at another building, and back
  bed.open_books();
  bed.press("books.book1");
  bed.tap("place.shop");
  const auto copy = read_backup(bed.copy());
  REQUIRE(copy);
  REQUIRE(copy->logs.size() == 1);
  CHECK(read_log(copy->logs[0].bytes)->events.size() == 1);
}

TEST_CASE("ticks that cannot be stored are said and tried again", "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  old.tick();
  const std::string bytes = old.copy();
  fresh.platform.slow_disk = true;
  fresh.open_file(bytes);
  fresh.tap("take.all");
  while (fresh.answered < fresh.platform.saves.size()) fresh.answer_saves();
  fresh.answer_appends("quota");
  fresh.rest();
  CHECK(fresh.shows("take.storing"));
  REQUIRE(fresh.shows("notice.tick_failed"));
  fresh.platform.slow_disk = false;
  fresh.tap("notice.tick_again");
  CHECK(fresh.ticks() == old.ticks());
  CHECK(fresh.shows("take.nothing"));
}

TEST_CASE("a damaged book is told by its name, the rest can be taken", "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  old.make_frame("Shed");
  std::string bytes = old.copy();
  const std::size_t at = bytes.find("\"title\":\"Barn\"");
  REQUIRE(at != std::string::npos);
  const std::size_t inside = bytes.find("\\\"species\\\"", at);
  REQUIRE(inside != std::string::npos);
  bytes[inside + 3] = 'S';
  fresh.open_file(bytes);
  CHECK(fresh.item("take.book.1").name.ends_with("Barn: damaged, left out"));
  fresh.take(bytes);
  CHECK(fresh.titles().back() == "Shed");
  CHECK(fresh.bytes_of("Barn").empty());
  fresh.open_file(bytes.substr(0, bytes.size() / 2));
  CHECK(fresh.shows("take.refused"));
}

TEST_CASE("saws and settings come along where nobody set any; else only when that is switched on",
          "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  Kit own = *read_kit(old.platform.stored("kit"));
  own.settings.glove = true;
  own.settings.theme = bentbook::Theme::kNight;
  const auto reopened = [](BackupBed& bed, const Kit& kit) {
    bed.app.load(write_kit(kit), bed.platform.stored("places"));
    bed.rest();
  };
  reopened(old, own);
  const std::string bytes = old.copy();
  fresh.take(bytes);
  Kit taken = *read_kit(fresh.platform.stored("kit"));
  CHECK(taken.settings.glove);
  CHECK(taken.settings.theme == bentbook::Theme::kFollow);

  taken.settings.glove = false;
  taken.settings.keep_awake = true;
  reopened(fresh, taken);
  fresh.open_file(bytes);
  REQUIRE(fresh.shows("take.nothing"));
  fresh.tap("take.with_kit");
  fresh.tap("take.all");
  fresh.answer_saves();
  taken = *read_kit(fresh.platform.stored("kit"));
  CHECK(taken.settings.glove);
  CHECK_FALSE(taken.settings.keep_awake);
  CHECK(taken.settings.theme == bentbook::Theme::kNight);
}

TEST_CASE("nothing is taken in while another window writes", "[screens][backup]") {
  BackupBed old, fresh;
  old.make_frame("Barn");
  const std::string bytes = old.copy();
  fresh.app.on({EventKind::kReadOnly, {}, {}, 1});
  fresh.open_file(bytes);
  const auto saves = fresh.platform.saves.size();
  CHECK_FALSE(fresh.item("take.all").enabled);
  fresh.press("take.all");
  CHECK(fresh.platform.saves.size() == saves);
}

TEST_CASE("a phone that may forget offers a copy, once", "[screens][backup]") {
  const auto [width, height] = GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{390, 844});
  BackupBed bed(width, height);
  bed.app.on({EventKind::kNotPersistent, {}, {}, 0});
  bed.open_books();
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  bed.tap("books.new");
  CHECK_FALSE(bed.shows("notice.not_persistent"));  // not while a book is made
  bed.tap("bar.back");
  bed.tap("notice.keep_copy");
  CHECK(bed.shows("copy.share"));
  bed.tap("bar.back");
  CHECK_FALSE(bed.shows("notice.not_persistent"));
}

TEST_CASE("the pages of a copy: every key stands once, has a name and is large enough for a finger",
          "[screens][backup]") {
  const std::string language(language_tag(static_cast<Language>(GENERATE(range<std::size_t>(0, kLanguageCount)))));
  const auto [width, height] = GENERATE(std::pair<float, float>{320, 568}, std::pair<float, float>{844, 390});
  CAPTURE(language, width, height);
  BackupBed bed(width, height);
  bed.speak(language, width, height);
  bed.open_books();
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  bed.press("books.copy");
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
  bed.press("copy.share");
  bed.open_file(bed.platform.shared_bytes);
  CHECK_THAT(bed.unsound(), Catch::Matchers::IsEmpty());
}
