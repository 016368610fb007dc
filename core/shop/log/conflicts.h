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
/// One thing that does not agree, however many speak of it: two sides that differ, how many there are, who the first
/// few are.
struct Conflict {
  ConflictKind kind = ConflictKind::kFinishedTwice;
  std::string timber, step;
  EventId first, second;
  std::string first_value, second_value;
  std::string other_timber, other_step;
  std::size_t sides = 2;         ///< claims; of kPlateTwice places, of kNumberTwice numbers, of kEventsMissing devices
  std::vector<std::string> who;  ///< of the first sides, kNamedSides at most
};
inline constexpr std::size_t kNamedSides = 4;
/// In the state's own order; those of the log itself last. Near linear in the number of claims, and no more than a few
/// for a step.
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
