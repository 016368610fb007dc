#pragma once
/// Inside the steps: the numbers of each.

#include "shop/steps.h"

namespace bentbook {

[[nodiscard]] std::vector<StepNumber> end_cut_numbers(const Sheet& sheet, const BenchStep& step, End end);
[[nodiscard]] std::vector<StepNumber> feature_numbers(const Frame& frame, const Sheet& sheet, const BenchStep& step);
/// `end_a`: the cut of end A itself, which needs no stop.
[[nodiscard]] std::vector<SawSetup> setups_of(const Sheet& sheet, const BenchStep& step, bool end_a);
/// Steps from seating the plate to drilling through. `joint`: a knife plate in this timber's end.
[[nodiscard]] std::vector<StepNumber> plate_numbers(const Frame& frame, int timber, int joint, StepWork work);

}  // namespace bentbook
