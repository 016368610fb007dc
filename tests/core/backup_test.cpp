// Everything in one file: its form, its damage, and what it does to what lies here.

#include <algorithm>
#include <catch_amalgamated.hpp>
#include <cstdio>
#include <string>
#include <vector>

#include "book/backup/merge.h"
#include "book/book.h"
#include "book/book_file.h"
#include "book/demo.h"
#include "shop/log/log_file.h"

using namespace bentbook;

namespace {

constexpr std::int64_t kMade = 1'764'288'000'000;  // 28 Nov 2025

std::string book_bytes(std::string_view identity, std::string_view title, std::string_view notes = {}) {
  Book book;
  book.identity = identity;
  book.title = title;
  book.notes = notes;
  return write_book(book);
}

Log ticks(std::string_view identity, std::uint64_t device, int count) {
  Log log{std::string(identity), {}};
  for (int i = 0; i < count; ++i) {
    Event e;
    e.wall = kMade;
    e.who = "Ana";
    e.timber = "P-A1";
    e.step = "slot/a";
    add_event(log, *next_event(log, device, e));
  }
  return log;
}

BackupBook shelved(std::string_view identity, std::string_view title, std::string bytes) {
  return {std::string(title), std::string(identity), kMade, 0, 0, std::move(bytes), {}};
}

/// A phone: what lies on it, as a backup of it, and its shelf.
struct Phone {
  Shelf shelf;
  Backup all;
  void put(BackupBook book) {
    ShelvedBook on_shelf;
    on_shelf.title = book.title;
    on_shelf.identity = book.identity;
    on_shelf.changed_at = book.changed_at;
    on_shelf.deleted_at = book.deleted_at;
    on_shelf.days_seen = book.days_seen;
    shelf = with_shelved(std::move(shelf), on_shelf);
    book.title = shelf.books.back().title;
    all.books.push_back(std::move(book));
  }
  [[nodiscard]] Backup backup() const {
    Backup out = all;
    out.made_at = kMade;
    return sealed(std::move(out));
  }
  /// Takes all of it in, as the desks do.
  Taking take(const Backup& file) {
    Taking taking = taking_of(file, backup(), shelf, "28 Nov");
    for (const Taking::Fresh& fresh : taking.fresh)
      put({fresh.book.title,
           fresh.book.identity,
           fresh.book.changed_at,
           fresh.book.deleted_at,
           fresh.book.days_seen,
           fresh.bytes,
           {}});
    for (const ComingLog& log : taking.logs) {
      if (log.fresh.empty()) continue;
      Log own{log.identity, {}};
      for (const BackupLog& one : all.logs)
        if (one.identity == log.identity) own = *read_log(one.bytes);
      std::erase_if(all.logs, [&](const BackupLog& one) { return one.identity == log.identity; });
      all.logs.push_back({log.identity, write_log(*merged(own, {log.identity, log.fresh})), {}});
    }
    return taking;
  }
  [[nodiscard]] std::vector<std::string> titles() const {
    std::vector<std::string> out;
    for (const ShelvedBook& book : shelf.books) out.push_back(book.title);
    return out;
  }
};

Phone small_phone() {
  Phone phone;
  phone.put(shelved("barn1", "Barn", book_bytes("barn1", "Barn")));
  phone.put(shelved("shed1", "Shed", book_bytes("shed1", "Shed")));
  phone.all.logs.push_back({"barn1", write_log(ticks("barn1", 7, 2)), {}});
  phone.all.kit.bytes = write_kit(first_kit());
  return phone;
}

std::vector<Coming> comings(const Taking& taking) {
  std::vector<Coming> out;
  for (const ComingBook& book : taking.books) out.push_back(book.coming);
  return out;
}

bool nothing_happens(const Taking& taking) {
  return taking.fresh.empty() && taking.fresh_events() == 0 && taking.kit == ComingPart::kNothing &&
         taking.places == ComingPart::kNothing;
}

}  // namespace

TEST_CASE("a backup comes back byte for byte, and its file does not change by being read", "[backup]") {
  Phone phone = small_phone();
  phone.put(shelved("", "Not text", std::string("\xff\x00{", 3)));
  phone.put(shelved("later1", "Later", R"({"file":"book","version":2,"identity":"later1","stories":3})"));
  const Backup made = phone.backup();
  const std::string bytes = write_backup(made);
  CHECK(is_backup_file(bytes));
  auto read = read_backup(bytes);
  REQUIRE(read);
  CHECK(write_backup(*read) == bytes);
  read->kept.clear();
  CHECK(*read == made);
  CHECK(is_complete(*read));
  for (const BackupBook& book : read->books) CHECK(is_whole(book));
}

TEST_CASE("of a name that stands twice in a backup the first is read, and written again as read", "[backup]") {
  // What the second one holds would stand beside the first one's bytes.
  const std::string bytes = R"({"file":"backup","version":1,"logs":[{"identity":"barn1","bytes":"a log"}],)"
                            R"("logs":[{"hex":"ff"}]})";
  const auto read = read_backup(bytes);
  REQUIRE(read);
  CHECK(read->logs.at(0).bytes == "a log");
  const auto again = read_backup(write_backup(*read));
  REQUIRE(again);
  CHECK(again->logs == read->logs);
}

TEST_CASE("a backup written by another program by README.md is whole", "[backup]") {
  // Its checksums are zlib's, by a script of a few lines.
  std::FILE* file = std::fopen("tests/corpus/backup/two.json", "rb");
  REQUIRE(file != nullptr);
  std::string bytes(10'000, '\0');
  bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file));
  std::fclose(file);
  const auto read = read_backup(bytes);
  REQUIRE(read);
  CHECK(write_backup(*read) == bytes);
  const Taking taking = taking_of(*read, Phone{}.backup(), {}, "28 Nov");
  CHECK(taking.complete);
  CHECK(comings(taking) == std::vector{Coming::kNew, Coming::kNew});
  CHECK(taking.fresh_events() == 1);
  CHECK(taking.kit == ComingPart::kTaken);
}

TEST_CASE("members that this edition does not know stay in the file", "[backup]") {
  std::string bytes = write_backup(small_phone().backup());
  bytes.insert(bytes.find("\"made_at\""), "\"photos\":[1],");
  bytes.insert(bytes.find("\"title\":\"Shed\""), "\"colour\":\"red\",");
  const auto read = read_backup(bytes);
  REQUIRE(read);
  CHECK(is_complete(*read));
  const std::string again = write_backup(*read);
  CHECK(again.find("\"photos\":[1]") != std::string::npos);
  CHECK(again.find("\"colour\":\"red\"") != std::string::npos);
  CHECK(write_backup(*read_backup(again)) == again);
}

TEST_CASE("a newer backup is refused, an identity that would be no key too", "[backup]") {
  const std::string good = write_backup(small_phone().backup());
  std::string bytes = good;
  bytes.replace(bytes.find("\"version\":1"), 11, "\"version\":2");
  CHECK(read_backup(bytes).error().code == ErrorCode::kNewerVersion);
  bytes = good;
  bytes.replace(bytes.find("\"identity\":\"shed1\""), 18, "\"identity\":\"../d1\"");
  CHECK(read_backup(bytes).error().where == "books.1.identity");
  CHECK(read_backup("").error().where == "backup");
}

TEST_CASE("a byte changed anywhere is refused or told, or changes nothing that the file says", "[backup]") {
  Phone phone;
  phone.put(shelved("barn1", "Barn", R"({"file":"book","version":1,"identity":"barn1","title":"Barn"})"));
  phone.put(shelved("", "Ö", std::string("\xff\xfe", 2)));
  phone.all.logs.push_back({"barn1", write_log(ticks("barn1", 7, 1)), {}});
  const Backup made = phone.backup();
  const std::string bytes = write_backup(made);
  int told = 0, refused = 0;
  for (std::size_t i = 0; i < bytes.size(); ++i)
    for (const int flip : {1, 0x20, 0x80}) {
      std::string changed = bytes;
      changed[i] = static_cast<char>(changed[i] ^ flip);
      INFO(i << " " << changed.substr(i < 10 ? 0 : i - 10, 20));
      auto read = read_backup(changed);
      if (!read) {
        ++refused;
        continue;
      }
      const Taking taking = taking_of(*read, Phone{}.backup(), {}, "28 Nov");
      bool said = !taking.complete || taking.kit == ComingPart::kDamaged || taking.places == ComingPart::kDamaged;
      for (const ComingBook& book : taking.books) said = said || book.coming == Coming::kDamaged;
      for (const ComingLog& log : taking.logs) said = said || log.damaged;
      // The name of a member that says nothing ("days_seen": 0) became another one's, or the case of an escape changed.
      read->kept.clear();
      CHECK((said || *read == made));
      told += said ? 1 : 0;
    }
  CHECK(told > 100);
  CHECK(refused > 100);
}

TEST_CASE("a damaged book is told by its name; the other one is taken", "[backup]") {
  Backup file = small_phone().backup();
  file.books[0].bytes[40] ^= 1;
  Phone fresh;
  const Taking taking = fresh.take(file);
  CHECK(comings(taking) == std::vector{Coming::kDamaged, Coming::kNew});
  CHECK(taking.books[0].title == "Barn");
  CHECK(fresh.titles() == std::vector<std::string>{"Shed"});
  CHECK(taking.fresh_events() == 2);
}

TEST_CASE("of a damaged log the lines that are whole are taken, and it is told", "[backup]") {
  Backup file = small_phone().backup();
  REQUIRE(file.logs.size() == 1);
  const Log whole = *read_log(file.logs[0].bytes);
  REQUIRE(whole.events.size() == 2);
  for (std::size_t at = 0; at < file.logs[0].bytes.size(); ++at) {
    Backup damaged = file;
    damaged.logs[0].bytes[at] ^= 1;
    INFO(at);
    Phone fresh;
    const Taking taking = fresh.take(damaged);
    CHECK(taking.logs[0].damaged);
    for (const Event& e : taking.logs[0].fresh) CHECK(std::count(whole.events.begin(), whole.events.end(), e) == 1);
    // A damaged line costs itself, a damaged end of it the next one too; the first line says whose log it is.
    const std::size_t most = file.logs[0].bytes[at] == '\n' ? 2 : 1;
    if (at > file.logs[0].bytes.find('\n')) CHECK(taking.logs[0].fresh.size() + most >= whole.events.size());
  }
}

TEST_CASE("parts taken out of the file are missed", "[backup]") {
  Backup file = small_phone().backup();
  file.books.pop_back();
  CHECK_FALSE(taking_of(file, Phone{}.backup(), {}, "28 Nov").complete);
}

TEST_CASE("a fresh phone gets everything, and a second time nothing more", "[backup]") {
  Phone old = small_phone(), fresh;
  const Taking taking = fresh.take(old.backup());
  CHECK(comings(taking) == std::vector{Coming::kNew, Coming::kNew});
  CHECK(fresh.titles() == old.titles());
  CHECK(fresh.all.books[0].bytes == old.all.books[0].bytes);
  CHECK(fresh.all.logs == old.all.logs);
  CHECK(nothing_happens(fresh.take(old.backup())));
}

TEST_CASE("what a backup does to a book, by what lies here", "[backup]") {
  struct Row {
    std::string_view name;
    bool here, unlike, here_deleted, there_deleted;
    Coming wanted;
  };
  constexpr Row kRows[] = {
      {"not here", false, false, false, false, Coming::kNew},
      {"not here, deleted there", false, false, false, true, Coming::kNew},
      {"the same", true, false, false, false, Coming::kSame},
      {"the same, deleted here", true, false, true, false, Coming::kBinned},
      {"the same, deleted there", true, false, false, true, Coming::kSame},
      {"the same, deleted on both", true, false, true, true, Coming::kSame},
      {"unlike", true, true, false, false, Coming::kBeside},
      {"unlike, deleted here", true, true, true, false, Coming::kBeside},
      {"unlike, deleted there", true, true, false, true, Coming::kStays},
  };
  for (const Row& row : kRows) {
    INFO(row.name);
    Phone there, here;
    there.put(shelved("barn1", "Barn", book_bytes("barn1", "Barn", "oak")));
    if (row.there_deleted) {
      there.all.books[0].deleted_at = there.shelf.books[0].deleted_at = kMade;
      there.all.books[0].days_seen = 3;
    }
    if (row.here) {
      here.put(shelved("barn1", "Barn", book_bytes("barn1", "Barn", row.unlike ? "pine" : "oak")));
      if (row.here_deleted) here.shelf.books[0].deleted_at = kMade;
    }
    const auto before = here.all.books;
    const Taking taking = here.take(there.backup());
    CHECK(comings(taking) == std::vector{row.wanted});
    // What was here is here still.
    for (std::size_t i = 0; i < before.size(); ++i) CHECK(here.all.books[i] == before[i]);
    const bool comes = row.wanted == Coming::kNew || row.wanted == Coming::kBeside;
    REQUIRE(here.all.books.size() == before.size() + (comes ? 1 : 0));
    if (row.wanted == Coming::kBeside) CHECK(here.titles().back() == "Barn (28 Nov)");
    if (row.there_deleted && comes) {
      CHECK(here.shelf.books.back().deleted_at == kMade);
      CHECK(here.shelf.books.back().days_seen == 3);
    }
    CHECK(nothing_happens(here.take(there.backup())));
  }
}

TEST_CASE("another building of the same name gets a number, the same building of another name stays", "[backup]") {
  Phone there, here;
  there.put(shelved("barn1", "Barn", book_bytes("barn1", "Barn")));
  there.put(shelved("shed1", "Shed", book_bytes("shed1", "Shed")));
  here.put(shelved("other", "Barn", book_bytes("other", "Barn")));
  here.put(shelved("shed1", "Wood shed", book_bytes("shed1", "Wood shed")));
  CHECK(comings(here.take(there.backup())) == std::vector{Coming::kNew, Coming::kSame});
  CHECK(here.titles() == std::vector<std::string>{"Barn", "Wood shed", "Barn 2"});
  CHECK(nothing_happens(here.take(there.backup())));
}

TEST_CASE("a book that was never opened has no name: it is known again when it got one here", "[backup]") {
  Phone there, here;
  there.put(shelved("", "Barn", book_bytes("", "Barn")));
  here.put(shelved("fresh1", "Barn", book_bytes("fresh1", "Barn")));
  CHECK(comings(here.take(there.backup())) == std::vector{Coming::kSame});
}

TEST_CASE("a book of a newer version comes byte for byte, and that it is not read is told", "[backup]") {
  Phone there, here;
  const std::string newer = R"({"file":"book","version":2,"identity":"later1","stories":3})";
  there.put(shelved("later1", "Later", newer));
  const Taking taking = here.take(there.backup());
  CHECK(taking.books[0].unreadable == ErrorCode::kNewerVersion);
  CHECK(here.all.books[0].bytes == newer);
  CHECK(here.shelf.books[0].identity == "later1");
  CHECK(nothing_happens(here.take(there.backup())));
}

TEST_CASE("logs become their union; another building's log under a book's name is refused", "[backup]") {
  Phone there = small_phone(), here = small_phone();
  here.all.logs = {{"barn1", write_log(ticks("barn1", 9, 3)), {}}};
  CHECK(here.take(there.backup()).fresh_events() == 2);
  CHECK(read_log(here.all.logs[0].bytes)->events.size() == 5);
  CHECK(nothing_happens(here.take(there.backup())));
  there.all.logs = {{"barn1", write_log(ticks("shed1", 7, 1)), {}}};
  const Taking taking = here.take(there.backup());
  CHECK(taking.logs[0].damaged);
  CHECK(taking.fresh_events() == 0);
}

TEST_CASE("kit and last entries are taken where they are as the app came, else only if that is wanted", "[backup]") {
  Kit own = first_kit();
  own.settings.who = "Ana";
  own.settings.theme = Theme::kNight;
  own.settings.language = "es";
  own.settings.caution_seen = true;
  Phone there;
  there.all.kit.bytes = write_kit(own);
  Places entered = demo_places();
  entered.rafter.span = Length::feet(30);
  there.all.places.bytes = write_places(entered);
  const Backup file = there.backup();

  Kit looks = first_kit();
  looks.settings.language = "fr-CA";
  looks.settings.theme = Theme::kSun;
  looks.settings.caution_seen = true;
  Phone fresh;
  fresh.all.kit.bytes = write_kit(looks);
  Taking taking = taking_of(file, fresh.backup(), {}, "28 Nov");
  CHECK(taking.kit == ComingPart::kTaken);
  CHECK(taking.places == ComingPart::kTaken);
  Kit next = taken_kit(looks, file, taking.kit, false);
  CHECK(next.settings.who == "Ana");
  CHECK(next.settings.language == "fr-CA");
  CHECK(next.settings.theme == Theme::kSun);
  CHECK(taken_places(demo_places(), file, taking.places, false).rafter.span == Length::feet(30));

  Kit mine = looks;
  mine.saws.pop_back();
  fresh.all.kit.bytes = write_kit(mine);
  taking = taking_of(file, fresh.backup(), {}, "28 Nov");
  CHECK(taking.kit == ComingPart::kAsked);
  CHECK(taken_kit(mine, file, taking.kit, false) == mine);
  next = taken_kit(mine, file, taking.kit, true);
  CHECK(next.saws.size() == 3);
  CHECK(next.settings.language == "es");
  CHECK(next.settings.theme == Theme::kNight);

  fresh.all.kit.bytes = file.kit.bytes;
  fresh.all.places.bytes = file.places.bytes;
  CHECK(nothing_happens(taking_of(file, fresh.backup(), {}, "28 Nov")));
}

TEST_CASE("a shelf knows when the last copy went out and what has changed since", "[backup]") {
  Shelf shelf = with_identity(with_book({}, "Barn", 1000), "book1", "barn1");
  shelf = with_book(std::move(shelf), "Shed", 1000);
  CHECK(write_shelf(shelf).find("copied_at") == std::string::npos);
  CHECK(with_changed(shelf, "book1", 1500) == shelf);  // no copy was made: nothing is noted
  shelf = with_copied(std::move(shelf), 2000);
  CHECK(changed_since_copy(shelf) == 0);
  shelf = with_changed(std::move(shelf), "book1", 3000);
  CHECK(changed_since_copy(shelf) == 1);
  CHECK(with_changed(shelf, "barn1", 4000) == shelf);    // told once
  shelf = with_changed(std::move(shelf), "book2", 500);  // by a clock that is behind
  CHECK(changed_since_copy(shelf) == 2);
  CHECK(changed_since_copy(with_deleted(shelf, "book2", 5000)) == 1);
  const auto again = read_shelf(write_shelf(shelf));
  REQUIRE(again);
  CHECK(again->copied_at == 2000);
  CHECK(changed_since_copy(with_copied(*again, 100)) == 0);
}

TEST_CASE("a title as long as a file may hold gets its day and its number and can still be read", "[backup]") {
  Phone there, here;
  const std::string title(400, 'x');
  there.put(shelved("barn1", title, book_bytes("barn1", title, "oak")));
  here.put(shelved("barn1", title, book_bytes("barn1", title)));
  here.take(there.backup());
  here.shelf = with_book(std::move(here.shelf), title, kMade);
  CHECK(read_shelf(write_shelf(here.shelf)));
}
