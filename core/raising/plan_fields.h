#pragma once
/// What the lead says of the raising, as files have it.

#include "measure/fields.h"
#include "raising/plan.h"

namespace bentbook {

/// Temporaries, pieces of gear, … of one raising, at most.
inline constexpr unsigned kMostRaisingThings = 10'000;

/// A mark in a list of marks.
void describe(Fields&, std::string& mark);
void describe(Fields&, Temporary&);
void describe(Fields&, RaisingPlan&);

}  // namespace bentbook
