#pragma once
/// The lead's changes to the steps of a kind of timber, as events of the log, so that they reach every phone. An event
/// says kind (`timber`: the kind's word, "post") and step (`step`: the word of its work, or "own.…" for an added one):
///   kStepAdded     value "TICK WORKPLACE AFTER" in words ("-": after all others of its tick), note its name
///   kStepDropped   not done on this kind; kStepRestored brings it back
///   kStepMoved     value: the step that it comes after ("-": before all others)
///   kStepRenamed   note: its name (empty: the usual one again)
///   kStepAsks      value: tolerance of a measure that is asked for, a Length's count (empty: none asked)
/// Of two leads' words on one thing the later in the log's order holds. Opposite rules take a rule back.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "frame/timber.h"
#include "shop/log/event.h"

namespace bentbook {

/// The four ticks that a crew makes on a timber.
enum class Tick : std::uint8_t { kCut, kJoined, kFitted, kReady };
inline constexpr std::array<std::string_view, 4> kTickWords = {"cut", "joined", "fitted", "ready"};

enum class Workplace : std::uint8_t { kLayout, kSaw, kSlotter, kDrillPress, kBench };
inline constexpr std::array<std::string_view, 5> kWorkplaceWords = {"layout", "saw", "slotter", "drill_press", "bench"};

struct Rule {
  EventAction action = EventAction::kStepDropped;
  std::string kind, step, value, note;
  EventId id;
  friend bool operator==(const Rule&, const Rule&) = default;
};

/// What kStepAdded's value says.
struct AddedStep {
  Tick tick = Tick::kReady;
  Workplace place = Workplace::kBench;
  std::string_view after;
};
[[nodiscard]] std::optional<AddedStep> read_added(std::string_view value);

/// Errors as check_event.
[[nodiscard]] Result<void> check_rule(const Event& event);

/// Rules past this number are not taken up: no crew has so many, a broken log may.
inline constexpr std::size_t kMostRules = 1000;

/// Takes the event up: in the place of an earlier word on the same thing, after all others.
void take_rule(std::vector<Rule>& rules, const Event& event);

}  // namespace bentbook
