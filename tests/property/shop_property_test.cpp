// The crew's log over random histories of three phones.

#include <catch_amalgamated.hpp>
#include <map>
#include <set>
#include <tuple>

#include "frame/placing/solve_frame.h"
#include "histories.h"
#include "plans.h"
#include "shop/log/conflicts.h"
#include "shop/log/explained.h"
#include "shop/log/log_file.h"
#include "shop/log/seen.h"
#include "shop/log/snapshot.h"
#include "shop/workplace.h"

using namespace bentbook;

namespace {

/// The events of all logs, each once.
std::size_t union_size(const std::vector<Log>& logs) {
  std::set<std::tuple<std::uint64_t, std::uint64_t>> ids;
  for (const Log& log : logs)
    for (const Event& e : log.events) ids.insert({e.device, e.sequence});
  return ids.size();
}

/// Which devices have finished what and not taken it back, written apart from state.cpp: for each finish of a device
/// the last one counts, and only when no later event takes just that one back.
using Finished = std::set<std::tuple<std::string, std::string, std::uint64_t>>;
Finished finished_by_hand(const Log& log) {
  Finished all;
  for (std::size_t i = 0; i < log.events.size(); ++i) {
    const Event& e = log.events[i];
    if (e.action != EventAction::kDone) continue;
    bool holds = true;
    for (std::size_t k = i + 1; k < log.events.size(); ++k) {
      const Event& later = log.events[k];
      if (later.timber != e.timber || later.step != e.step) continue;
      if (later.action == EventAction::kDone && later.device == e.device) holds = false;
      if (later.action == EventAction::kTakenBack && later.value == id_text(e.id())) holds = false;
    }
    if (holds) all.insert({e.timber, e.step, e.device});
  }
  return all;
}

Finished finished_in(const ShopState& state) {
  Finished all;
  for (const TimberState& timber : state.timbers)
    for (const StepState& step : timber.steps)
      for (const Claim& c : step.claims)
        if (c.action == EventAction::kDone) all.insert({timber.mark, step.step, c.id.device});
  return all;
}

/// Holds that no release names, the same way.
std::size_t holds_by_hand(const Log& log) {
  std::size_t n = 0;
  for (std::size_t i = 0; i < log.events.size(); ++i) {
    const Event& e = log.events[i];
    const bool hold =
        e.action == EventAction::kHeld || (e.action == EventAction::kMeasured && !read_reading(e.value)->within());
    if (!hold) continue;
    bool released = false;
    for (std::size_t k = i + 1; k < log.events.size(); ++k)
      released = released || (log.events[k].action == EventAction::kReleased && log.events[k].value == id_text(e.id()));
    n += released ? 0 : 1;
  }
  return n;
}

std::size_t holds_in(const ShopState& state) {
  std::size_t n = 0;
  for (const TimberState& timber : state.timbers)
    for (const StepState& step : timber.steps)
      for (const Claim& c : step.claims) n += c.action == EventAction::kHeld ? 1 : 0;
  return n;
}

/// A log with some of its events lost.
Log thinned(Random& random, Log log) {
  std::vector<Event> kept;
  for (Event& e : log.events)
    if (random.whole(0, 3) != 0) kept.push_back(std::move(e));
  log.events = std::move(kept);
  return log;
}

}  // namespace

// Union of sets: Shapiro, Preguiça, Baquero, Zawirski, Conflict-free replicated data types (2011), grow-only set.
TEST_CASE("merging is commutative, associative, idempotent and loses nothing", "[shop]") {
  Random random(410);
  for (int n = 0; n < property_cases(); ++n) {
    const std::vector<Log> p = histories::random_phones(random, 3, static_cast<int>(random.whole(2, 14)));
    const Log ab = *merged(p[0], p[1]), all = *merged(ab, p[2]);
    bool good = ab == *merged(p[1], p[0]);
    good = good && all == *merged(p[0], *merged(p[1], p[2]));
    good = good && all == *merged(*merged(p[2], p[0]), p[1]);
    good = good && *merged(all, all) == all && *merged(all, p[1]) == all;
    good = good && all.events.size() == union_size(p);
    if (!good) FAIL("history " << n);
  }
  SUCCEED();
}

TEST_CASE("the state is the fold of the log, in whatever parts it is folded", "[shop]") {
  Random random(411);
  for (int n = 0; n < property_cases(); ++n) {
    const std::vector<Log> p = histories::random_phones(random, 3, static_cast<int>(random.whole(2, 14)));
    const Log all = *merged(*merged(p[0], p[1]), p[2]);
    const ShopState state = fold(all);
    bool good = finished_in(state) == finished_by_hand(all) && holds_in(state) == holds_by_hand(all);
    const auto cut = static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(all.events.size())));
    ShopState parts = fold({all.book, {all.events.begin(), all.events.begin() + static_cast<std::ptrdiff_t>(cut)}});
    if (n % 8 == 0) parts = *read_snapshot(write_snapshot(parts));
    good = good && go_on(parts, std::span(all.events).subspan(cut)) && parts == state;
    if (!good) FAIL("history " << n);
  }
  SUCCEED();
}

TEST_CASE("what the other lacks and what it has make the union", "[shop]") {
  Random random(412);
  for (int n = 0; n < property_cases() / 4; ++n) {
    std::vector<Log> p = histories::random_phones(random, 3, static_cast<int>(random.whole(2, 14)));
    if (n % 3 == 0) p[1] = thinned(random, p[1]);
    const Log both = *merged(p[0], p[1]);
    const Log beyond = events_beyond(p[0], seen_of(p[1]));
    bool good = *merged(p[1], beyond) == both;
    if (n % 3 != 0) good = good && beyond.events.size() == both.events.size() - p[1].events.size();
    good = good && *read_log(write_log(both)) == both;
    if (!good) FAIL("history " << n);
  }
  SUCCEED();
}

namespace {

/// Three phones that also get cut files, are set back, and take only what the other's file holds beyond what some third
/// phone has: everything that honest phones can come to hold.
std::vector<Log> rough_phones(Random& random, int steps) {
  std::vector<Log> logs(3, Log{"b1", {}});
  std::vector<Log> earlier = logs;
  const auto any = [&] { return static_cast<std::size_t>(random.whole(0, 2)); };
  for (int i = 0; i < steps; ++i) {
    const std::size_t own = any(), other = any(), third = any();
    switch (random.whole(0, 9)) {
      case 0:
        logs[own] = *merged(logs[own], logs[other]);
        break;
      case 1:
        logs[own] = *merged(logs[own], events_beyond(logs[other], seen_of(logs[third])));
        break;
      case 2:
        logs[own] = thinned(random, logs[own]);
        break;
      case 3:
        logs[own] = *merged(logs[own], thinned(random, logs[other]));
        break;
      case 4:
        earlier[own] = logs[own];
        break;
      case 5:
        logs[own] = earlier[own];
        break;
      default:
        add_event(logs[own], histories::random_event(random, logs[own], 0xA0 + own));
    }
  }
  return logs;
}

}  // namespace

TEST_CASE("whatever honest phones come to hold is explained, whole, in part and merged", "[shop]") {
  Random random(413);
  for (int n = 0; n < property_cases() / 4; ++n) {
    const std::vector<Log> p = rough_phones(random, static_cast<int>(random.whole(2, 40)));
    const Log all = *merged(*merged(p[0], p[1]), p[2]);
    bool good = true;
    for (const Log& log : {p[0], p[1], p[2], all, thinned(random, all), events_beyond(p[0], seen_of(p[1]))}) {
      Explained explained;
      for (const Event& e : log.events) good = good && explained.take(e);
      good = good && read_log(write_log(log)) == log && is_explained(fold(log));
    }
    if (!good) FAIL("history " << n);
  }
  SUCCEED();
}

TEST_CASE("the many folded at once are the many folded one by one", "[shop]") {
  Random random(414);
  for (int n = 0; n < property_cases() / 100; ++n) {
    std::vector<Event> events = histories::random_phones(random, 2, static_cast<int>(random.whole(100, 400)))[0].events;
    // All on one step, so that its claims are many.
    for (Event& e : events)
      if (!is_rule(e.action)) {
        e.timber = "P-A1";
        e.step = "slot/a";
        e.device = static_cast<std::uint64_t>(random.whole(1, 200));
      }
    const auto cut = static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(events.size())));
    ShopState one, many;
    for (const Event& e : events) apply(one, e);
    apply_all(many, std::span(events).first(cut));
    apply_all(many, std::span(events).subspan(cut));
    if (!(one == many)) FAIL("history " << n);
  }
  SUCCEED();
}

// ── The end that is taped from ────────────────────────────────────────────────────────────────────────────────────

namespace {

bool is_station(StepNumberName name) {
  return name == StepNumberName::kStop || name == StepNumberName::kFrom || name == StepNumberName::kTo ||
         name == StepNumberName::kBottom || name == StepNumberName::kAt;
}
bool says_station(const WorkStep& step) {
  return std::any_of(step.numbers.begin(), step.numbers.end(), [](const StepNumber& n) { return is_station(n.name); });
}
bool cuts_end(const WorkStep& step, End end) { return step.on == WorkOn::kEndCut && step.end == end; }

/// The first thing that is taped from an end that is not cut yet; "" for none. Ends B come before what stands between.
std::string taped_too_early(const std::vector<const WorkStep*>& steps) {
  std::string taped, joined;
  for (const WorkStep* step : steps) {
    const bool at_a = cuts_end(*step, End::kA);
    if (at_a && !taped.empty()) return taped + " before " + step->id;
    if (cuts_end(*step, End::kB) && !joined.empty()) return joined + " before " + step->id;
    if (!at_a && says_station(*step) && taped.empty()) taped = step->id;
    if (step->on == WorkOn::kFeature && says_station(*step) && joined.empty()) joined = step->id;
  }
  return {};
}

/// On each timber's cards, and over the pages of the saw.
std::string taped_too_early(const Frame& frame) {
  Saw saw;
  saw.kind = SawKind::kChainsawBar;
  saw.reach = Length::inches(16);
  const std::vector<TimberWork> work = shop_work(frame, {}, saw);
  std::vector<std::vector<const WorkStep*>> at_saw(work.size());
  for (const SawGroup& group : waiting_for_saw(work))
    for (const WaitingCut& cut : group.cuts)
      at_saw[static_cast<std::size_t>(cut.work)].push_back(
          &work[static_cast<std::size_t>(cut.work)].steps[static_cast<std::size_t>(cut.step)]);
  for (std::size_t i = 0; i < work.size(); ++i) {
    const std::string& mark = frame.timbers[static_cast<std::size_t>(work[i].timber)].mark;
    std::vector<const WorkStep*> cards;
    for (const WorkStep& step : work[i].steps) cards.push_back(&step);
    if (const std::string early = taped_too_early(cards); !early.empty()) return mark + ": " + early;
    if (const std::string early = taped_too_early(at_saw[i]); !early.empty()) return mark + " at the saw: " + early;
  }
  return {};
}

}  // namespace

TEST_CASE("nothing is taped from an end that is still to be cut, on the cards and at the saw", "[shop]") {
  Random random(415);
  int frames = 0;
  for (int n = 0; n < (is_long() ? 400 : 16); ++n) {
    const auto frame = solve_frame(n % 4 == 3 ? random_hip_plan(random) : random_plan(random));
    if (!frame) continue;
    ++frames;
    INFO("frame " << n);
    CHECK_THAT(taped_too_early(*frame), Catch::Matchers::IsEmpty());
  }
  CHECK(frames > 8);
}
