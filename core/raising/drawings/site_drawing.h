#pragma once
/// The yard from above: the building's posts, where machines stand and how far each reaches, where the timbers lie.
/// Inches, the frame's own axes: x across the building from its middle, y along it from the first bent.

#include <optional>
#include <string_view>

#include "draw/drawing.h"
#include "frame/plan.h"
#include "raising/plan.h"

namespace bentbook {

/// What on the drawing has its place given.
enum class InYard : std::uint8_t { kCrane, kCraneTwo, kTelehandler, kStack };

/// Given, by their paths in the raising: "crane.x", "crane.y" and so on, or "stack_x", "stack_y". Told: "radius_stack",
/// from the machine (of a stack the first that is there) to the stack; "reach", where its chart ends. Quiet: the names
/// of what else is there, "crane", "crane_two", "telehandler", "stack", and "bent:1" of the first bent.
[[nodiscard]] draw::Drawing site_drawing(const Frame& frame, const RaisingPlan& plan, InYard shown);
/// Puts it there.
void place_in_yard(RaisingPlan& plan, InYard what, Length x, Length y);
/// A told figure, inches.
[[nodiscard]] std::optional<double> site_answer(const RaisingPlan& plan, InYard shown, std::string_view key);

}  // namespace bentbook
