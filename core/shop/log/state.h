#pragma once
/// What stands in the shop: the log folded in its order. Folding all events, or a first part and then the rest, gives
/// the same state.
///
/// Each step of a timber keeps the claims that hold now, each with who and when. A device's newer word on the same
/// thing takes the place of its own older one; the words of two devices stand side by side until one is taken back:
/// nothing is decided behind the crew's back, conflicts.h names what does not agree. A hold goes away by a release
/// alone.

#include <map>
#include <span>
#include <string>
#include <vector>

#include "shop/log/claims.h"
#include "shop/log/event.h"
#include "shop/log/rules.h"

namespace bentbook {

struct StepState {
  std::string step;
  std::vector<Claim> claims;
  [[nodiscard]] const Claim* find(EventAction action) const;  ///< the first, nullptr: none
  friend bool operator==(const StepState&, const StepState&) = default;
};

struct TimberState {
  std::string mark;
  std::vector<StepState> steps;  ///< in the order in which they were first spoken of; "" is the timber as a whole
  [[nodiscard]] const StepState* find(std::string_view step) const;
  [[nodiscard]] bool held() const;
  friend bool operator==(const TimberState&, const TimberState&) = default;
};

struct DeviceState {
  std::uint64_t last = 0;   ///< greatest sequence folded
  std::uint64_t whole = 0;  ///< all up to this one are there
  friend bool operator==(const DeviceState&, const DeviceState&) = default;
};

/// Where in the state a timber or a step stands: a table of open addresses, made of the state and never compared.
struct PlaceIndex {
  static constexpr std::uint32_t kWhole = 0xFFFFFFFF;  ///< step: the timber itself
  struct Place {
    std::uint32_t timber = 0, step = kWhole;
  };
  std::vector<Place> places;
  std::vector<std::uint32_t> slots;  ///< 0: empty, else one more than the place's number; a power of two of them
};

struct ShopState {
  std::vector<TimberState> timbers;  ///< in the order in which they were first spoken of
  std::vector<Rule> rules;
  std::map<std::uint64_t, DeviceState> devices;
  std::vector<EventId> twice;  ///< numbers that a device used again: a copied or rolled-back phone
  std::uint64_t events = 0, digest = 0;
  std::uint64_t last_logical = 0;
  EventId last;

  [[nodiscard]] const TimberState* find(std::string_view mark) const;
  friend bool operator==(const ShopState& a, const ShopState& b) {
    return a.timbers == b.timbers && a.rules == b.rules && a.devices == b.devices && a.twice == b.twice &&
           a.events == b.events && a.digest == b.digest && a.last_logical == b.last_logical && a.last == b.last;
  }

  PlaceIndex places;
};
/// Makes `places` anew.
void index_state(ShopState& state);

/// The event must not come before the state's last one (follows()).
void apply(ShopState& state, const Event& event);
[[nodiscard]] bool follows(const ShopState& state, const Event& event);
/// Many events at once, each as apply() would: near linear in their number, whatever they say.
void apply_all(ShopState& state, std::span<const Event> events);
[[nodiscard]] ShopState fold(const Log& log);

}  // namespace bentbook
