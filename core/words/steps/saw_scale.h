#pragma once
/// A saw's angle as its own scale is set.

#include <cstdint>
#include <string>

#include "cut/saw.h"
#include "words/words.h"

namespace bentbook {

struct ScaleWords {
  std::string reads;    ///< the nearest mark; the angle itself where the saw has no such marks
  std::string exactly;  ///< "Exactly 33.69°" where the angle lies between two marks
};
/// `hundredths` of a degree, as SawSetup; a scale has no sign.
[[nodiscard]] ScaleWords scale_words(const Saw& saw, std::int64_t hundredths, const Voice& voice);

/// What an angle across the face ridden is set on: a table, or the guide along which a saw is run that is held in the
/// hands.
[[nodiscard]] Msg swing_name(SawKind saw);

}  // namespace bentbook
