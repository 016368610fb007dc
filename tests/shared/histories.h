#pragma once
/// Random histories of a few phones in one shop: each works on its own log and sometimes takes another's in.

#include <vector>

#include "random.h"
#include "shop/log/event.h"

namespace histories {

using namespace bentbook;

inline std::string pick(Random& random, std::initializer_list<const char*> words) {
  return words.begin()[random.whole(0, static_cast<std::int64_t>(words.size()) - 1)];
}

/// An event that a phone with this log could make now.
inline Event random_event(Random& random, const Log& log, std::uint64_t device) {
  Event e;
  e.wall = random.whole(0, 2'000'000'000'000);
  e.who = pick(random, {"Ana", "Bo", "Íñigo"});
  e.timber = pick(random, {"P-A1", "T-2", "C-E1.3"});
  e.step = pick(random, {"slot/a", "end_cut/b", "label"});
  const std::int64_t kind = random.whole(0, 13);
  if (kind < 5) {
    e.action = EventAction::kDone;
    e.value = pick(random, {"", "station_in=48.0000", "table_deg=39.8056"});
  } else if (kind == 5) {
    e.action = EventAction::kPassed;
  } else if (kind == 6) {
    e.action = EventAction::kMeasured;
    e.value = reading_text({Length::inches(random.whole(30, 34), 4), Length::inches(8), Length::inches(1, 4)});
  } else if (kind == 7) {
    e.action = EventAction::kHeld;
    e.note = "check";
  } else if (kind == 8) {
    e.action = EventAction::kPlate;
    e.value = pick(random, {"17", "18"});
  } else if (kind == 9) {
    e.action = EventAction::kStepRenamed;
    e.timber = pick(random, {"post", "tie"});
    e.step = "slot";
    e.note = pick(random, {"Slot it", ""});
  } else if (!log.events.empty()) {  // take back or release what is there
    const Event& known =
        log.events[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(log.events.size()) - 1))];
    e.action = kind < 12 ? EventAction::kTakenBack : EventAction::kReleased;
    e.value = id_text(known.id());
    e.timber = is_rule(known.action) ? "P-A1" : known.timber;
    e.step = is_rule(known.action) ? "label" : known.step;
    e.note = "reason";
  }
  const auto next = next_event(log, device, e);
  return *next;
}

/// `steps` things happen: an event on one phone, or one phone takes in another's log.
inline std::vector<Log> random_phones(Random& random, int phones, int steps) {
  std::vector<Log> logs(static_cast<std::size_t>(phones), Log{"b1", {}});
  const auto any = [&] { return static_cast<std::size_t>(random.whole(0, phones - 1)); };
  for (int i = 0; i < steps; ++i) {
    const std::size_t own = any();
    if (random.whole(0, 4) == 0)
      logs[own] = *merged(logs[own], logs[any()]);
    else
      add_event(logs[own], random_event(random, logs[own], 0xA0 + own));
  }
  return logs;
}

}  // namespace histories
