#pragma once
/// What the Rafter place remembers between frames. Nothing of it is stored.

#include <array>

#include "roof/corner/corner_cuts.h"
#include "screens/desks/asked.h"

namespace bentbook::screens {

struct RafterMemory {
  std::array<Asked<PatternSheet>, 2> patterns;           ///< by Side, on their way to be shared
  CornerCutName corner_cut = CornerCutName::kPeakCheek;  ///< the one whose page is open
};

}  // namespace bentbook::screens
