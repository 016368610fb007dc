#pragma once
/// What a yard sells until the user says otherwise; sources in core/SOURCES.md.

#include "measure/length.h"

namespace bentbook::limits {

/// Source: SOURCES.md, "sticks sold".
inline constexpr Length kShortestStick = Length::feet(8), kLongestStick = Length::feet(20),
                        kStickStep = Length::feet(2);
/// Shorter offcuts are firewood. Source: SOURCES.md, "kept offcuts".
inline constexpr Length kKeptOffcut = Length::feet(4);
/// The longest timber that anybody saws to order. Source: SOURCES.md, "sawn to order".
inline constexpr Length kLongestToOrder = Length::feet(100);
/// Lengths sold, at most, and sticks in the yard: more is a slip of the finger. Source: SOURCES.md, "slips of the
/// finger".
inline constexpr int kMostLengths = 100, kMostYard = 1000;

}  // namespace bentbook::limits
