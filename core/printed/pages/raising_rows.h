#pragma once
/// Steps of the raising that are alike, as one row of its table.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "frame/plan.h"
#include "printed/flow.h"
#include "raising/plan.h"

namespace bentbook {

/// Names that differ in the marks of their timbers or in the bent's number alone, as one: "Common rafter C-A1 + C-E1;
/// C-A2 + C-E2", "Bent 2, 3 up". Nothing where they differ in anything else.
[[nodiscard]] std::optional<std::string> names_as_one(const Frame& frame, std::span<const std::string> names);

/// Rows of steps (number, day, name, weight, and what else is told of one) with those behind each other that are alike
/// in all but the name's marks put into one, their numbers as "3–6", the weight as "4 × 87 lb". A name of several
/// lines, a fault's, stays alone.
[[nodiscard]] std::vector<TableRow> alike_as_one(const Frame& frame, const std::vector<TableRow>& steps);

}  // namespace bentbook
