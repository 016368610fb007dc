#pragma once
/// Timbers as comma-separated values, as csv.h has them.

#include <span>
#include <string>

#include "frame/plan.h"

namespace bentbook {

/// All columns, lines end in CR LF; lengths in feet and inches where 1/64 says them exactly, else in mm to the last
/// digit: reading it gives the same timbers.
[[nodiscard]] std::string write_timbers_csv(std::span<const HandTimber> timbers);

}  // namespace bentbook
