// Logs that were made up: times beyond all events, very many claims on one thing, and leaving such a log out.

#include <catch_amalgamated.hpp>
#include <string>

#include "hostile.h"
#include "random.h"
#include "shop/log/conflicts.h"
#include "shop/log/explained.h"
#include "shop/log/log_file.h"
#include "shop/log/snapshot.h"
#include "shop/log/writers.h"
#include "words/shop_words.h"

using namespace bentbook;

namespace {

Event tick(std::uint64_t device, std::uint64_t sequence, std::uint64_t logical) {
  Event e;
  e.device = device;
  e.sequence = sequence;
  e.logical = logical;
  e.action = EventAction::kDone;
  e.who = "Ana";
  e.timber = "P-A1";
  e.step = "slot/a";
  return e;
}

}  // namespace

TEST_CASE("a time that no events explain is refused, and what is done after it is not lost", "[shop][hostile]") {
  Log log{"b1", {tick(1, 1, 1), tick(1, 2, 2), tick(2, 1, kLastTime)}};
  const auto read = read_log(write_log(log));
  REQUIRE_FALSE(read);
  CHECK(read.error().where == "event.explained");
  CHECK(read.error().limit == 4);
  const LogScan scan = scan_log(write_log(log));
  REQUIRE(scan.troubles.size() == 1);
  CHECK(scan.log.events.size() == 2);
  CHECK(log_trouble_text(scan.troubles[0], Voice{Language::kEn, {}, Marks::kScreen}).starts_with("Line 4: "));
  // A number as far off is none better.
  log.events.back() = tick(2, kLastTime, kLastTime);
  CHECK_FALSE(read_log(write_log(log)));
}

TEST_CASE("whatever a log of good numbers claims, ticks and merges go on for ever", "[shop][hostile]") {
  // Every device jumps as far as it is let.
  Log log{"b1", {}};
  Explained explained;
  for (std::uint64_t i = 0; i < 3000; ++i) {
    Event far = tick(7 + i, kMostEvents, 0);
    std::uint64_t good = kMostEvents, bad = kLastTime;
    while (bad - good > 1) {
      const std::uint64_t middle = (good + bad) / 2;
      far.logical = middle;
      Explained tried = explained;
      (tried.take(far) ? good : bad) = middle;
      if (i > 10) break;  // the search is slow; from here on in even steps
    }
    far.logical = i > 10 ? log.events.back().logical + kMostEvents / 2 : good;
    REQUIRE(explained.take(far));
    log.events.push_back(far);
  }
  for (int i = 0; i < 20; ++i) {
    const auto own = next_event(log, 3, tick(3, 0, 0));
    REQUIRE(own);
    add_event(log, *own);
    REQUIRE(read_log(write_log(log)));
  }
  CHECK(log.events.back().logical < kLastTime / 1000);
}

TEST_CASE("very many claims on one thing are one conflict, its sides counted and the first named", "[shop][hostile]") {
  constexpr std::uint64_t kCount = 5000;
  for (const hostile::Kind& kind : hostile::kinds()) {
    const Log log = hostile::log_of(kind, kCount);
    INFO(kind.name << (kind.many_devices ? " by many" : " by one"));
    REQUIRE(read_log(write_log(log)).value() == log);
    const ShopState state = fold(log);
    ShopState one_by_one;
    for (const Event& e : log.events) apply(one_by_one, e);
    REQUIRE(state == one_by_one);
    const std::vector<Conflict> conflicts = conflicts_of(state);
    CHECK(conflicts.size() <= 2);
    for (const Conflict& c : conflicts) {
      CHECK(c.sides >= 2);
      CHECK(c.who.size() <= kNamedSides);
      CHECK(conflict_text(c, Voice{Language::kEn, {}, Marks::kScreen}).size() < 400);
    }
    if (kind.action == EventAction::kDone && kind.many_devices) {
      REQUIRE(conflicts.size() == 1);
      CHECK(conflicts[0].sides == kCount);
      CHECK(conflicts[0].who == std::vector<std::string>(kNamedSides, "Mallet"));
    }
  }
}

TEST_CASE("many events of all kinds on one step fold together as one by one", "[shop][hostile]") {
  constexpr EventAction kActions[] = {EventAction::kDone,     EventAction::kPassed,   EventAction::kNoted,
                                      EventAction::kHeld,     EventAction::kPlate,    EventAction::kMeasured,
                                      EventAction::kReleased, EventAction::kTakenBack};
  Random random(77);
  for (int round = 0; round < 200; ++round) {
    Log log{"b1", {}};
    const auto devices = static_cast<std::uint64_t>(random.whole(1, 300));
    for (std::uint64_t i = 0; i < 500; ++i) {
      // Numbers are used again now and then: ids stand twice.
      Event e = tick(static_cast<std::uint64_t>(random.whole(1, static_cast<std::int64_t>(devices))),
                     static_cast<std::uint64_t>(random.whole(1, 40)), i + 1);
      e.action = kActions[random.whole(0, 7)];
      e.value = "v";
      if (e.action == EventAction::kMeasured)
        e.value = reading_text({{100 + random.whole(0, 2)}, {100}, {1}});
      else if (e.action == EventAction::kReleased || e.action == EventAction::kTakenBack)
        e.value = id_text(log.events.empty() ? EventId{1, 1}
                                             : log.events[static_cast<std::size_t>(random.whole(
                                                              0, static_cast<std::int64_t>(log.events.size()) - 1))]
                                                   .id());
      log.events.push_back(e);
    }
    ShopState one_by_one;
    for (const Event& e : log.events) apply(one_by_one, e);
    INFO(round);
    REQUIRE(fold(log) == one_by_one);
    // A first part, then the rest.
    const auto part = static_cast<std::size_t>(random.whole(0, 500));
    ShopState parts;
    apply_all(parts, std::span(log.events).first(part));
    apply_all(parts, std::span(log.events).subspan(part));
    REQUIRE(parts == one_by_one);
  }
}

TEST_CASE("numbers used twice and events missing of very many devices are a conflict each", "[shop][hostile]") {
  Log log{"b1", {}};
  for (std::uint64_t i = 0; i < 4000; ++i) log.events.push_back(tick(1 + i % 2000, 2, i + 2));
  const std::vector<Conflict> conflicts = conflicts_of(fold(log));
  REQUIRE(conflicts.size() == 3);
  CHECK(conflicts[1].kind == ConflictKind::kNumberTwice);
  CHECK(conflicts[1].sides == 2000);
  CHECK(conflicts[2].kind == ConflictKind::kEventsMissing);
  CHECK(conflicts[2].sides == 2000);
}

TEST_CASE("one name's events are left out and the others stay", "[shop][hostile]") {
  Log log = hostile::log_of({"done", EventAction::kDone, true}, 300);
  log.events.push_back(tick(3, 1, 301));
  const std::vector<Writer> writers = writers_of(log);
  REQUIRE(writers.size() == 2);
  const Writer& hurts = writers[0];
  CHECK(hurts.who == "Mallet");
  CHECK(hurts.events == 300);
  CHECK(hurts.devices.size() == 300);
  CHECK(hurts.to == 1'764'000'000'000);
  const Devices left_out(hurts.devices.begin(), hurts.devices.end());
  const Log rest = without(log, left_out);
  REQUIRE(rest.events.size() == 1);
  CHECK(rest.events[0].who == "Ana");
  CHECK(conflicts_of(fold(rest)).empty());
  CHECK(read_left_out(write_left_out(left_out)).value() == left_out);
  std::string cut = write_left_out(left_out);
  cut.resize(cut.size() / 2);
  CHECK_FALSE(read_left_out(cut));
}
