// The crew's log: events, its file, merging, what one phone lacks.

#include <catch_amalgamated.hpp>

#include "histories.h"
#include "shop/log/conflicts.h"
#include "shop/log/log_file.h"
#include "shop/log/record.h"
#include "shop/log/seen.h"
#include "shop/log/state.h"

using namespace bentbook;

namespace {

Event done(std::string_view timber, std::string_view step) {
  Event e;
  e.wall = 1'764'000'000'000;
  e.who = "Ana";
  e.timber = timber;
  e.step = step;
  return e;
}

Event tick(Log& log, std::uint64_t device, Event event) {
  const auto next = next_event(log, device, std::move(event));
  REQUIRE(next);
  add_event(log, *next);
  return *next;
}

Log small_log() {
  Log log{"b1", {}};
  tick(log, 1, done("P-A1", "slot/a"));
  tick(log, 2, done("P-A1", "end_cut/b"));
  tick(log, 1, done("T-2", "label"));
  return log;
}

}  // namespace

TEST_CASE("logical time is one more than all that the phone has seen", "[shop]") {
  // Lamport, Time, clocks, and the ordering of events in a distributed system (1978): rules IR1 and IR2.
  Log a{"b1", {}}, b{"b1", {}};
  CHECK(tick(a, 1, done("P-A1", "slot/a")).logical == 1);
  CHECK(tick(a, 1, done("P-A1", "slot/b")).logical == 2);
  CHECK(tick(b, 2, done("P-A1", "label")).logical == 1);
  b = *merged(a, b);
  const Event next = tick(b, 2, done("T-2", "label"));
  CHECK(next.logical == 3);
  CHECK(next.sequence == 2);
}

TEST_CASE("an event that says nothing is refused by its member", "[shop]") {
  const auto refused = [](const Event& e) {
    const auto checked = check_event(e);
    return checked ? std::string{} : checked.error().where;
  };
  Event e = done("P-A1", "slot/a");
  e.sequence = e.logical = 1;
  CHECK(refused(e).empty());
  e.timber = "";
  CHECK(refused(e) == "timber");
  e = done("P-A1", "");
  CHECK(refused(e) == "step");
  e = done("P-A1", "slot/a");
  e.action = EventAction::kReleased;
  e.value = id_text({1, 2});
  CHECK(refused(e) == "note");  // a release wants its reason
  e.note = "planed and measured again";
  e.who = "";
  CHECK(refused(e) == "who");  // and a name
  e = done("P-A1", "slot/a");
  e.action = EventAction::kMeasured;
  e.value = "1 2";
  CHECK(refused(e) == "value");
  e = done("P-A1", "slot/a");
  e.note = std::string(kLongestEventNote + 1, 'x');
  CHECK(refused(e) == "note");
  e.note = "two\nlines";
  CHECK(refused(e) == "note");
}

TEST_CASE("a log's file comes back whole, and damaged it is refused by its line", "[shop]") {
  const Log log = small_log();
  const std::string bytes = write_log(log);
  CHECK(*read_log(bytes) == log);
  CHECK(*read_log(write_log({"", {}})) == Log{"", {}});

  std::string damaged = bytes;
  damaged[damaged.find("end_cut")] = 'E';
  const auto refused = read_log(damaged);
  REQUIRE(!refused);
  CHECK(refused.error().limit == 3);
  CHECK(refused.error().where == "event");
  const LogScan scan = scan_log(damaged);
  CHECK(scan.log.events.size() == 2);
  REQUIRE(!scan.troubles.empty());
  CHECK(scan.troubles[0].line == 3);

  // Cut anywhere it is refused: nothing is half taken.
  for (std::size_t n = 0; n < bytes.size(); ++n) CHECK(!read_log(std::string_view(bytes).substr(0, n)));
  // A line less, each line whole.
  std::string shorter = bytes;
  shorter.erase(bytes.find("e\t"), bytes.find('\n', bytes.find("e\t")) + 1 - bytes.find("e\t"));
  CHECK(!read_log(shorter));
  std::string newer = bytes;
  newer.replace(newer.find("log 1"), 5, "log 2");
  CHECK(read_log(newer).error().code == ErrorCode::kNewerVersion);
  CHECK(read_log("").error().code == ErrorCode::kSyntax);
  CHECK(read_log(bytes + "x").error().code == ErrorCode::kSyntax);
}

TEST_CASE("any byte changed is found", "[shop]") {
  // A CRC finds every burst of up to its own width (ITU-T V.42; Peterson and Brown, Cyclic codes for error detection,
  // 1961).
  const std::string bytes = write_log(small_log());
  for (std::size_t i = 0; i < bytes.size(); ++i)
    for (const int flip : {1, 0x20, 0x80}) {
      std::string changed = bytes;
      changed[i] = static_cast<char>(changed[i] ^ flip);
      CHECK(!read_log(changed));
    }
}

TEST_CASE("two phones merge to one log, either way round", "[shop]") {
  const Log base = small_log();
  Log a = base, b = base;
  tick(a, 1, done("P-A2", "slot/a"));
  tick(b, 2, done("P-A3", "slot/a"));
  const Log ab = *merged(a, b), ba = *merged(b, a);
  CHECK(ab == ba);
  CHECK(ab.events.size() == 5);
  CHECK(*merged(ab, a) == ab);
  CHECK(fold(ab) == fold(ba));
  CHECK(merged(a, {"b2", {}}).error().code == ErrorCode::kConflict);
  CHECK(*merged(a, {"", {}}) == a);
}

TEST_CASE("only what the other lacks is passed on", "[shop]") {
  const Log base = small_log();
  Log a = base;
  tick(a, 1, done("P-A2", "slot/a"));
  tick(a, 3, done("P-A2", "slot/b"));
  const Log beyond = events_beyond(a, seen_of(base));
  CHECK(beyond.events.size() == 2);
  CHECK(*merged(base, beyond) == a);
  CHECK(events_beyond(a, seen_of(a)).events.empty());
  CHECK(events_beyond(a, {}) == a);
  const std::string bytes = write_seen("b1", seen_of(a));
  CHECK(read_seen(bytes)->seen == seen_of(a));
  CHECK(read_seen(bytes)->book == "b1");
  for (std::size_t n = 0; n < bytes.size(); ++n) CHECK(!read_seen(std::string_view(bytes).substr(0, n)));
}

TEST_CASE("a phone that was rolled back uses its numbers twice: nothing is lost and it is told", "[shop]") {
  const Log base = small_log();
  Log a = base, b = base;  // one and the same device goes on from an old copy
  tick(a, 1, done("P-A2", "slot/a"));
  tick(b, 1, done("P-A3", "slot/a"));
  const Log both = *merged(a, b);
  CHECK(both.events.size() == 5);
  CHECK(*merged(a, events_beyond(b, seen_of(a))) == both);
  const auto conflicts = conflicts_of(fold(both));
  REQUIRE(conflicts.size() == 1);
  CHECK(conflicts[0].kind == ConflictKind::kNumberTwice);
  CHECK(conflicts[0].first == EventId{1, 3});
}
