#pragma once
/// What does not agree in the shop, and whether a plate belongs where it is held.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "shop/log/state.h"

namespace bentbook {

enum class ConflictKind : std::uint8_t {
  kFinishedTwice,  ///< two devices finished one step
  kHeldAndPassed,  ///< one held what the other passed
  kValuesDiffer,   ///< two measures, plate numbers, marks or lots for one thing
  kPlateTwice,     ///< one plate number at two places; `other_timber`, `other_step`
  kWrongPlate,     ///< paired with another plate than the one recorded
  kNumberTwice,    ///< a device used a sequence number twice
  kEventsMissing,  ///< events of a device are not there: ask its owner for them
};
inline constexpr std::array<std::string_view, 7> kConflictWords = {"finished_twice", "held_and_passed", "values_differ",
                                                                   "plate_twice",    "wrong_plate",     "number_twice",
                                                                   "events_missing"};
struct Conflict {
  ConflictKind kind = ConflictKind::kFinishedTwice;
  std::string timber, step;
  EventId first, second;
  std::string first_value, second_value;
  std::string other_timber, other_step;
};
/// In the state's own order; those of the log itself last.
[[nodiscard]] std::vector<Conflict> conflicts_of(const ShopState& state);

/// Does this plate belong here? Asked in the shop, and again when it goes up.
enum class Pairing : std::uint8_t { kMatches, kOther, kNotRecorded };
struct PairingAnswer {
  Pairing pairing = Pairing::kNotRecorded;
  std::string recorded;                  ///< number that belongs here
  std::string other_timber, other_step;  ///< where the plate in hand belongs, if it is known
};
[[nodiscard]] PairingAnswer check_pairing(const ShopState& state, std::string_view timber, std::string_view step,
                                          std::string_view plate);

}  // namespace bentbook
