// What stands in the shop: ticks, taking back, holds, conflicts, pairs, snapshots. The rules are the shop's own.

#include <catch_amalgamated.hpp>
#include <span>

#include "histories.h"
#include "shop/log/conflicts.h"
#include "shop/log/snapshot.h"

using namespace bentbook;

namespace {

struct Phone {
  std::uint64_t device;
  std::string who;
  Log log{"b1", {}};

  EventId does(EventAction action, std::string step, std::string value = {}, std::string note = {},
               std::string timber = "T-2") {
    Event e;
    e.wall = 1'764'000'000'000;
    e.who = who;
    e.action = action;
    e.timber = std::move(timber);
    e.step = std::move(step);
    e.value = std::move(value);
    e.note = std::move(note);
    const auto next = next_event(log, device, e);
    REQUIRE(next);
    add_event(log, *next);
    return next->id();
  }
  void takes(const Phone& other) { log = *merged(log, other.log); }
  [[nodiscard]] std::vector<ConflictKind> conflicts() const {
    std::vector<ConflictKind> kinds;
    for (const Conflict& c : conflicts_of(fold(log))) kinds.push_back(c.kind);
    return kinds;
  }
  [[nodiscard]] const Claim* claim(std::string_view step, EventAction action) {
    state = fold(log);
    const TimberState* timber = state.find("T-2");
    const StepState* found = timber != nullptr ? timber->find(step) : nullptr;
    return found != nullptr ? found->find(action) : nullptr;
  }
  ShopState state{};
};

std::string inches(std::int64_t n, std::int64_t d) {
  return reading_text({Length::inches(n, d), Length::inches(8), Length::inches(1, 16)});
}

}  // namespace

TEST_CASE("a tick says who and when; taken back it is gone", "[shop]") {
  Phone a{1, "Ana"};
  const EventId id = a.does(EventAction::kDone, "slot/a", "depth_in=7.7500");
  REQUIRE(a.claim("slot/a", EventAction::kDone) != nullptr);
  CHECK(a.claim("slot/a", EventAction::kDone)->who == "Ana");
  CHECK(a.claim("slot/a", EventAction::kDone)->value == "depth_in=7.7500");
  CHECK(a.claim("slot/a", EventAction::kDone)->wall == 1'764'000'000'000);
  a.does(EventAction::kTakenBack, "slot/a", id_text(id));
  CHECK(a.claim("slot/a", EventAction::kDone) == nullptr);
  a.does(EventAction::kDone, "slot/a");
  CHECK(a.claim("slot/a", EventAction::kDone) != nullptr);
}

TEST_CASE("a measure out of tolerance holds until a name releases it with a reason", "[shop]") {
  Phone a{1, "Ana"};
  const EventId good = a.does(EventAction::kMeasured, "slot/a", inches(129, 16));  // 8 1/16: just within 1/16
  CHECK(a.claim("slot/a", EventAction::kHeld) == nullptr);
  const EventId id = a.does(EventAction::kMeasured, "slot/a", inches(259, 32));  // 8 3/32
  REQUIRE(a.claim("slot/a", EventAction::kHeld) != nullptr);
  CHECK(a.claim("slot/a", EventAction::kHeld)->id == id);
  CHECK(fold(a.log).find("T-2")->held());
  // Neither taking back nor a good measure lets it go.
  a.does(EventAction::kTakenBack, "slot/a", id_text(id));
  a.does(EventAction::kMeasured, "slot/a", inches(8, 1));
  CHECK(a.claim("slot/a", EventAction::kHeld) != nullptr);
  a.does(EventAction::kReleased, "slot/a", id_text(good), "not this one");
  CHECK(a.claim("slot/a", EventAction::kHeld) != nullptr);
  a.does(EventAction::kReleased, "slot/a", id_text(id), "planed, measured again");
  CHECK(a.claim("slot/a", EventAction::kHeld) == nullptr);
  CHECK(a.claim("slot/a", EventAction::kReleased)->note == "planed, measured again");
  CHECK(!fold(a.log).find("T-2")->held());
}

TEST_CASE("conflicts of two phones are shown on both until one is taken back", "[shop]") {
  Phone a{1, "Ana"}, b{2, "Bo"};
  const EventId first = a.does(EventAction::kDone, "slot/a");
  b.does(EventAction::kDone, "slot/a");
  CHECK(a.conflicts().empty());
  a.takes(b);
  b.takes(a);
  CHECK(a.conflicts() == std::vector{ConflictKind::kFinishedTwice});
  CHECK(b.conflicts() == a.conflicts());
  b.does(EventAction::kTakenBack, "slot/a", id_text(first));
  a.takes(b);
  CHECK(a.conflicts().empty());
  CHECK(a.claim("slot/a", EventAction::kDone)->who == "Bo");

  b.does(EventAction::kPassed, "label");
  const EventId hold = a.does(EventAction::kHeld, "label", {}, "split");
  a.takes(b);
  CHECK(a.conflicts() == std::vector{ConflictKind::kHeldAndPassed});
  a.does(EventAction::kReleased, "label", id_text(hold), "only a check");
  CHECK(a.conflicts().empty());

  a.does(EventAction::kMeasured, "end_cut/b", inches(8, 1));
  b.does(EventAction::kMeasured, "end_cut/b", inches(257, 32));
  b.takes(a);
  CHECK(b.conflicts() == std::vector{ConflictKind::kValuesDiffer});
}

TEST_CASE("a plate belongs to one place, and the pair is looked at again", "[shop]") {
  Phone a{1, "Ana"}, b{2, "Bo"};
  a.does(EventAction::kPlate, "slot/a", "17");
  a.does(EventAction::kWitness, "slot/a", "III");
  a.does(EventAction::kStock, "", "heat 4471");
  ShopState state = fold(a.log);
  CHECK(check_pairing(state, "T-2", "slot/a", "17").pairing == Pairing::kMatches);
  const PairingAnswer other = check_pairing(state, "T-3", "slot/a", "17");
  CHECK(other.pairing == Pairing::kOther);
  CHECK(other.other_timber == "T-2");
  CHECK(check_pairing(state, "T-2", "slot/a", "18").recorded == "17");
  CHECK(check_pairing(state, "T-3", "slot/b", "99").pairing == Pairing::kNotRecorded);
  b.does(EventAction::kPlate, "slot/b", "17", {}, "T-3");
  b.takes(a);
  CHECK(b.conflicts() == std::vector{ConflictKind::kPlateTwice});
  a.does(EventAction::kPaired, "slot/a", "18");
  CHECK(a.conflicts() == std::vector{ConflictKind::kWrongPlate});
  a.does(EventAction::kPaired, "slot/a", "17");
  CHECK(a.conflicts().empty());
}

TEST_CASE("events that did not arrive are missed by number", "[shop]") {
  Phone a{1, "Ana"};
  for (int i = 0; i < 4; ++i) a.does(EventAction::kDone, "slot/a");
  a.log.events.erase(a.log.events.begin() + 1);
  const auto conflicts = conflicts_of(fold(a.log));
  REQUIRE(conflicts.size() == 1);
  CHECK(conflicts[0].kind == ConflictKind::kEventsMissing);
  CHECK(conflicts[0].first.sequence == 2);
}

TEST_CASE("a snapshot goes on to the log's state, a damaged one is refused", "[shop]") {
  Random random(404);
  const Log log = histories::random_phones(random, 1, 60)[0];
  const Log begun{log.book, {log.events.begin(), log.events.begin() + 40}};
  const std::string bytes = write_snapshot(fold(begun));
  auto state = read_snapshot(bytes);
  REQUIRE(state);
  CHECK(*state == fold(begun));
  REQUIRE(go_on(*state, std::span(log.events).subspan(40)));
  CHECK(*state == fold(log));
  for (std::size_t i = 0; i < bytes.size(); i += 7) {
    std::string damaged = bytes;
    damaged[i] = static_cast<char>(damaged[i] ^ 4);
    CHECK(!read_snapshot(damaged));
    CHECK(!read_snapshot(bytes.substr(0, i)));
  }
}
