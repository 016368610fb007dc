#pragma once
/// Logs that no crew makes: very many events of one kind about one thing, by one device or by as many as there are.

#include <string>
#include <string_view>
#include <vector>

#include "shop/log/event.h"

namespace hostile {

using namespace bentbook;

struct Kind {
  std::string_view name;
  EventAction action;
  bool many_devices;
};

inline std::vector<Kind> kinds() {
  std::vector<Kind> all;
  for (std::size_t i = 0; i < kActionWords.size(); ++i)
    for (const bool many : {false, true}) all.push_back({kActionWords[i], static_cast<EventAction>(i), many});
  return all;
}

inline Event event_of(const Kind& kind, std::uint64_t i) {
  Event e;
  e.device = kind.many_devices ? 1 + i * 0x9E3779B97F4A7C15u : 1;
  e.sequence = kind.many_devices ? 1 : i + 1;
  e.logical = i + 1;
  e.wall = 1'764'000'000'000;
  e.action = kind.action;
  e.who = "Mallet";
  e.timber = is_rule(kind.action) ? "post" : "P-A1";
  e.step = is_rule(kind.action) ? "own." + std::to_string(i % 5000) : "slot/a";
  e.note = "n" + std::to_string(i);
  switch (kind.action) {
    case EventAction::kMeasured:
      e.value = reading_text({{static_cast<std::int64_t>(i) + 100}, {0}, {1}});
      break;
    case EventAction::kReleased:
    case EventAction::kTakenBack: {
      // Of the event before it, which is a hold or a finish.
      const bool first = i % 2 == 0;
      Event before = e;
      if (first) {
        e.action = kind.action == EventAction::kReleased ? EventAction::kHeld : EventAction::kDone;
      } else {
        before = event_of(kind, i - 1);
        e.value = id_text(before.id());
      }
      break;
    }
    case EventAction::kStepAdded:
      e.value = "cut saw -";
      break;
    case EventAction::kStepMoved:
      e.value = "-";
      break;
    case EventAction::kStepAsks:
      e.value = "100";
      break;
    default:
      e.value = "v" + std::to_string(i);
  }
  return e;
}

inline Log log_of(const Kind& kind, std::uint64_t count) {
  Log log{"b1", {}};
  log.events.reserve(static_cast<std::size_t>(count));
  for (std::uint64_t i = 0; i < count; ++i) log.events.push_back(event_of(kind, i));
  return log;
}

}  // namespace hostile
