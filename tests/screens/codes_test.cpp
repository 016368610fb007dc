// The log from screen to camera: only what the other phone lacks, in pieces that nothing throws away.
#include <catch_amalgamated.hpp>
#include <memory>

#include "bed.h"
#include "hostile.h"
#include "shop/log/chunk.h"
#include "shop/log/log_file.h"

using namespace bentbook;
using namespace bentbook::screens;

namespace {

struct CodesBed : Bed {
  CodesBed() { tap("place.shop"); }
  void to_post() {
    press("place.shop");
    press("place.shop");
    tap("shop.all");
    tap("shop.timber.P-A1");
  }
  void to_pass() {
    press("place.shop");
    press("place.shop");
    press("shop.pass");
  }
  void tick() {
    to_post();
    hold_by_name("shop.next.tick");
  }
  void scan(const std::string& text) {
    app.on({EventKind::kScanned, "scan", text, 0});
    rest();
  }
  /// The codes of what was shared last, which are those that the page of codes shows.
  [[nodiscard]] std::vector<std::string> pieces() const { return *make_chunks(platform.shared_bytes); }
  [[nodiscard]] std::size_t events() const {
    std::size_t n = 0;
    for (const auto& a : platform.on_disk) n += a.records.size();
    return n;
  }
};

std::string one_of(const std::vector<std::string>& pieces) { return "Code 1 of " + std::to_string(pieces.size()); }

}  // namespace

TEST_CASE("with two cameras and no file a phone gets what it lacks, and only that", "[screens][shop]") {
  CodesBed one, two;
  two.platform.randoms = 0x77;
  one.tick();
  one.to_pass();
  one.press("pass.share");
  two.to_pass();
  for (const std::string& piece : one.pieces()) two.scan(piece);
  two.tap("receive.take");
  REQUIRE(two.events() == 1);
  one.tick();
  one.tick();

  // The second one shows what it has; the first one reads that and shows the rest.
  two.to_pass();
  two.press("pass.seen");
  two.tap("pass.seen_codes");
  const auto seen = two.pieces();
  CHECK(two.item("codes.count").name == one_of(seen));
  one.to_pass();
  one.tap("pass.scan");
  for (const std::string& piece : seen) one.scan(piece);
  CHECK(one.value("receive.lacks") == "2");
  one.press("receive.send");
  const auto rest = one.pieces();
  REQUIRE(read_log(one.platform.shared_bytes)->events.size() == 2);
  one.tap("receive.codes");
  CHECK(one.item("codes.count").name == one_of(rest));
  two.press("bar.back");
  two.tap("pass.scan");
  for (const std::string& piece : rest) two.scan(piece);
  two.tap("receive.take");
  CHECK(two.events() == 3);
}

TEST_CASE("a tick at the sender and a stray code at the receiver cost no piece", "[screens][shop]") {
  CodesBed one, two;
  for (int i = 0; i < 8; ++i) one.tick();
  one.to_pass();
  one.press("pass.share");
  const auto pieces = one.pieces();
  REQUIRE(pieces.size() > 1);
  one.tap("pass.codes");
  CHECK(one.item("codes.count").name == one_of(pieces));
  CHECK_FALSE(one.shows("codes.newer"));

  two.to_pass();
  two.tap("pass.scan");
  for (std::size_t i = 1; i < pieces.size(); ++i) two.scan(pieces[i]);
  const std::string got = two.item("pass.pieces").name;
  for (const std::string& stray : {label_text({"demo", "P-A2"}), std::string("https://example.org/"), std::string{}})
    two.scan(stray);
  CHECK(two.platform.scanning);
  CHECK(two.item("pass.pieces").name == got);
  // Another phone's codes come by.
  two.scan(make_chunks(std::string(900, 'x'))->front());
  // The camera is put away and taken up again.
  two.app.on({EventKind::kScanEnded, "scan", "", 0});
  two.rest();
  two.press("place.angles");
  two.to_pass();
  two.tap("pass.scan");
  two.scan(pieces[0]);
  two.tap("receive.take");
  CHECK(two.events() == 8);
}

TEST_CASE("codes are read on where the phone ended the app", "[screens][shop]") {
  CodesBed one;
  for (int i = 0; i < 8; ++i) one.tick();
  one.to_pass();
  one.press("pass.share");
  const auto pieces = one.pieces();
  REQUIRE(pieces.size() > 2);

  FakePlatform disk;
  const auto start = [&](CodesBed& phone) {
    phone.platform.saves = disk.saves;
    phone.app.load(phone.platform.stored("kit"), phone.platform.stored("places"));
    phone.rest();
    phone.to_pass();
  };
  const auto first = std::make_unique<CodesBed>();
  first->to_pass();
  first->tap("pass.scan");
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    first->scan(pieces[i]);
    first->frame(4000);
  }
  const std::string got = first->item("pass.pieces").name;
  disk.saves = first->platform.saves;

  const auto second = std::make_unique<CodesBed>();
  start(*second);
  CHECK(second->item("pass.pieces").name == got);
  second->tap("pass.scan");
  second->scan(pieces[0]);
  REQUIRE(second->shows("receive.take"));
  second->app.on({EventKind::kScanEnded, "scan", "", 0});
  second->rest();
  disk.saves = second->platform.saves;

  // Ended before the whole was taken, it is looked at again.
  const auto third = std::make_unique<CodesBed>();
  start(*third);
  REQUIRE(third->shows("receive.take"));
  third->tap("receive.take");
  CHECK(third->events() == 8);
  CHECK(third->platform.stored("pieces").empty());
}

TEST_CASE("a log of very many entries says how long its codes take, and offers the file first", "[screens][shop]") {
  CodesBed bed;
  Log log{std::string("demo"), {}};
  log.events.reserve(5001);
  for (std::uint64_t i = 1; i <= 5001; ++i) {
    Event e;
    e.device = 0x99;
    e.sequence = i;
    e.logical = i;
    e.wall = 1'700'000'000'000;
    e.who = "Ana";
    e.timber = "P-A1";
    e.step = "label";
    log.events.push_back(e);
  }
  bed.app.on({EventKind::kFileOpened, "log.txt", write_log(log), 0});
  bed.rest();
  bed.tap("receive.take");
  bed.to_pass();
  bed.press("pass.codes");
  CHECK_FALSE(bed.shows("codes.code"));
  CHECK(bed.item("codes.many").name.find("file") != std::string::npos);
  bed.tap("codes.file");
  CHECK(read_log(bed.platform.shared_bytes)->events.size() == 5001);
  if (bed.shows("codes.begin")) {
    bed.tap("codes.begin");
    CHECK(bed.shows("codes.code"));
  }
}

TEST_CASE("very many claims of every kind come in by code, and a tick works after each", "[screens][shop]") {
  CodesBed phone;
  std::size_t ticks = 0, taken = 0;
  for (const hostile::Kind& kind : hostile::kinds()) {
    INFO(kind.name << (kind.many_devices ? " by many" : " by one"));
    Log log = hostile::log_of(kind, 300);
    log.book = "demo";
    // Each kind's own devices, or the second kind's events would be unlike ones under the first one's numbers.
    for (Event& e : log.events) e.device += 1'000'000'007 * (taken + 1);
    phone.to_pass();
    phone.tap("pass.scan");
    const auto pieces = make_chunks(write_log(log), kMostChunkBytes);
    for (const std::string& piece : *pieces) phone.scan(piece);
    phone.tap("receive.take");
    taken += log.events.size();
    REQUIRE(phone.events() == taken + ticks);
    phone.to_post();
    if (phone.shows("shop.next.tick")) {
      phone.hold_by_name("shop.next.tick");
      ++ticks;
    }
    REQUIRE(phone.events() == taken + ticks);
  }
  CHECK(ticks > 3);
}
