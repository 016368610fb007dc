#pragma once
/// Where a temporary brace runs.

#include <optional>

#include "frame/plan.h"
#include "raising/plan.h"

namespace bentbook {

/// World points, inches, on the timbers' axes; a station beyond a tip counts at the tip.
struct TemporaryLine {
  Vec3 from, to;
};
/// Nothing where an end is at no timber of the frame, at one without a place, or both are at the same one.
[[nodiscard]] std::optional<TemporaryLine> temporary_line(const Frame& frame, const Temporary& temporary);

}  // namespace bentbook
