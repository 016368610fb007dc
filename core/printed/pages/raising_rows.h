#pragma once
/// Steps of the raising that are alike, as one row of its table.

#include <span>
#include <vector>

#include "frame/plan.h"
#include "printed/flow.h"
#include "raising/plan.h"
#include "words/words.h"

namespace bentbook {

/// Rows of the order's steps (number, day, name, weight, and what else is told of one; one a step). Those behind each
/// other that are alike but for the marks of what comes, or but for the bent's number, are one row, a few in each: the
/// numbers as "3–4", the name with each step's marks ("Common rafter", then "3: C-A1+C-E1, 4: C-A2+C-E2"; "Bent 2,
/// 3 up"), the weight as one step has it: "87 lb each". A name of several lines, a fault's, stays alone.
[[nodiscard]] std::vector<TableRow> alike_as_one(const Frame& frame, std::span<const RaisingStep> steps,
                                                 const std::vector<TableRow>& rows, Language language);

}  // namespace bentbook
