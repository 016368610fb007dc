#pragma once
/// Temporary braces against how what stands would move: quick, for one step of a search at a time.
///
/// Where there is a mechanism its motion is taken, else the way in which the worst load case would fall (the dual of
/// the linear program). Of all diagonals of 1 1/2 or 3 1/2 in stock that both pull and press (at most
/// limits::kMostSlenderness times their thickness long) from the moving timber to the ground or to another timber that
/// stands, the one whose length that motion changes most is put up; then the next motion is looked at.

#include <span>
#include <vector>

#include "frame/plan.h"
#include "raising/stability/standing.h"

namespace bentbook {

/// Numbers of temporaries in the model, which grows by those that it has not yet; in order. Empty: not found.
[[nodiscard]] std::vector<int> brace_step(StandingModel& model, const Frame& frame, StandingRun& run,
                                          std::span<const int> timbers, std::span<const int> temporaries);

}  // namespace bentbook
