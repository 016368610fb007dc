#pragma once
/// A frame joined in one way throughout, where either way can be: knife plates, or wood in wood. Scarfs, birds' mouths,
/// peaks and sills' corners are wood in both.

#include <optional>

#include "frame/plan.h"

namespace bentbook {

enum class Joinery : std::uint8_t { kPlates, kWooden };

/// Every meeting that can take a knife plate has one sized to its member, or each one that has a plate its usual wooden
/// joint. Other wooden joints stay as they were chosen.
[[nodiscard]] FramePlan with_joinery(FramePlan plan, Joinery joinery);
/// Nothing: both are used.
[[nodiscard]] std::optional<Joinery> joinery_of(const FramePlan& plan);

/// A plate for a member of this section that asks nothing of it which its wood has not: pins four diameters from an
/// edge and seven from the end. The engineer's to confirm. Source: SOURCES.md, "pin distances"; sizes are common
/// practice.
[[nodiscard]] KnifePlate plate_for(const Section& section);

}  // namespace bentbook
