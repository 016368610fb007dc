#pragma once
/// The lead's own gear and the truck, from the side. Inches.

#include "draw/drawing.h"
#include "raising/plan.h"

namespace bentbook {

/// Given, by their paths in the piece: "rated", "count"; of a sling "length" and "choked" too, of a spreader "length".
/// A sling hangs straight, and grips a timber as a choker.
[[nodiscard]] draw::Drawing gear_drawing(const LiftingGear& gear);

/// The bed with the longest timber of the frame on it (inches; 0: there is none). Given: "length", "carries"; told:
/// "longest".
[[nodiscard]] draw::Drawing truck_drawing(const Truck& truck, double longest);

}  // namespace bentbook
