#pragma once
/// Where two timbers of a plan meet.

#include <cstdint>

namespace bentbook {

/// The kinds of meeting that a plan knows; each is given one joint type.
enum class Meeting : std::uint8_t {
  kPostFoot,    ///< post on sill
  kSillCorner,  ///< long sill with cross sill
  kSillScarf,
  kPostTop,  ///< eave post under plate
  kPlateScarf,
  kTiePost,
  kGirtPost,
  kKingFoot,  ///< king or queen post on tie
  kKingTop,   ///< king post under ridge beam
  kQueenTop,  ///< queen post under purlin or principal rafter
  kRidgeScarf,
  kRafterPlate,   ///< rafter over plate
  kRafterPurlin,  ///< common rafter over a purlin
  kRafterPeak,    ///< rafter against rafter
  kRafterRidge,   ///< rafter to or over the ridge beam
  kPurlinRafter,  ///< purlin between principal rafters
  kPurlinScarf,
  kCollarRafter,
  kJoistTie,
  kBraceEnd,
};
inline constexpr int kMeetings = 20;

}  // namespace bentbook
