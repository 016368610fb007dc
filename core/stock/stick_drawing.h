#pragma once
/// One stick with what comes out of it, to scale. Inches, from end A.

#include "draw/drawing.h"
#include "stock/order.h"

namespace bentbook {

/// Given: "piece:N", the N-th of its pieces; told: "offcut:N". Defects and trim are waste.
[[nodiscard]] draw::Drawing stick_drawing(const Section& section, const PlannedStick& stick, Length trim);

}  // namespace bentbook
