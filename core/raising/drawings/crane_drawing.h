#pragma once
/// What lifts, from the side, with the figures of its chart and tag on it. Inches; x from the middle of swing, y up
/// from the ground. Figures go by their paths in the machine's fields.

#include "draw/drawing.h"
#include "raising/plan.h"

namespace bentbook {

enum class Machine : std::uint8_t { kCrane, kTelehandler };

/// What the chart's rows want, as shares of its longest radius: they lie below the ground, the shortest on top, their
/// capacities in a column, under the weights that are taken off them.
struct ChartRoom {
  double row = 0.24;    ///< from one row to the next
  double aside = 1.28;  ///< from the middle of swing to the column's middle; 0: no room, each under its radius
};

/// Given: "chart.0.radius", "chart.0.capacity", …, "hook_block", "rigging". The hook hangs at the longest radius. A row
/// of no radius stands at the middle of swing.
[[nodiscard]] draw::Drawing crane_drawing(const Crane& crane, Machine machine, const ChartRoom& room);

/// A pole on its guys. Given: "rated".
[[nodiscard]] draw::Drawing gin_pole_drawing();

}  // namespace bentbook
