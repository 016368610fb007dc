#pragma once
/// The shop's log: what the crew did to which timber, one event each, never changed and never taken out. Taking back is
/// another event. Two phones' logs merge by union. What stands in the shop is a fold over the log (state.h).
///
/// Nothing here asks for a clock or a number of its own: device numbers and wall time are passed in.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "measure/length.h"
#include "numeric/result.h"

namespace bentbook {

enum class EventAction : std::uint8_t {
  kDone,          ///< the step is finished; value: its numbers as they were worked to (steps.h)
  kPassed,        ///< looked over and found good
  kMeasured,      ///< value: a Reading; out of tolerance it holds the timber
  kHeld,          ///< stopped; note: why
  kReleased,      ///< of a hold; value: the hold's event, who and note (the reason) must be there
  kPlate,         ///< value: number of the plate that belongs here
  kWitness,       ///< value: the witness mark across plate and timber
  kStock,         ///< value: heat or lot of the stock
  kPaired,        ///< the pair was looked at again; value: the plate's number as it was found
  kNoted,         ///< note alone
  kTakenBack,     ///< value: the event taken back; holds cannot be: they are released
  kStepAdded,     ///< kinds of timber (the lead's changes, rules.h): timber is the kind's word, step the step's
  kStepDropped,   ///<
  kStepRestored,  ///<
  kStepMoved,     ///<
  kStepRenamed,   ///<
  kStepAsks,      ///<
};
inline constexpr std::array<std::string_view, 17> kActionWords = {
    "done",         "passed",        "measured",   "held",         "released",   "plate",
    "witness",      "stock",         "paired",     "noted",        "taken_back", "step_added",
    "step_dropped", "step_restored", "step_moved", "step_renamed", "step_asks"};
static_assert(kActionWords.size() == static_cast<std::size_t>(EventAction::kStepAsks) + 1);
[[nodiscard]] constexpr bool is_rule(EventAction action) { return action >= EventAction::kStepAdded; }

/// Names an event: no device uses a sequence number twice.
struct EventId {
  std::uint64_t device = 0;
  std::uint64_t sequence = 0;
  friend bool operator==(const EventId&, const EventId&) = default;
};
/// "00000000000000a7.12": the device in hexadecimal.
[[nodiscard]] std::string id_text(EventId id);
[[nodiscard]] Result<EventId> read_id(std::string_view text);

struct Event {
  std::uint64_t device = 0;    ///< random, once for each installation
  std::uint64_t sequence = 1;  ///< 1, 2, 3 … on its device
  std::uint64_t logical = 1;   ///< one more than the greatest that the device had seen
  std::int64_t wall = 0;       ///< milliseconds since 1970, UTC; shown, never ordered by
  EventAction action = EventAction::kDone;
  std::string who;
  std::string timber;  ///< mark
  std::string step;    ///< stable id (steps.h); empty: the whole timber
  std::string value, note;
  [[nodiscard]] EventId id() const { return {device, sequence}; }
  friend bool operator==(const Event&, const Event&) = default;
};

/// What was measured, what was wanted, and how far off it may be.
struct Reading {
  Length measured, wanted, tolerance;
  [[nodiscard]] bool within() const;
  friend bool operator==(const Reading&, const Reading&) = default;
};
/// Three counts between blanks.
[[nodiscard]] std::string reading_text(const Reading& reading);
[[nodiscard]] Result<Reading> read_reading(std::string_view text);

/// Longest texts in bytes.
inline constexpr std::size_t kLongestWho = 80, kLongestMark = 80, kLongestStep = 120, kLongestValue = 240,
                             kLongestEventNote = 400;
/// Largest logical time, sequence and wall time: whole numbers that a double holds, with room above.
inline constexpr std::uint64_t kLastTime = std::uint64_t{1} << 52;

/// Errors name the member: kMissing (a release without who or reason, no timber, no value), kTooLarge, kTooSmall,
/// kSyntax (no UTF-8, control characters, a value that is none of its action's).
[[nodiscard]] Result<void> check_event(const Event& event);

/// The order in which events are folded: logical time, device, sequence. Two unlike events of one device and sequence
/// (a fault) are ordered by the rest.
[[nodiscard]] bool before(const Event& a, const Event& b);
/// 64 bits over all of an event's members.
[[nodiscard]] std::uint64_t digest_of(const Event& event);
[[nodiscard]] std::uint64_t mixed(std::uint64_t a, std::uint64_t b);
[[nodiscard]] std::uint64_t text_digest(std::uint64_t before, std::string_view text);

/// `events` ascending by before(), none twice.
struct Log {
  std::string book;  ///< its id (record.h); empty: of any book
  std::vector<Event> events;
  friend bool operator==(const Log&, const Log&) = default;
};

/// Device, sequence and logical time filled in for the next event of `device`. kTooLarge ("logical"): the log's time is
/// at its end, which only a broken one can be.
[[nodiscard]] Result<Event> next_event(const Log& log, std::uint64_t device, Event event);
/// Puts an event in its place; one that is there already changes nothing.
void add_event(Log& log, Event event);

/// Union. kConflict ("book"): logs of two books. Commutative, associative and idempotent.
[[nodiscard]] Result<Log> merged(const Log& a, const Log& b);

}  // namespace bentbook
