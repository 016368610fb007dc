#pragma once
/// A solved roof as JSON; its keys stand in native-app/README.md.

#include <string>

#include "roof/plan/solve_roof.h"
#include "words/words.h"

namespace bentbook {

[[nodiscard]] std::string roof_json(const RoofPlan& plan, const RoofSolution& roof, const Voice& voice);

}  // namespace bentbook
